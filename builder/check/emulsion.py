"""Water and oil together: whether something holds them, whether it is enough, and whether it suits the oils.

emulsifier-missing, emulsifier-too-little, hlb-far-off. The HLB is a starting point for non-ionic emulsifiers and no law: only what is far
off is said, and nothing where a figure is not known.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, basis_of, inside, range_of
from builder.check.limit_words import percent
from builder.model.batch_sheet import Emulsion
from builder.model.plain_number import plain_number

FAR_OFF = "HLB that is far off"
_HOLDS = ("emulsifier", "surfactant", "soap base")
_METHOD = "the share of each oil in the oil phase times its required HLB, after Griffin; tables seldom agree closer than 1"
_PROVE = "An emulsion is proved by standing: keep a sample for a week, one warm and one cold, before a class makes it."


def find_weak_emulsions(batch: Batch) -> Iterator[BatchFinding]:
    """Look at each batch in which water and oil meet."""
    emulsion = batch.sheet.emulsion
    if emulsion is None:
        return
    if not any(line.ingredient.kind in _HOLDS for line in batch.sheet.lines):
        yield _missing(batch, emulsion)
    else:
        yield from _too_little(batch, emulsion)
        yield from _far_off(batch, emulsion)


def _missing(batch: Batch, emulsion: Emulsion) -> BatchFinding:
    oil = next(line for line in batch.sheet.lines if line.ingredient in emulsion.oils)
    return batch.caution(
        "emulsifier-missing",
        oil.place,
        f"it holds water and {inside(oil.ingredient)}, and no emulsifier: the two part within minutes, and the preservative with them, so "
        "that one portion gets too much of it and the next none (common practice, no source).",
        f"Add an emulsifier (an emulsifying wax of about a quarter of the oils, say), or label it “Shake before use”. {_PROVE}",
        "",
    )


def _too_little(batch: Batch, emulsion: Emulsion) -> Iterator[BatchFinding]:
    needs = [(line, figure) for line in batch.sheet.lines if (figure := line.ingredient.figure("share of oils"))]
    if len(needs) != 1 or len(emulsion.emulsifiers) != 1:
        return
    line, usual = needs[0]
    share = line.share / emulsion.oil_share
    if share * 100 < usual.low:
        yield batch.caution(
            "emulsifier-too-little",
            line.place,
            f"{line.ingredient.name} comes to {percent(share)} of the oils, and {range_of(usual, '%')} is usual ({basis_of(usual)}): with "
            "less, the oil parts from the water on the shelf.",
            f"Raise it to about {percent(usual.low * emulsion.oil_share / 100)} of the whole, or take less oil. {_PROVE} {DEFER}",
            "",
        )


def _far_off(batch: Batch, emulsion: Emulsion) -> Iterator[BatchFinding]:
    needs, has = emulsion.required, emulsion.has
    charged = any(card.charge != "none" for card in emulsion.emulsifiers)
    if needs is None or has is None or charged or abs(needs - has) <= batch.constants[FAR_OFF].typical:
        return
    first = emulsion.emulsifiers[0]
    place = next(line.place for line in batch.sheet.lines if line.ingredient is first)
    yield batch.caution(
        "hlb-far-off",
        place,
        f"the oils require an HLB of about {plain_number(needs, 3)} ({_METHOD}), and the emulsifiers have {plain_number(has, 3)}: such an "
        "emulsion often parts.",
        f"{_pair(emulsion)} It is a starting point, not a proof. {_PROVE}",
        "",
    )


def _pair(emulsion: Emulsion) -> str:
    if emulsion.share_of_first is None:
        return "Pair an emulsifier of high HLB with one of low HLB, so that the two together come near it."
    high, low = emulsion.emulsifiers
    share: Fraction = emulsion.share_of_first
    return (
        f"Of the emulsifiers together, {plain_number(share * 100, 3)} % {inside(high)} and {plain_number((1 - share) * 100, 3)} % "
        f"{inside(low)} would come to it."
    )
