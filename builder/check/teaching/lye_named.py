"""Steps whose name of lye in braces would be weighed as something else."""

from collections.abc import Iterator

from builder.check.rule import CLASS, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.weighing_plan import LyeMistaken, LyeNamed
from builder.words.fold import fold
from builder.words.listed import listed


@rule_on(
    CLASS,
    FindingKind(
        "lye-already-dissolved",
        STOP,
        "A step names the dry lye at a time when it has long been dissolved, so that its weight would be taken for that of the solution.",
    ),
    FindingKind("alkalis-not-told-apart", STOP, "A step names two alkalis by their sum, though each is weighed by itself."),
    FindingKind(
        "lye-named-dry", STOP, "A step names a ready-mixed lye by the alkali alone, so that its weight would be taken of the solid."
    ),
    FindingKind("lye-dry-at-home", STOP, "A step is for class and home, and the lye in it is a solution in the one and dry in the other."),
)
def find_lye_mistaken(plan: ClassPlan) -> Iterator[Finding]:
    """Stop a class with steps that ask for dry lye after it has been dissolved, or for two alkalis by their sum."""
    about = frozenset({WholeClass(plan.studio_class.key)})
    for one in plan.weighing.mistaken:
        match one.how:
            case LyeMistaken.DISSOLVED:
                yield stop("lye-already-dissolved", one.name.place, *_dissolved(one), about=about)
            case LyeMistaken.TWO_ALKALIS:
                yield stop("alkalis-not-told-apart", one.name.place, *_two(one), about=about)
            case LyeMistaken.DRY_AT_HOME:
                yield stop("lye-dry-at-home", one.name.place, *_dry_at_home(one), about=about)
            case _:
                assert one.how is LyeMistaken.READY_MIXED
                yield stop("lye-named-dry", one.name.place, *_named_dry(one), about=about)


def _dry_at_home(one: LyeNamed) -> tuple[str, str]:
    return (
        f'"{one.part.title}" is done in class and at home, and "{{{one.name.text}}}" in it is the weight of a ready-mixed solution in '
        f"class and of dry {_listed(one.ingredients)} at home. One of the two sheets would name the wrong thing.",
        'Make two parts of it: one that is "class only" and takes the solution, and one that is "home only" and mixes it from the solid.',
    )


def _named_dry(one: LyeNamed) -> tuple[str, str]:
    return (
        f'"{{{one.name.text}}}" in "{one.part.title}" is the weight of the ready-mixed solution for one pot. Who weighs that much dry '
        f"{_listed(one.ingredients)} makes a lye that is far too strong.",
        f"Where the lye comes out of its bottle write {{lye}} of the lye solution; of two that go into one pot, "
        f"{{{fold(one.ingredients[0])}}} of its solution. The step that fills the bottles names no amount: what goes into them stands on "
        "the check list, and under all weighings of the teacher's sheet.",
    )


def _dissolved(one: LyeNamed) -> tuple[str, str]:
    before = f'in "{one.solution.part.title}"' if one.solution and one.solution.part else "before the class"
    where = "ahead" if one.solution is None or one.solution.ahead else "by the teacher"
    return (
        f'"{{{one.name.text}}}" in "{one.part.title}" means {_listed(one.ingredients)} as weighed before mixing. By then the lye '
        f"has been dissolved, {where} {before}: what stands there is a solution.",
        "Write {lye solution}, which is the weight of the solution for one pot. If the lye is mixed in this part, name both the alkali and "
        "its liquid in it. A liquid that is added only afterwards stands under `later:` in the recipe.",
    )


def _two(one: LyeNamed) -> tuple[str, str]:
    names = listed(f"{{{fold(name)}}}" for name in one.ingredients)
    return (
        f'"{{{one.name.text}}}" in "{one.part.title}" is the sum of {_listed(one.ingredients)}, which are weighed '
        "each by itself. Who weighs the sum of one of them has too much lye.",
        f"Name each of them: {names}.",
    )


def _listed(names: tuple[str, ...]) -> str:
    return listed(map(fold, names))
