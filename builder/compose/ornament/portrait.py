"""A worked batch to what its mark is drawn from: how much there is of each ingredient, what kind of thing they are, which scents.

Shares are those of the recipe before any scale rounds them, so that the mark of a recipe is one mark at every size.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction

from builder.model.recipe.ingredient import SCENTS, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind as Kind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.words.scent import plain_scent

MOST_PETALS = 12  # Of one round. What comes after the eleven largest is one petal, so that each can still be coloured in.

LEAST_PETALS = 8


class Form(Enum):
    """The shapes of petal between which a flower lies, by what the recipe holds."""

    ROUND = "round"
    POINTED = "pointed"
    BLUNT = "blunt"
    FACETED = "faceted"
    NOTCHED = "notched"


_FORMS: Mapping[Form, tuple[Kind, ...]] = {
    Form.POINTED: (Kind.OIL, Kind.FATTY_ACID, Kind.ESSENTIAL_OIL, Kind.FRAGRANCE, Kind.FLAVOUR, Kind.ANTIOXIDANT),
    Form.BLUNT: (Kind.BUTTER, Kind.WAX, Kind.EMULSIFIER, Kind.THICKENER, Kind.SOAP_BASE),
    Form.FACETED: (Kind.SALT, Kind.SUGAR, Kind.ALKALI, Kind.ACID, Kind.COLOURANT),
    Form.NOTCHED: (Kind.HERB, Kind.GRAIN, Kind.CLAY, Kind.STARCH, Kind.EXFOLIANT),
}


@dataclass(frozen=True)
class Portion:
    """One ingredient, or what students choose: its name and its share of the batch, of one."""

    name: str
    share: Fraction


@dataclass(frozen=True)
class Portrait:
    """What a mark is drawn from. `parts` stand largest first; `forms` are shares of the batch by the form that their kind has.

    `together` counts the ingredients that the last part stands for (0 where it is one of them). `rounds` is how many petals each part has,
    `more` how many of the parts, from the largest on, have one petal more.
    `choices` counts the parts that students still choose. `scents` are names without "essential oil", the heaviest first. `cards` are those
    that give the mark its colour.
    """

    recipe: str
    parts: tuple[Portion, ...]
    forms: Mapping[Form, Fraction] = field(hash=False)
    rounds: int
    scents: tuple[str, ...] = ()
    together: int = 0
    choices: int = 0
    cards: tuple[Ingredient, ...] = field(default=(), hash=False)
    more: int = 0

    @property
    def petals(self) -> tuple[Portion, ...]:
        """Return for each petal, from the back to the front, the part that it stands for."""
        return tuple(part for number, part in enumerate(self.parts) for _ in range(self.rounds + (number < self.more)))


def portrait_of(studio: Studio, batch: WorkedBatch, chosen: Mapping[str, str | None] | None = None) -> Portrait:
    """Return what the mark of a batch is drawn from; `chosen` is by what is chosen, an option of None leaves it out.

    Without it each choice is a petal, as long as the most that the recipe allows of it.
    """
    shares: dict[str, Fraction] = {}
    forms = dict.fromkeys(Form, Fraction(0))
    for card, share in _amounts(batch, studio):
        shares[card.name] = shares.get(card.name, Fraction(0)) + share
        forms[_form_of(card)] += share
    cards = [line.ingredient for line in sorted(batch.lines, key=lambda line: -line.share)]
    count = len(shares) + len(batch.own.doses)
    for dose in batch.own.doses:
        name = dose.what if chosen is None else chosen.get(dose.what)
        if name is not None:
            option = studio.ingredient(name) if chosen is not None else None
            cards += [option] if option else []
            shares[name] = shares.get(name, Fraction(0)) + dose.share
    parts = sorted((Portion(name, share) for name, share in shares.items()), key=lambda part: -part.share)
    kept = parts if len(parts) <= MOST_PETALS else parts[: MOST_PETALS - 1]
    rest = parts[len(kept) :]
    if rest:
        kept = sorted([*kept, Portion("", sum((part.share for part in rest), Fraction(0)))], key=lambda part: -part.share)
    return Portrait(
        recipe=batch.recipe.name,
        parts=tuple(kept),
        forms=forms,
        # What is left out takes its petals along: those that stay are never fewer than eight.
        rounds=max(_rounds(count), -(-LEAST_PETALS // len(kept))),
        scents=tuple(_scents(cards)),
        together=len(rest),
        choices=len(batch.own.doses) if chosen is None else 0,
        cards=tuple(cards),
    )


def _amounts(batch: WorkedBatch, studio: Studio) -> Iterable[tuple[Ingredient, Fraction]]:
    """Yield each card with its share; a ready-mixed lye is what was dissolved, and water."""
    water = studio.ingredient("water")
    for line in batch.lines:
        if line.strength is None or water is None:
            yield line.ingredient, line.share
        else:
            yield line.ingredient, line.share * line.strength
            yield water, line.share * (1 - line.strength)


def _form_of(card: Ingredient) -> Form:
    return next((form for form, kinds in _FORMS.items() if card.kind in kinds), Form.ROUND)


def _rounds(count: int) -> int:
    """Return how many petals each ingredient has: a flower of few ingredients would be a sign of something else, a trefoil or a cross."""
    return {1: 8, 2: 5, 3: 4, 4: 3, 5: 2, 6: 2}.get(count, 1)


def _scents(cards: Iterable[Ingredient]) -> Iterable[str]:
    for card in cards:
        if card.declared_as in SCENTS:
            yield plain_scent(card.name)
