"""What a name in braces stands for."""

import pytest

from builder.compose.edition import Edition
from builder.compose.teaching.mentions import class_amount, home_amount, ingredients_named
from builder.model.place import Name
from builder.model.recipe.worked_batch import WorkedBatch
from builder.rules.naming import Unmeasured, meanings


def batches(edition: Edition, number: int) -> tuple[WorkedBatch, WorkedBatch]:
    made = edition.plans[0].made[number]
    return made.batch, made.home[0].batch


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


# Three students take two jars of 113 g: 678 g, of which 60 % is salt. At home the batch is 500 g.
@pytest.mark.parametrize(
    ("name", "in_class", "at_home"),
    [
        ("sea salt", "406.8 g", "300 g (10.60 oz)"),
        ("SEA SALT", "406.8 g", "300 g (10.60 oz)"),
        ("warm", "67.8 g", "50 g (1.75 oz)"),
        ("salts", "610.2 g", "450 g (15.90 oz)"),
        ("batch", "678.0 g", "500 g (17.65 oz)"),
        ("portion", "113 g", "113 g (4 oz)"),
        ("containers", "6", "4"),
        ("scent", "1.1 g", "1 g"),
        ("lavender essential oil", "1.1 g", "1 g"),
    ],
)
def test_amounts(edition: Edition, name: str, in_class: str, at_home: str) -> None:
    in_the_studio, at_the_stove = batches(edition, 0)
    assert plain(class_amount(edition.studio, in_the_studio, Name(name))) == in_class
    assert plain(home_amount(edition.studio, at_the_stove, Name(name))) == at_home


def test_the_lye_and_its_water_add_up_to_the_solution(edition: Edition) -> None:
    sheet, _ = batches(edition, 1)
    lye, water, solution = (
        float(plain(class_amount(edition.studio, sheet, Name(name))).split()[0]) for name in ("lye", "lye water", "lye solution")
    )
    assert lye + water == pytest.approx(solution)
    assert water == pytest.approx(2 * lye, abs=0.3)
    assert class_amount(edition.studio, sheet, Name("water")) == class_amount(edition.studio, sheet, Name("lye water"))


def test_superfat_is_that_of_the_amounts_as_weighed(edition: Edition) -> None:
    sheet, _ = batches(edition, 1)
    assert class_amount(edition.studio, sheet, Name("superfat")).rstrip("%").startswith("10")


def test_an_ingredient_goes_by_any_of_its_names(edition: Edition) -> None:
    sheet, _ = batches(edition, 0)
    assert class_amount(edition.studio, sheet, Name("baking soda")) == class_amount(edition.studio, sheet, Name("sodium bicarbonate"))


def test_an_unknown_name_is_an_error(edition: Edition) -> None:
    sheet, _ = batches(edition, 0)
    for name in ("moonseed oil", "lye", "olive oil"):
        with pytest.raises(KeyError):
            class_amount(edition.studio, sheet, Name(name))


def test_whatever_a_name_can_mean_can_be_filled_in(edition: Edition) -> None:
    for number in (0, 1):
        sheet, home = batches(edition, number)
        known = {name: meant for name, meant in meanings(sheet.recipe, edition.studio).items() if not isinstance(meant, Unmeasured)}
        # What needs a figure that this recipe or class has not stated is a finding of its own.
        for name in known.keys() - {"volume", "left in the pot"}:
            assert class_amount(edition.studio, sheet, Name(name))
            assert home_amount(edition.studio, home, Name(name))


def test_the_batch_as_a_whole_names_no_ingredient(edition: Edition) -> None:
    sheet, _ = batches(edition, 1)
    assert ingredients_named(edition.studio, sheet, Name("batch")) == ()
    assert [card.key for card, _ in ingredients_named(edition.studio, sheet, Name("lye solution"))] == ["sodium hydroxide", "water"]
