"""shares-not-whole, rest-twice, rest-not-positive: percentages that do not make 100 %."""

from collections.abc import Iterator
from fractions import Fraction

from builder.model.finding import Finding, stop
from builder.model.quantity import Rest, Share
from builder.model.recipe import AmountsAs, Recipe, RecipeLine
from builder.model.studio import Studio


def _percent(fraction: Fraction) -> str:
    return f"{float(fraction * 100):.6g} %"


def _sum(lines: list[RecipeLine]) -> Fraction:
    return sum((line.amount.fraction for line in lines if isinstance(line.amount, Share)), Fraction(0))


def find_shares_not_whole(studio: Studio) -> Iterator[Finding]:
    """Add up the percentages of each recipe that states its amounts so."""
    for recipe in studio.recipes.values():
        if recipe.amounts_as is AmountsAs.PERCENT_OF_TOTAL:
            yield from _of_total(recipe)
        elif recipe.amounts_as is AmountsAs.PERCENT_OF_OILS:
            yield from _of_oils(recipe, studio)


def _of_total(recipe: Recipe) -> Iterator[Finding]:
    lines = list(recipe.lines)
    rests = [line for line in lines if isinstance(line.amount, Rest)]
    stated = _sum(lines)
    for line in rests[1:]:
        yield stop(
            "rest-twice",
            line.place,
            f'"{line.ingredient}" and "{rests[0].ingredient}" are both the rest, so neither amount is known.',
            "Give all but one of them a percentage.",
        )
    if rests and stated >= 1:
        yield stop(
            "rest-not-positive",
            rests[0].place,
            f'The other ingredients already come to {_percent(stated)}, so nothing is left for "{rests[0].ingredient}".',
            "Lower the other percentages until they come to less than 100 %.",
        )
    elif not rests and stated != 1:
        yield stop(
            "shares-not-whole",
            recipe.place,
            f"The percentages come to {_percent(stated)} and not to 100 %.",
            "Correct them, or write `rest` for one ingredient (usually the water).",
        )


def _of_oils(recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    cards = [(line, studio.ingredient(line.ingredient)) for line in recipe.lines]
    if any(card is None for _, card in cards):
        return
    stated = _sum([line for line, card in cards if card and card.counts_as.is_oil])
    if stated != 1:
        yield stop(
            "shares-not-whole",
            recipe.place,
            f"The oils come to {_percent(stated)} of the oils and not to 100 %.",
            "Correct the percentages of the fats, butters and waxes. Everything else is percent of the oils on top of them.",
        )
