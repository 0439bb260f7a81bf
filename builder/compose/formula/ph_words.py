"""The pH of a product in words: what the studio measured, and where the preservative in it works."""

from collections.abc import Iterator
from fractions import Fraction

from builder.compose.recipe.wording import shortest, within
from builder.model.recipe.figure import Figure, Known
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import message, say

BASES = {Known.MEMORY: message("from memory"), Known.PRACTICE: message("common practice, no source")}


def ph_words(batch: WorkedBatch, *, at_home: bool = False) -> str:
    """Return in words what the pH is or should be; nothing where it was not measured and no preservative depends on it."""
    measured = batch.recipe.ph
    windows = list(_windows(batch))
    if measured is None and not windows:
        return ""
    if measured is None:
        said = say("Not measured yet.")
    elif at_home:
        said = say("The studio's own batch had pH {ph} ({how}).", ph=_ends(measured.low, measured.high), how=measured.measured)
    else:
        said = f"{_ends(measured.low, measured.high)} ({measured.measured})."
    tests = say("Try a strip on a sample.")
    if batch.product.made_with_lye:
        tests = say("Try a strip on a sample (soap: 1 part in 99 of distilled water).")
    works = _its(windows[0][1]) if at_home and len(windows) == 1 else " ".join(_works(name, window) for name, window in windows)
    outside = say("Outside of that the product spoils unseen: do not use it.") if windows else ""
    return " ".join(part for part in (said, works, tests, outside) if part)


def _windows(batch: WorkedBatch) -> Iterator[tuple[str, Figure]]:
    """Yield the preservatives with their windows; without water there is no pH to speak of."""
    cards = {line.ingredient.name: line.ingredient for line in batch.lines}.values()
    if not any(card.counts_as.is_watery for card in cards):
        return
    for card in cards:
        window = card.figure("pH window")
        if card.kind is IngredientKind.PRESERVATIVE and window:
            yield card.name, window


def _ends(low: Fraction, high: Fraction) -> str:
    ends = [shortest(end, 2) for end in (low, high)]
    return ends[0] if ends[0] == ends[1] else say("{low} to {high}", low=ends[0], high=ends[1])


def _its(window: Figure) -> str:
    basis, ph = BASES.get(window.known), _ends(window.low, window.highest)
    if basis:
        return say("Its preservative works at pH {ph} ({basis}).", ph=ph, basis=say(basis))
    return say("Its preservative works at pH {ph}.", ph=ph)


def _works(name: str, window: Figure) -> str:
    basis, ph = BASES.get(window.known), _ends(window.low, window.highest)
    if basis:
        return say("The {preservative} works at pH {ph} ({basis}).", preservative=within(name), ph=ph, basis=say(basis))
    return say("The {preservative} works at pH {ph}.", preservative=within(name), ph=ph)
