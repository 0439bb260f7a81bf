"""Containers of a student that do not fill whole packages."""

from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.model.recipe.recipe import Fill
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.words.listed import listed


@rule_on(STUDIO, FindingKind("units-left-over", CAUTION, "The containers of a student do not fill whole packages."))
def find_units_left_over(studio: Studio) -> Iterator[Finding]:
    """Divide what each student fills by the units of a package. What is spare may be left over."""
    for studio_class in studio.classes.values():
        for make in studio_class.makes:
            recipe = studio.recipes.get(make.recipe.text)
            if recipe is not None:
                yield from _left(recipe.name, recipe.fill, make.each_student, make.place, studio_class.key)
                for one in make.also:
                    yield from _left(recipe.name, one.fill, one.each_student, one.fill.place, studio_class.key)


def _left(name: str, fill: Fill, each_student: int, place: Place, class_key: str) -> Iterator[Finding]:
    left = each_student % fill.units
    if left:
        whole = each_student // fill.units * fill.units
        counts = listed((str(count) for count in (whole, whole + fill.units) if count), "or")
        yield caution(
            "units-left-over",
            place,
            f"{name}: each student fills {each_student}, and a package holds {fill.units}, so that {left} of them "
            f"{'is' if left == 1 else 'are'} left and labelled one by one.",
            f"Let each student fill {counts}, or change `units in a package:`.",
            about=frozenset({WholeClass(class_key)}),
        )
