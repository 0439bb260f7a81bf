"""What a name in braces means is resolved once, by the recipe alone."""

from dataclasses import replace

import pytest

from builder.library import CONTENT
from builder.model.place import Name
from builder.model.recipe.column import Role
from builder.model.studio import Studio
from builder.model.teaching.lesson import Mention, Step, Steps
from builder.read.studios import read_studio
from builder.reckon import reckon_nominal
from builder.reckon.teaching.handling import handled_in, hazards_in
from builder.rules.naming import (
    IN_ALL,
    PORTION,
    ChoiceNamed,
    IngredientNamed,
    OfLye,
    OptionNamed,
    PhaseNamed,
    Superfat,
    Unknown,
    Unmeasured,
    WholeBatch,
    meaning_of,
    weighings,
)
from tests.compose.conftest import write_studio
from tests.findings_studio import RECIPES


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Studio:
    folder = write_studio(tmp_path_factory.mktemp("studio"), recipes__scrub_yaml=RECIPES["scrub"])
    return read_studio(folder, CONTENT)[0]


@pytest.mark.parametrize(
    ("recipe", "name", "meant"),
    [
        ("salts", "batch", WholeBatch()),
        ("salts", "Portion", PORTION),
        ("salts", "baking soda", IngredientNamed("sodium bicarbonate")),
        ("salts", "warm", PhaseNamed("warm")),
        ("salts", "scent", ChoiceNamed("scent")),
        ("salts", "scent" + IN_ALL, ChoiceNamed("scent", in_all=True)),
        ("salts", "lavender essential oil", OptionNamed("lavender essential oil")),
        ("salts", "lavender essential oil" + IN_ALL, Unknown()),
        ("salts", "sea salt strokes", Unmeasured(IngredientNamed("sea salt"))),
        ("salts", "lye", Unknown()),
        ("salts", "superfat", Unknown()),
        ("bar", "superfat", Superfat()),
        ("bar", "lye solution", OfLye("lye solution", (Role.ALKALI, Role.LYE_WATER))),
        # In a soap `oils` are all fats, wherever they stand; elsewhere it is but the name of a phase, with all that is in it.
        ("bar", "oils", OfLye("oils", (Role.OIL,))),
        ("scrub", "oils", PhaseNamed("oils")),
    ],
)
def test_meanings(studio: Studio, recipe: str, name: str, meant: object) -> None:
    assert meaning_of(Name(name), studio.recipes[recipe], studio) == meant


def test_who_measures_what_is_chosen_for_all_containers_together_handles_it(studio: Studio) -> None:
    """`{scent in all}` puts the same bottle into the same hands as `{scent}`: with it come the rules for neat scents."""
    studio_class = studio.classes["first"]
    part = next(part for part in studio_class.lesson.parts if any(mention.name.key == "scent" for mention in part.mentions))
    batch = reckon_nominal(studio, studio.recipes["salts"])
    hands = []
    for name in ("scent", "scent" + IN_ALL):
        step = Steps((Step(("Add at most ", Mention(Name(name)), " of scent.")),))
        hands.append(
            (handled_in(studio, replace(part, blocks=(step,)), batch).chosen, hazards_in(studio, replace(part, blocks=(step,)), batch))
        )
    assert hands[0] == hands[1]
    assert [card.key for card in hands[0][0]] == ["lavender essential oil"] and "neat essential oil" in hands[0][1]


def test_lye_solution_is_the_alkali_and_its_water_where_they_are_weighed_apart(studio: Studio) -> None:
    bar = studio.recipes["bar"]
    column = reckon_nominal(studio, bar).grams

    def named(name: str) -> list[str]:
        return [w.line.ingredient.key for w in weighings(column, meaning_of(Name(name), bar, studio))]

    assert (named("lye"), named("lye solution")) == (["sodium hydroxide"], ["sodium hydroxide", "water"])
