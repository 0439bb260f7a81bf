"""How many take-home sheets are printed for a date: where the roster says who wants which size, so many of each."""

from collections import Counter
from collections.abc import Iterator, Sequence

from builder.compose.document_kind import ToPrint
from builder.compose.edition import Edition
from builder.compose.home.size_words import size_words
from builder.compose.recipe.wording import listed, within
from builder.compose.scopes import AtHome
from builder.model.teaching.class_plan import ClassPlan, HomeBatch, MadeProduct
from builder.words.fold import fold
from builder.words.say import say, say_count


def copies_of_take_home(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many to print of the sheet of each recipe that has one. Of several sizes the roster may say who takes which."""
    wanted = Counter(map(fold, plan.sizes_at_home))
    for made in (made for made in plan.made if made.home):
        counted = [(home, wanted[fold(home.size.written)]) for home in made.home]
        if len(counted) > 1 and sum(count for _, count in counted) == plan.students:
            yield from _copies_of_sizes(plan, made, [(home, count) for home, count in counted if count])
            continue
        recipe, sizes = within(made.batch.recipe.name), listed([size_words(home.size) for home in made.home], "or")
        line = say_count(
            "Take-home sheet, {recipe}: {count}\u00a0copy ({sizes})",
            "Take-home sheet, {recipe}: {count}\u00a0copies ({sizes})",
            plan.students,
            recipe=recipe,
            sizes=sizes,
        )
        in_all = say("{count} in all, by size as asked for", count=plan.students) if len(made.home) > 1 else ""
        of_them = say("of the same {count}", count=plan.students)
        for number, home in enumerate(made.home):
            name = say("Take-home sheet, {recipe}: {size}", recipe=recipe, size=size_words(home.size))
            # Sizes of one recipe have as many pages: the first stands for all of them where pages are counted.
            said = of_them if number else in_all
            yield ToPrint("" if number else line, name, (0 if number else plan.students,), said, AtHome(plan, home))


def _copies_of_sizes(plan: ClassPlan, made: MadeProduct, counted: Sequence[tuple[HomeBatch, int]]) -> Iterator[ToPrint]:
    """Yield how many to print of each size of a recipe, where everybody on the roster has chosen one."""
    recipe = within(made.batch.recipe.name)
    each = [say("{count} of {size}", count=count, size=size_words(home.size)) for home, count in counted]
    line = say("Take-home sheet, {recipe}: {sizes}", recipe=recipe, sizes=listed(each))
    for home, count in counted:
        name = say("Take-home sheet, {recipe}: {size}", recipe=recipe, size=size_words(home.size))
        yield ToPrint(line, name, (count,), subject=AtHome(plan, home))
        line = ""
