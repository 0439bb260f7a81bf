"""Where a take-home sheet says what there is to know of its lye: before the first part in which anything is weighed."""

import pytest
from bs4 import BeautifulSoup

from tests.composing import of_example
from tests.making import sure


def sheet(kind: str, name: str) -> BeautifulSoup:
    return BeautifulSoup(next(one.html for one in of_example(kind) if name in one.path), "html.parser")


@pytest.mark.parametrize("kind", ["take-home sheet", "take-home sheet in large print"])
@pytest.mark.parametrize("name", ["kitchen-garden-bar--1-kg", "green-lab-bar--500-g", "pump-side-hand-soap--300-g"])
def test_what_there_is_to_know_of_lye_stands_before_the_first_part_that_weighs(kind: str, name: str) -> None:
    (about,) = sheet(kind, name).select(".about-lye")
    before, after = ([one.get_text() for one in found] for found in (about.find_all_previous("li"), about.find_all_next("li")))
    assert any("Put on long sleeves" in step for step in before)
    assert not any(step.split()[1:2] == ["Weigh"] for step in before)
    following = sure(about.find_next("section", class_="part"))
    assert "Make the lye" in sure(following.h2).get_text()
    assert any("into the cup, no more" in step.get_text() for step in following.select(".steps li"))
    assert any("a dry polypropylene cup" in step for step in after)


@pytest.mark.parametrize("name", ["window-bar--1-kg", "meadow-lotion--1-kg"])
def test_what_has_no_lye_says_nothing_of_it(name: str) -> None:
    assert not sheet("take-home sheet", name).select(".about-lye")


@pytest.mark.parametrize("name", ["kitchen-garden-bar--1-kg", "green-lab-bar--1-kg", "pump-side-hand-soap--500-g"])
def test_lye_water_is_weighed_in_a_cup_since_no_scale_of_lye_is_sure_to_hold_its_jug(name: str) -> None:
    """A jug of steel for twice the lye weighs some 400 g, as much as the scale that reads to 0.1 g holds (common practice, no source)."""
    steps = [one.get_text() for one in sheet("take-home sheet", name).select(".steps li")]
    assert any(" of cold water, and pour it into the lye jug." in step for step in steps)
    assert not [step for step in steps if "jug on the scale" in step]
