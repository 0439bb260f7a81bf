"""Batch codes: the letters of the product, the day as six figures, and the pot where there are several.

`ML-270306` is the lotion of 6 March 2027; `ML-270306-2` that of the second group (or student), `ML-270306-T` the teacher's. Where the
product is made twice on one day, also by two classes, a letter after the day tells them apart, in their order: `ML-270306B`. No I and no
O, which are taken for 1 and 0.
"""

from datetime import date, datetime

from builder.compose.recipe.wording import counted
from builder.model.dates.studio_class import BatchFor
from builder.model.recipe.recipe import CODE_LETTERS
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct

TEACHER = "T"
FROM_BEFORE = "What is taken home is of an earlier batch: write its code and the day on which it was made on the labels."


def batch_code(studio: Studio, plan: ClassPlan, made: MadeProduct, pot: str) -> str:
    """Give the code of one pot; empty where there is no date yet."""
    if plan.date is None:
        return ""
    on = plan.date.on
    same_day = _on_the_day(studio, made.make.recipe.text, on.date())
    number = same_day.index((on, plan.studio_class.key))
    run = CODE_LETTERS[number % len(CODE_LETTERS)] if len(same_day) > 1 else ""
    code = f"{made.batch.recipe.letters}-{on:%y%m%d}{run}"
    return f"{code}-{pot}" if pot else code


def _on_the_day(studio: Studio, recipe: str, day: date) -> list[tuple[datetime, str]]:
    """Give when, and in which class, a recipe is made on one day."""
    making = (one for one in studio.classes.values() if any(make.recipe.text == recipe for make in one.makes))
    return sorted((at.on, one.key) for one in making for at in one.dates_held if at.on.date() == day)


def jars_of(plan: ClassPlan, made: MadeProduct, number: int) -> tuple[str, ...]:
    """Give for each container of one kind the pot from which it is filled; `number` counts the kinds, the recipe's own first."""
    make = made.make
    filled = make if number == 0 else make.also[number - 1]
    spare = ["" if make.batch_for is BatchFor.CLASS else TEACHER] * filled.spare
    return (*(pot for pot, people in pots_of(plan, made) for _ in range(people * filled.each_student)), *spare)


def pots_of(plan: ClassPlan, made: MadeProduct) -> list[tuple[str, int]]:
    """Give each pot of the students with the number of people who fill from it."""
    if made.make.batch_for is BatchFor.CLASS:
        return [("", plan.students)]
    if made.make.batch_for is BatchFor.STUDENT:
        return [(str(number), 1) for number in range(1, plan.students + 1)]
    sizes = [plan.studio_class.group_size] * (plan.groups - 1) + [plan.last_group] * (plan.groups > 0)
    return [(str(number), people) for number, people in enumerate(sizes, start=1)]


def code_words(studio: Studio, plan: ClassPlan, made: MadeProduct, *, labelled: bool = True) -> str:
    """Give the codes of a product in words for the teacher's sheet, with where they are written; empty where there is no date yet.

    `labelled` says whether labels are printed for it, which then bear the code.
    """
    codes = _codes(studio, plan, made)
    if not codes:
        return ""
    if plan.comes_from_before(made.batch.product):
        return f"Batch code: {codes}. Write it on the pot. {FROM_BEFORE}"
    if not labelled:
        return f"Batch code: {codes}. Write it on each pot, and on what is packed."
    return f"Batch code: {codes}. Write it on each pot; the labels bear it."


def _codes(studio: Studio, plan: ClassPlan, made: MadeProduct) -> str:
    pots = [pot for pot, _ in pots_of(plan, made)]
    if plan.date is None or not pots:
        return ""
    if made.make.batch_for is BatchFor.CLASS:
        return batch_code(studio, plan, made, "")
    first, last = (batch_code(studio, plan, made, pot) for pot in (pots[0], pots[-1]))
    students = first if first == last else f"{first} to {last} ({counted(len(pots), 'pot', 'pots')})"
    return f"{students}; the teacher's pot {batch_code(studio, plan, made, TEACHER)}" if len(made.batches) > 1 else students
