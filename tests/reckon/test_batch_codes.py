"""A code leads to one pot: what is made twice on a day has letters in the order of the day, whatever is cancelled or made beside it."""

from dataclasses import replace
from datetime import datetime

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.place import Name
from builder.model.studio import Studio
from builder.reckon.label.batch_codes import TEACHER, batch_code
from tests.reckon.test_guests import LOTION, PARTY, STUDIO

SALTS, SCRUB = (make.recipe.text for make in PARTY.makes)
DAY = datetime(2027, 6, 5)
NOON = DAY.replace(hour=12)


def held(key: str, *hours: int, makes: str = SALTS, cancelled: str | None = None) -> StudioClass:
    """Return a class that makes one product, on one day at these hours."""
    make = replace(PARTY.makes[0], recipe=Name(makes))
    dates = tuple(ClassDate(DAY.replace(hour=hour), 3, cancelled=cancelled) for hour in hours)
    return replace(LOTION, key=key, makes=(make,), dates=dates)


def studio(*classes: StudioClass) -> Studio:
    return replace(STUDIO, classes={one.key: one for one in classes})


def code(made: Studio, class_key: str, hour: int, recipe: str = SALTS) -> str:
    return batch_code(made, class_key, DAY.replace(hour=hour), recipe, "")


def test_what_is_made_once_on_a_day_has_no_letter() -> None:
    once = studio(held("first", 12))
    assert code(once, "first", 12) == "SWBS-270605"
    assert batch_code(once, "first", NOON, SALTS, "2") == "SWBS-270605-2"
    assert batch_code(once, "first", NOON, SALTS, TEACHER) == "SWBS-270605-T"


def test_letters_go_by_the_time_of_the_day_and_not_by_the_order_of_the_files() -> None:
    both = studio(held("first", 18, 10), held("second", 14))
    codes = [code(both, "first", 10), code(both, "second", 14), code(both, "first", 18)]
    assert codes == ["SWBS-270605A", "SWBS-270605B", "SWBS-270605C"]
    turned = studio(held("second", 14), held("first", 10, 18))
    assert codes == [code(turned, "first", 10), code(turned, "second", 14), code(turned, "first", 18)]


def test_a_class_that_is_cancelled_takes_no_letter() -> None:
    alone = studio(held("first", 12), held("second", 10, cancelled="The teacher is ill."))
    assert code(alone, "first", 12) == "SWBS-270605"
    # A sheet of it that is printed all the same is told apart from the batch that is made.
    assert code(alone, "second", 10) != code(alone, "first", 12)


def test_other_products_of_the_day_take_no_letter() -> None:
    beside = studio(held("first", 12), held("second", 10, makes=SCRUB))
    assert code(beside, "first", 12) == "SWBS-270605"
    assert code(beside, "second", 10, SCRUB).endswith("-270605")


def test_another_day_takes_no_letter() -> None:
    other_day = replace(held("second"), dates=(ClassDate(datetime(2027, 6, 6, 10), 3),))
    assert code(studio(held("first", 12), other_day), "first", 12) == "SWBS-270605"
