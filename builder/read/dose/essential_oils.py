"""The table of constituents becomes what each scent holds: by the oil that its card names, or else by all oils of its INCI name.

Decided: one measured sample says how much there can be, not how little. Why: the next bottle is another one.
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from builder.model.label.labelling import Allergen
from builder.model.recipe.essential_oil import Constituent, Held, span_of
from builder.model.recipe.ingredient import AllergenList, Ingredient
from builder.model.remembered import remembered
from builder.read.makes import Makes
from builder.read.text.tables import CitedRow, cited, column, each, or_none, remark, share_in
from builder.read.text.text_error import TextError
from builder.read.values.values import text_of
from builder.words.fold import fold


class ConstituentRow(CitedRow, Makes[Constituent]):
    """One constituent of one oil, as one work published it."""

    oil: str = column(text_of)
    inci: tuple[str, ...] = column(each(fold, is_needed=True), "inci_names")
    botanical, part = remark(), remark()
    name: str = column(lambda cell: fold(text_of(cell)), "constituent")
    low: Fraction | None = column(or_none(share_in), "low_percent")
    high: Fraction | None = column(or_none(share_in), "high_percent")
    source, at, known = cited()
    note: str = column(str)

    def judge(self) -> None:
        """Refuse what is no range. Raises TextError."""
        if (self.low is None) != (self.high is None) or (self.low is not None and self.high is not None and self.low > self.high):
            wrong = "A constituent is from a low to a high percentage of the oil, and these two are no such range."
            remedy = "Write the lower number under low_percent, or leave both cells empty."
            raise TextError("limit-row-wrong", wrong, remedy, at=("low_percent",))


def with_constituents(
    cards: Mapping[str, Ingredient], table: tuple[Constituent, ...], allergens: tuple[Allergen, ...]
) -> dict[str, Ingredient]:
    """Return every card with what each part of it can hold, and with what its supplier states of it as a whole."""
    return {key: _with_constituents(card, table, allergens) for key, card in cards.items()}


@remembered(1024)
def _with_constituents(card: Ingredient, table: tuple[Constituent, ...], allergens: tuple[Allergen, ...]) -> Ingredient:
    by_oil, by_inci = _sorted(table)
    names = card.label_name.inci if card.label_name else ()
    parts = [by_inci.get(fold(name), []) for name in names]
    if card.oil:
        parts[:1] = [by_oil.get(fold(card.oil), [])] if names else []
    stated = _stated(card, allergens)
    oils = tuple(tuple(dict.fromkeys(row.oil for row in part)) for part in parts)
    return replace(card, oils=oils, holds=tuple(map(span_of, parts)), stated=stated) if any(parts) or stated else card


@remembered(4)
def _sorted(table: tuple[Constituent, ...]) -> tuple[dict[str, list[Constituent]], dict[str, list[Constituent]]]:
    """Return the rows of each oil, and of each INCI name."""
    by_oil: dict[str, list[Constituent]] = {}
    by_inci: dict[str, list[Constituent]] = {}
    for row in table:
        by_oil.setdefault(fold(row.oil), []).append(row)
        for inci in row.inci:
            by_inci.setdefault(inci, []).append(row)
    return by_oil, by_inci


def _stated(card: Ingredient, allergens: tuple[Allergen, ...]) -> dict[str, Held]:
    """Return what the supplier states, isomers together. Of the list that a statement covers what it does not name is not in the scent."""
    found: dict[str, Held] = {}
    if certificate := card.certificate:
        work = (f"{certificate.source.title}, {certificate.at}",)
        found = {name: Held(name, *share, work, certificate.known, stated=True) for name, share in certificate.contains.items()}
    if statement := card.allergen_statement:
        work = (f"{statement.source.title}, {statement.at}",)
        for one in allergens:
            if one.counts and (one.is_original or statement.covers is AllergenList.EXTENDED):
                shares = [statement.contains[name] for name in one.counts if name in statement.contains]
                low, high = (min(sum((share[end] for share in shares), Fraction(0)), Fraction(1)) for end in (0, 1))
                key = fold(one.label_name)
                found.setdefault(key, Held(key, low, high, work, statement.known, stated=True))
    return found
