"""lye-already-dissolved, alkalis-not-told-apart: steps whose name of lye in braces would be weighed as something else."""

from collections.abc import Iterator

from builder.model.class_sheet import ClassSheet
from builder.model.finding import Finding, stop
from builder.model.weighing_plan import LyeMistaken, LyeNamed


def find_lye_mistaken(sheet: ClassSheet) -> Iterator[Finding]:
    """Stop a class with steps that ask for dry lye after it has been dissolved, or for two alkalis by their sum."""
    about = frozenset({sheet.studio_class.key})
    for one in sheet.weighing.mistaken:
        wrong, remedy = _dissolved(one) if one.how is LyeMistaken.DISSOLVED else _two(one)
        name = "lye-already-dissolved" if one.how is LyeMistaken.DISSOLVED else "alkalis-not-told-apart"
        yield stop(name, one.name.place, wrong, remedy, about=about)


def _dissolved(one: LyeNamed) -> tuple[str, str]:
    before = f'in "{one.solution.part.title}"' if one.solution and one.solution.part else "before the class"
    where = "ahead" if one.solution is None or one.solution.ahead else "by the teacher"
    return (
        f'"{{{one.name.text}}}" in "{one.part.title}" means {_listed(one.ingredients)} as weighed dry or before mixing. The lye has been '
        f"dissolved {before} by then, {where}, and stands there as a solution.",
        "Write {lye solution}, which is the weight of the solution for one pot. If the lye is mixed in this part, name both the alkali and "
        "its liquid in it.",
    )


def _two(one: LyeNamed) -> tuple[str, str]:
    names = " and ".join(f"{{{name}}}" for name in one.ingredients)
    return (
        f'"{{{one.name.text}}}" in "{one.part.title}" is the sum of {_listed(one.ingredients)}, {len(one.ingredients)} things that are '
        "weighed each by itself. Who weighs the sum of one of them has too much lye.",
        f"Name each of them: {names}.",
    )


def _listed(names: tuple[str, ...]) -> str:
    return " and ".join(names)
