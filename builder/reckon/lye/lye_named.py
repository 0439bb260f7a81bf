"""Names of lye in braces that can be mistaken on paper.

They mean what has been dissolved before, or two alkalis as one sum, or what is a ready-mixed solution in class and dry at home. In class
an alkali by its own name would be the weight of its ready-mixed solution: who weighs that much of the solid has lye of twice the strength.
"""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from builder.model.lye.lye_solution import LyeSolution
from builder.model.place import Name
from builder.model.recipe.column import Role, Weighed
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import Lesson, Mention, Part, Where
from builder.model.teaching.weighing_plan import LyeMistaken, LyeNamed
from builder.reckon.lye.lye_course import LyeCourse, is_of_lye
from builder.reckon.teaching.handling import batch_of, in_steps
from builder.rules.naming import IngredientNamed, Meaning, is_solution, meaning_of, weighings
from builder.words.fold import fold

_IS_WET = re.compile(r" of [^.,;]*?\b(?:lye|solution)\b")


def mistaken_names(
    studio: Studio,
    lesson: Lesson,
    made: tuple[MadeProduct, ...],
    one: MadeProduct,
    course: LyeCourse | None,
    solutions: Sequence[LyeSolution],
) -> Iterator[LyeNamed]:
    """Return those of the steps about one product. A weight that is stated for both alkalis together, weighed of one, is too much lye."""
    if one.batch.recipe.lye is None:
        return
    solution = next((lye for lye in solutions if lye.recipe == one.batch.recipe.name and not lye.ready_mixed), None)
    dissolved = course.after if course and course.by_staff else ()
    for part in (part for part in lesson.parts if batch_of(made, part) is one.batch):
        after = any(part is other for other in dissolved)
        for mention in in_steps(part):
            name, meant = mention.name, meaning_of(mention.name, one.batch.recipe, studio)
            named = weighings(one.batch.grams, meant)
            alkalis = tuple(w for w in named if w.line.role is Role.ALKALI)
            if after and not is_solution(meant) and any(is_of_lye(w) for w in named):
                yield _named(name, part, LyeMistaken.DISSOLVED, named, solution)
            elif alkalis and one.home and part.where is Where.EVERYWHERE and alkalis[0].line.strength is not None:
                yield _named(name, part, LyeMistaken.DRY_AT_HOME, alkalis, None)
            elif _is_ready_mixed(alkalis, part) and _is_taken_for_dry(mention, meant, part, alkalis):
                yield _named(name, part, LyeMistaken.READY_MIXED, alkalis, None)
            elif len(alkalis) > 1 and not _are_one_solution(meant, part, alkalis):
                yield _named(name, part, LyeMistaken.TWO_ALKALIS, alkalis, None)


def _is_ready_mixed(alkalis: Sequence[Weighed], part: Part) -> bool:
    """Tell whether what a part names of alkalis comes out of a bottle."""
    return bool(alkalis) and alkalis[0].line.strength is not None and part.where is not Where.HOME_ONLY


def _is_taken_for_dry(mention: Mention, meant: Meaning, part: Part, alkalis: Sequence[Weighed]) -> bool:
    """Tell whether the words behind a name call it the alkali itself (`{lye} of sodium hydroxide`), and no solution of it.

    An alkali by its own name is taken for dry unless they call it lye or a solution, as those of two alkalis have to.
    """
    names = {fold(name) for w in alkalis for name in (w.line.ingredient.name, *w.line.ingredient.also_called)} - {"lye"}
    called = re.compile(rf" of (?:(?:the|your|dry|solid) )*(?:{'|'.join(map(re.escape, sorted(names)))})\b(?! solution)")
    behind = [f" {fold(after)}" for step in part.steps for one, after in pairwise(step.pieces) if one is mention and isinstance(after, str)]
    if isinstance(meant, IngredientNamed):
        return any(called.match(words) for words in behind) or not any(_IS_WET.match(words) for words in behind)
    return any(called.match(words) for words in behind)


def _are_one_solution(meant: Meaning, part: Part, alkalis: Sequence[Weighed]) -> bool:
    """Tell whether two alkalis are named as what they make together: at home always, in class where they are mixed from the solid."""
    return is_solution(meant) and (part.where is Where.HOME_ONLY or all(w.line.strength is None for w in alkalis))


def _named(name: Name, part: Part, how: LyeMistaken, weighed: Sequence[Weighed], solution: LyeSolution | None) -> LyeNamed:
    return LyeNamed(name, part, how, tuple(dict.fromkeys(w.line.ingredient.name for w in weighed)), solution)
