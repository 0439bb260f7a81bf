"""The logo of a studio is drawn where its picture is there and says how wide it is to its height."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.model.label.logo import Logo
from builder.model.picture import PictureFile, Size
from builder.model.place import Name
from builder.rules.look.logo import logo_of, logo_on_labels
from tests.making import sure
from tests.reckon.test_guests import STUDIO


# 400 points wide and 160 high are two and a half to one.
@pytest.mark.parametrize(
    ("picture", "proportion"),
    [(PictureFile(Size(400, 160)), Fraction("2.5")), (PictureFile(None), None), (None, None)],
)
def test_a_logo_has_the_proportion_of_its_picture(picture: PictureFile | None, proportion: Fraction | None) -> None:
    look = replace(STUDIO.profile.look, logo=Name("logo.svg"))
    labels = replace(STUDIO.profile.labels, logo=True)
    pictures = {"logo.svg": picture} if picture else {}
    here = replace(STUDIO, profile=replace(STUDIO.profile, look=look, labels=labels), pictures=pictures)
    found = Logo("logo.svg", float(proportion), see_through=True) if proportion else None
    assert logo_of(here) == logo_on_labels(here) == found
    assert logo_on_labels(replace(here, profile=replace(here.profile, labels=replace(labels, logo=False)))) is None
    assert logo_of(replace(here, profile=replace(here.profile, look=replace(look, logo=None)))) is None


# A drawing leaves open what is behind it; a photograph does where its file says so.
@pytest.mark.parametrize(("is_photograph", "of_file", "shows"), [(False, False, True), (True, False, False), (True, True, True)])
def test_what_is_behind_a_drawing_shows(*, is_photograph: bool, of_file: bool, shows: bool) -> None:
    picture = PictureFile(Size(10, 10), is_photograph=is_photograph, see_through=of_file)
    look = replace(STUDIO.profile.look, logo=Name("logo.png"))
    here = replace(STUDIO, profile=replace(STUDIO.profile, look=look), pictures={"logo.png": picture})
    assert sure(logo_of(here)).see_through is shows
