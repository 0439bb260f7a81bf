"""A class or recipe that promises to be free of a family of allergens."""

from collections.abc import Iterator
from typing import Protocol

from builder.check.formula.formulas import Formulation, formula_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.ingredient import CountsAs
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.roster.allergen_family import AllergenFamily
from builder.model.studio import Studio
from builder.words.listed import listed_once

_KITCHEN = "Traces from a shared bench cannot be excluded, so tell people that as well."
_OPEN_KINDS = (IngredientKind.FRAGRANCE, IngredientKind.FLAVOUR)


class Promise(Protocol):
    """A class or a recipe."""

    @property
    def free_from(self) -> tuple[AllergenFamily, ...]:
        """Return the families."""

    def at(self, key: str) -> Place:
        """Return the place of a key."""


@rule_on(
    STUDIO,
    FindingKind(
        "free-from-open",
        CAUTION,
        "The product promises to be free from something, and only the supplier of an ingredient can say whether it is.",
    ),
    FindingKind("not-free-from", STOP, "The product promises to be free from something that it holds."),
)
def find_broken_promises(studio: Studio) -> Iterator[Finding]:
    """Compare each promise with the cards of all that goes in and of all that students may choose."""
    for recipe in studio.recipes.values():
        yield from _judge(recipe, recipe.name, [formula_of(recipe, studio)])
    for a_class in studio.classes.values():
        recipes = [studio.recipes[make.recipe.text] for make in a_class.makes if make.recipe.text in studio.recipes]
        yield from _judge(a_class, a_class.title, [formula_of(recipe, studio) for recipe in recipes])


def _judge(promise: Promise, name: str, formulas: list[Formulation | None]) -> Iterator[Finding]:
    found = [(formula, part.card) for formula in formulas if formula for part in formula.all]
    place = promise.at("free from")
    for family in promise.free_from:
        holds = [f"{card.name} ({formula.recipe.name})" for formula, card in found if family in card.allergens]
        if holds:
            yield stop(
                "not-free-from",
                place,
                f"{name} promises to be free from {family}, and this holds it, by its card: {listed_once(holds)}. Whoever trusts the "
                "promise can have a severe reaction.",
                f"Take the ingredient out of the recipe or the choice, or take the family out of `free from:`. {_KITCHEN}",
            )
    unknown = [card.name for _, card in found if card.counts_as is CountsAs.BASE or card.kind in _OPEN_KINDS]
    if promise.free_from and unknown:
        yield caution(
            "free-from-open",
            place,
            f"{name} promises to be free from {listed_once(list(promise.free_from))}, and what {listed_once(unknown)} is made of only its "
            "supplier can say: the card lists families as far as they are known here.",
            f"Ask the supplier for the allergen statement and accept this with its date. {_KITCHEN}",
        )
