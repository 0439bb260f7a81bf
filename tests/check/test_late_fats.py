"""Where all fats go in after the cook, the first of their phases is named: reading goes from top to bottom."""

from dataclasses import replace

from builder.check.lye.fats_for_the_lye import find_lye_without_fat
from builder.model.finding import Finding
from builder.model.place import Name, Place
from tests.making import lye, phase, recipe, share
from tests.reckon.test_guests import STUDIO


def test_the_first_of_several_late_phases_is_named() -> None:
    first, second = (
        replace(phase(name, {oil: share("50")}), name=Name(name, Place("recipes/late.yaml", line, 3)), after_the_cook=True)
        for name, oil, line in (("one", "olive oil", 4), ("two", "coconut oil", 9))
    )
    late = recipe(first, second, lye=lye())
    (found,) = find_lye_without_fat(replace(STUDIO, recipes={"late": late}))
    assert isinstance(found, Finding)
    assert (found.name, found.place.line) == ("fats-all-late", 4)
