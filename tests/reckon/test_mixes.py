"""Several options of one choice in one portion of 100 g, of which a choice may take 0.5 % or half a gram: each most by hand."""

from dataclasses import replace

import pytest

from builder.model.dose.dose import Mixed
from builder.model.dose.limit import Limit
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from tests.making import cards, grams
from tests.reckon.test_doses import choice, limit, made, scent

ROSE, MINT = scent("rose", 30), scent("mint", 25)  # mg a drop
EACH = (limit("Rose", most="0.1"), limit("Mint", most="0.1"))
BOTH = (limit("Rose", "Mint", most="0.2"),)


def mixed(limits: tuple[Limit, ...], *options: Ingredient) -> Mixed | None:
    sheet, _ = made((choice("scent", *(one.name for one in options)),), cards(*options), *limits)
    (dose,) = sheet.own.doses
    return dose.mixed


# Under a limit of 0.1 % each, x / (100 + x) <= 0.1 %, is at most 0.1001 g: 0.10 g, 3 drops of rose, 4 of mint. Under one of 0.2 % for both
# they are at most 0.2004 g together: 6 drops, since 6 of rose are 0.18 g and a seventh drop of either passes it. Without a limit 16 drops
# of rose are 0.48 g, and one of mint more is 0.505 g.
@pytest.mark.parametrize(("limits", "weight", "drops"), [(EACH, "0.20", 7), (BOTH, "0.20", 6), ((), "0.50", 16)])
def test_the_most_of_several_together(limits: tuple[Limit, ...], weight: str, drops: int) -> None:
    assert mixed(limits, ROSE, MINT) == Mixed(grams(weight), drops)


def test_what_is_mixed_by_drops_drips() -> None:
    powder = replace(scent("menthol"), kind=IngredientKind.COLOURANT)
    assert mixed((), ROSE, powder) == Mixed(grams("0.50"), None)


def test_one_option_alone_is_no_mix() -> None:
    assert mixed((), ROSE) is None
    assert mixed((limit("Mint", most="0.001"),), ROSE, MINT) is None
