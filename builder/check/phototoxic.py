"""phototoxic-unlimited, phototoxic-together: oils that make skin burn in the sun, in what stays on it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.counted import counts_of, factors_in
from builder.check.figure_words import inside
from builder.check.limit_words import DEFER, percent
from builder.check.places import place_of_line
from builder.model.ingredient import Ingredient
from builder.model.limit import Limit
from builder.model.place import Place, fold

PHOTOTOXIC = "phototoxic"


@dataclass(frozen=True)
class _Oil:
    """One phototoxic oil, how much of it there is at most, and what part of its limit that takes (None: no limit is known)."""

    card: Ingredient
    place: Place
    takes: Fraction | None


def find_phototoxic_oils(batch: Batch) -> Iterator[BatchFinding]:
    """Look for such oils without a limit, and add up what those with one take: together at most the whole (IFRA's rule of combination)."""
    if batch.sheet.product.contact not in ("leave-on", "lips") or not batch.sheet.grams.total:
        return
    rows = [row for row in batch.limits if row.hazard == PHOTOTOXIC and row.names and row.most and row.is_for(batch.sheet.product)]
    oils = _oils(batch, rows)
    for oil in oils:
        if oil.takes is None:
            yield batch.caution(
                "phototoxic-unlimited",
                oil.place,
                f"{oil.card.name} makes skin burn in the sun, this product stays on the skin, and no limit for it stands in the tables.",
                "Use an oil that is free of furocoumarins, or add the limit that your supplier states to a table in shelf/tables/. "
                f"{DEFER}",
                "",
            )
    limited = [oil for oil in oils if oil.takes]
    whole = sum((oil.takes for oil in limited if oil.takes), Fraction(0))
    if len(limited) > 1 and whole > 1 and all(oil.takes is not None and oil.takes <= 1 for oil in limited):
        yield batch.caution(
            "phototoxic-together",
            limited[0].place,
            f"{' and '.join(inside(oil.card) for oil in limited)} each stay within their limit for skin in the sun, and together they "
            "pass it: what each takes of its limit adds up to at most 100 % (combination rule of the IFRA standards, a standard of the "
            "trade).",
            f"Lower one of them. {DEFER}",
            f"{batch.name} ({percent(whole)})",
        )


def _oils(batch: Batch, rows: Sequence[Limit]) -> list[_Oil]:
    """Give every phototoxic oil of the batch; of each choice only the option that takes most, for students add one."""
    sheet, total, found = batch.sheet, batch.sheet.grams.total, []
    for weighed in sheet.grams.weighed:
        if PHOTOTOXIC in weighed.line.ingredient.hazards and weighed.mass:
            place = place_of_line(weighed.line, sheet.recipe)
            found.append(_oil(batch, weighed.line.ingredient, place, weighed.mass / total, rows))
    for dose in sheet.doses:
        cards = [batch.cards[fold(option)] for option in dose.options if option is not None]
        place = next(choice.place for choice in sheet.recipe.choices if choice.what == dose.what)
        share = dose.at_most / (sheet.portions.fill + dose.at_most)
        options = [_oil(batch, card, place, share, rows) for card in cards if PHOTOTOXIC in card.hazards]
        found += [oil for oil in options if oil.takes is None]
        found += sorted((oil for oil in options if oil.takes is not None), key=lambda oil: -(oil.takes or 0))[:1]
    return found


def _oil(batch: Batch, card: Ingredient, place: Place, share: Fraction, rows: Sequence[Limit]) -> _Oil:
    factors = factors_in(batch.limits)
    takes = [share * counts_of(card, row, factors)[1] / row.most for row in rows if row.most and counts_of(card, row, factors)[1]]
    return _Oil(card, place, max(takes, default=None))
