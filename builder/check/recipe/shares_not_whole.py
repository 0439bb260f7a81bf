"""Percentages that do not make 100 %."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.recipe.amounts_of_another_kind import goes_with
from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.quantity import Rest, Share
from builder.model.recipe.recipe import AmountsAs, Recipe, RecipeLine
from builder.model.studio import Studio
from builder.words.percent import percent
from builder.words.plain_number import plain_number


def of_whole(shares: Fraction) -> str:
    """Return in words what shares come to, with as many figures as it takes, and how far that is from the whole."""
    gap = f"{plain_number(abs(1 - shares) * 100, 6)} % {'is missing' if shares < 1 else 'is too much'}"
    return f"{percent(shares, 12)}, so that {gap}"


def _sum(lines: list[RecipeLine]) -> Fraction:
    return sum((line.amount.fraction for line in lines if isinstance(line.amount, Share)), Fraction(0))


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("rest-twice", STOP, "Two ingredients are the rest, so that neither amount is known."),
    FindingKind("rest-not-positive", STOP, "The other ingredients leave nothing for the one that is the rest."),
    FindingKind("shares-not-whole", STOP, "The percentages of a recipe do not make 100 %."),
)
def find_shares_not_whole(studio: Studio) -> Iterator[Finding]:
    """Add up the percentages of each recipe that states its amounts so. A recipe of which lines are missing has no sum yet."""
    for recipe in studio.recipes.values():
        if recipe.in_part or any(not goes_with(line.amount, recipe.amounts_as) for line in recipe.lines):
            continue
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
            f'The other ingredients already come to {percent(stated, 12)}, so nothing is left for "{rests[0].ingredient}".',
            "Lower the other percentages until they come to less than 100 %.",
        )
    elif not rests and stated != 1:
        yield stop(
            "shares-not-whole",
            recipe.at("amounts"),
            f"The percentages come to {of_whole(stated)}.",
            "Correct them, or write `rest` for one ingredient (usually the water).",
        )


def _of_oils(recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    cards = [(line, studio.ingredient(line.ingredient)) for line in recipe.lines]
    oils = [line for line, card in cards if card and card.counts_as.is_oil]
    # A soap without any oil is a finding of its own, and so is a name that is not known.
    if any(card is None for _, card in cards) or (recipe.lye and not oils):
        return
    stated = _sum(oils)
    if stated != 1:
        yield stop(
            "shares-not-whole",
            recipe.at("amounts"),
            f"The oils come to {of_whole(stated)}.",
            "Correct the percentages of the fats, butters and waxes. Everything else is percent of the oils on top of them.",
        )
