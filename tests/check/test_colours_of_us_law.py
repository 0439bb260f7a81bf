"""Colours against the list of US law, for one colour whose row is changed: where it is listed, for which contact, products and parts.

That a colour may be used where the list allows it and nowhere else is 21 CFR 70.5 and 73/74 (from memory); the rows are made for the test.
"""

from dataclasses import replace
from typing import Any

import pytest

from builder.check.batches import Batch, batch_of
from builder.check.dose.colour_not_allowed import find_colours_not_allowed
from builder.model.recipe.body_part import BodyPart
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Contact
from builder.model.recipe.size import TotalSize
from builder.model.subject import WholeRecipe
from builder.reckon import reckon_recipe
from tests.check.test_at_the_edge import levels, mixed
from tests.making import card, grams, told
from tests.reckon.test_guests import STUDIO

ROW = replace(
    next(rule for rule in STUDIO.colour_rules if rule.is_listed and not rule.narrower),
    label_name="Our Colour", contact=(Contact.LEAVE_ON, Contact.RINSE_OFF, Contact.LIPS), products=(), most=None, most_on_lips=None,
    certified=False, for_eyes=True,
)  # fmt: skip
COLOUR = replace(card("our colour"), declared_as=DeclaredAs.COLOUR, colour_name={"us": "Our Colour"})

# Something that colours and is declared as an ingredient like any other.
NO_COLOUR = replace(COLOUR, declared_as=DeclaredAs.INGREDIENT, kind=IngredientKind.COLOURANT)


def seen(product: str, *, region: str = "US", colour: Any = COLOUR, used_on: tuple[BodyPart, ...] = (), **row: Any) -> Batch:
    studio = replace(
        STUDIO, profile=replace(STUDIO.profile, region=region), colour_rules=(replace(ROW, **row),), limits=(),
        ingredients={**STUDIO.ingredients, "our colour": colour},
    )  # fmt: skip
    of = replace(mixed(our_colour="1"), product=product, used_on=used_on)
    return batch_of("a batch", reckon_recipe(studio, of, TotalSize(grams(1000))), studio, WholeRecipe("test"))


NOT_LISTED, NOT_LIPS = ["colour-not-listed stop"], ["colour-not-for-lips stop"]


@pytest.mark.parametrize(
    ("product", "row", "found"),
    [
        ("balm", {}, []),
        ("lip balm", {}, []),
        ("lip balm", {"contact": (Contact.LEAVE_ON,)}, NOT_LIPS),
        ("balm", {"contact": (Contact.LEAVE_ON,)}, []),
        ("balm", {"contact": (), "products": ("balm",)}, []),
        ("scrub", {"contact": (), "products": ("balm",)}, NOT_LISTED),
        ("balm", {"contact": ()}, NOT_LISTED),
        ("balm", {"is_listed": False}, NOT_LISTED),
        ("balm", {"label_name": "Another Colour"}, NOT_LISTED),
        ("balm", {"certified": True}, ["colour-certificate-missing caution"]),
        ("balm", {"certified": True, "colour": replace(COLOUR, colour_certificate="lot A1")}, []),
        ("balm", {"colour": replace(COLOUR, colour_name={"us": "Our Colour Lake"})}, []),
        (
            "balm",
            {"is_listed": False, "colour": replace(COLOUR, declared_as=DeclaredAs.INGREDIENT, kind=IngredientKind.COLOURANT)},
            ["colour-not-listed caution"],
        ),
        ("balm", {"for_eyes": False}, []),
        ("balm", {"for_eyes": False, "used_on": (BodyPart.EYE,)}, ["colour-not-for-eyes stop"]),
        ("balm", {"for_eyes": True, "used_on": (BodyPart.EYE,)}, []),
        # Elsewhere it is no law.
        ("balm", {"is_listed": False, "region": "EU"}, []),
    ],
)
def test_a_colour_is_used_where_us_law_lists_it(product: str, row: dict[str, Any], found: list[str]) -> None:
    assert levels(find_colours_not_allowed(seen(product, **row))) == found


def test_a_colour_that_is_listed_for_one_use_is_told_with_that_use() -> None:
    (narrow,) = told(find_colours_not_allowed(seen("balm", contact=(), narrower="eyebrows")))
    (none,) = told(find_colours_not_allowed(seen("balm", contact=(), narrower="eyebrows", is_listed=False)))
    assert "it is listed for: eyebrows" in narrow.wrong and "eyebrows" not in none.wrong
