"""What stays in a pot at home, by what stays in the pot of a class: film goes with surface, the two-thirds power of the weights.

By hand, of 40 g in a pot of class, at home in one of 250 g: of eight bottles of 113 g, 944 g with the film, 40 x (250 / 944) ** (2 / 3) =
16.5 g; with a spare bottle 15.3 g of 1057 g; of a pair's 266 g 38.4 g; of the 153 g of one student 55.5 g. Whole grams up.
"""

from typing import Any

import pytest

from builder.model.dates.studio_class import BatchFor, HomeSize
from builder.model.recipe.size import ContainersSize, Lost, TotalSize
from builder.reckon import reckon_recipe
from tests.making import grams, phase, recipe, share
from tests.reckon.test_guests import STUDIO
from tests.reckon.test_supplies import class_of

AT_HOME = (HomeSize("250 g", total=grams(250)),)


@pytest.mark.parametrize(
    ("batch_for", "spare", "left"),
    [
        (BatchFor.CLASS, 0, 17),
        (BatchFor.CLASS, 1, 16),
        (BatchFor.GROUP, 0, 39),
        (BatchFor.GROUP, 1, 39),  # the spare bottle is in the teacher's own pot
        (BatchFor.STUDENT, 0, 56),
    ],
)
def test_what_is_lost_at_home_follows_the_pot_of_class(batch_for: BatchFor, spare: int, left: int) -> None:
    plan: dict[str, Any] = {
        "batch_for": batch_for,
        "spare": spare,
        "at_home": AT_HOME,
        "left_in_the_pot": grams(40),
        "left_in_each_cup": grams(0),
    }
    (home,) = class_of(3, group_size=2, **plan).made[0].home
    assert home.batch.size == TotalSize(grams(250), Lost(grams(left), grams(0)))


# By hand: five jars of 100 g, 2 g that stick to each cup and 10 g in the pot are 520 g.
def test_a_batch_for_so_many_containers_holds_what_is_lost() -> None:
    jars = recipe(phase("all", {"sunflower oil": share(100)}), fill="100")
    made = reckon_recipe(STUDIO, jars, ContainersSize(5, Lost(grams(10), grams(2))))
    assert made.grams.total == grams(520)
