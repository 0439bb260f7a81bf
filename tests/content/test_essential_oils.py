"""The table of constituents: whole, from works that are named, and what the cards of scents hold by it."""

import csv
from collections.abc import Mapping
from fractions import Fraction

from builder.library import CONTENT
from builder.model.recipe.figure import Known
from tests.studios import sound_studio

STUDIO, FINDINGS = sound_studio()
CARDS = {card.key: card for card in STUDIO.ingredients.values()}
TEXT = (CONTENT / "tables" / "essential_oils.csv").read_text(encoding="utf-8")
ROWS = list(csv.DictReader(line for line in TEXT.splitlines() if not line.startswith("#")))


def span(name: str, constituent: str) -> tuple[Fraction, Fraction] | None:
    held = CARDS[f"{name} essential oil"].holds[0].get(constituent)
    return (held.low * 100, held.high * 100) if held else None


def percent(low: int | str, high: int | str) -> tuple[Fraction, Fraction]:
    return Fraction(low), Fraction(high)


def test_every_oil_of_the_table_has_a_card_and_every_card_of_an_oil_says_which_it_is() -> None:
    # The collection from which the table was taken has 375 rows on 89 oils.
    assert FINDINGS == []
    assert (len(ROWS), len({row["oil"] for row in ROWS})) == (375, 89)
    assert {row["oil"] for row in ROWS} == {card.oil for card in CARDS.values() if card.oil}
    assert {card.name for card in CARDS.values() if card.kind == "essential oil" and not card.oil} == set()


def test_every_source_of_the_table_stands_in_its_first_lines() -> None:
    listed = {line.removeprefix("#   source: ") for line in TEXT.splitlines() if line.startswith("#   source: ")}
    assert listed == {row["source"] for row in ROWS}


def is_held(row: Mapping[str, str]) -> bool:
    """Tell whether the card of an oil holds what a row of the table says of it."""
    card = next(card for card in CARDS.values() if card.oil == row["oil"])
    held = card.holds[0][row["constituent"].casefold()]
    return held.low * 100 <= Fraction(row["low_percent"]) <= Fraction(row["high_percent"]) <= held.high * 100 <= 100


def test_a_card_holds_what_every_work_says_of_its_oil() -> None:
    stated = [row for row in ROWS if row["high_percent"]]
    assert len(stated) > 300
    assert [row for row in stated if not is_held(row)] == []


# Molecules 2022, 27, 3216 (read), Table 2: limits of the European Pharmacopoeia, 10th edition, for lavender oil.
def test_lavender_is_within_the_limits_of_the_pharmacopoeia() -> None:
    assert span("lavender", "linalool") == percent(20, 45)
    assert span("lavender", "linalyl acetate") == percent(25, 47)
    assert span("lavender", "camphor") == percent(0, "1.2")


# EMA/HMPC/138386/2005 (read): pulegone at most 4 % and menthofuran 1 to 9 % of peppermint oil; pennyroyal 60 to 90 % pulegone.
def test_pulegone_of_mints() -> None:
    assert span("peppermint", "pulegone") == percent(0, 4)
    assert span("peppermint", "menthofuran") == percent(1, 9)
    assert span("pennyroyal", "pulegone") == percent(60, 90)


def test_several_works_give_the_widest_span() -> None:
    # Lemon: sums of neral and geranial from 0.8 to 3.8 % (recalled); 1.92 % and 3.1 % measured (read).
    assert span("lemon", "citral") == percent("0.8", "3.8")
    # Rose: ISO 20 to 46 % (recalled), Kashan 14.5 to 47.5 % (read), one oil from China 36.69 % (read).
    assert span("rose otto", "citronellol") == percent("14.5", "47.5")


def test_one_measured_sample_says_how_much_there_can_be_and_not_how_little() -> None:
    # Sacchetti 2005 (read in a review): 2.8 % in one oil of the market, and genuine oil holds little or none.
    assert span("ylang ylang", "methyl salicylate") == percent(0, "2.8")


def test_what_is_known_from_memory_alone_says_so() -> None:
    assert CARDS["cinnamon bark essential oil"].holds[0]["safrole"].known is Known.MEMORY
    assert CARDS["tea tree essential oil"].holds[0]["terpinen-4-ol"].known is Known.READ
