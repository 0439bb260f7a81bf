"""Which classes a finding concerns, by the file in which it stands, and by what it is about."""

from collections.abc import Collection

import pytest

from builder.model.finding import caution
from builder.model.place import Place
from builder.model.subject import HomeSheet, Labels, Subject, WholeClass
from builder.rules.reach import classes_concerned
from tests.reckon.test_guests import LOTION, STUDIO

MAKES = LOTION.makes[0].recipe.text
ALL_THAT_MAKE_IT = {one.key for one in STUDIO.classes.values() if MAKES in {make.recipe.text for make in one.makes}}


@pytest.mark.parametrize(
    ("file", "concerned"),
    [
        ("studio.yaml", STUDIO.classes.keys()),
        ("shelf/supplies.yaml", STUDIO.classes.keys()),
        (LOTION.place.file, {LOTION.key}),
        (f"recipes/{MAKES}.yaml", ALL_THAT_MAKE_IT),
        ("pages/about.md", ()),
        # What lies beside those files is nobody's own.
        *((beside, STUDIO.classes.keys()) for beside in ("pages/jar.png", "notes/about.md", "recipes/notes.txt", "notes/balm.yaml")),
        ("classes/notes.md", STUDIO.classes.keys()),
        ("inventory.yaml", ()),
        ("shelf/ingredients/named-by-no-recipe.yaml", ()),
    ],
)
def test_a_finding_concerns_the_classes_that_its_file_is_for(file: str, concerned: Collection[str]) -> None:
    assert classes_concerned(caution("any", Place(file, 1, 1)), STUDIO) == set(concerned)


@pytest.mark.parametrize(
    ("about", "concerned"),
    [
        (WholeClass(LOTION.key), {LOTION.key}),
        (HomeSheet(LOTION.key, MAKES, "250 g"), {LOTION.key}),
        (Labels(MAKES, LOTION.key), {LOTION.key}),
        (Labels(MAKES), ALL_THAT_MAKE_IT),
    ],
)
def test_a_finding_concerns_the_classes_that_it_is_about(about: Subject, concerned: Collection[str]) -> None:
    assert classes_concerned(caution("any", Place("studio.yaml", 1, 1), about=frozenset({about})), STUDIO) == concerned
