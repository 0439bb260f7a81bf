"""base-overloaded: more oil, butter or powder in a melt-and-pour base than it takes up."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, basis_of, range_of
from builder.check.limit_words import percent
from builder.model.batch_sheet import Weighed
from builder.model.place import Place

_POWDERS = ("clay", "starch", "grain", "exfoliant", "herb", "milk")


def find_overloaded_bases(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the oils and the powders of a batch with what its base takes."""
    for base in batch.sheet.grams.weighed:
        if base.line.ingredient.kind != "soap base" or not base.mass:
            continue
        oils = [w for w in batch.sheet.grams.weighed if w.line.ingredient.counts_as.is_oil]
        powders = [w for w in batch.sheet.grams.weighed if w.line.ingredient.kind in _POWDERS]
        yield from _judge(batch, base, oils, "takes oil", "oil and butter", "it turns soft, sweats and loses its lather")
        yield from _judge(batch, base, powders, "takes powder", "powder", "it sinks to the bottom, clumps and scratches")


def _judge(batch: Batch, base: Weighed, added: list[Weighed], figure: str, what: str, then: str) -> Iterator[BatchFinding]:
    takes = base.line.ingredient.figure(figure)
    share = sum((w.mass / base.mass for w in added), Fraction(0))
    if takes and share * 100 > takes.highest:
        place: Place = added[0].line.place
        yield batch.caution(
            "base-overloaded",
            place,
            f"{base.line.ingredient.name} takes up {range_of(takes, '%')} of its weight in {what} ({basis_of(takes)}); beyond that {then}.",
            f"Use less, or choose a base that is made with it. {DEFER}",
            f"{batch.name} ({percent(share)})",
        )
