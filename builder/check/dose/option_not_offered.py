"""A limit leaves nothing of an option, or less than one drop or one division of the scale in a portion of this size."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.limit_words import DEFER, limit_in_words, where_it_stands, who_says
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place

_REMEDY = (
    "Fill a bigger container, offer another option, or dilute it first and offer what it is diluted to, with a card of its own. "
    "Take it out of the choice until then."
)
_NONE = "Take it out of the choice."


@rule_on(BATCH, FindingKind("option-not-offered", STOP | CAUTION, "A limit leaves nothing of an option that students may choose."))
def find_options_not_offered(batch: Batch) -> Iterator[BatchFinding]:
    """Look for options of which nothing may be added. Where the batch passes the limit by itself, that finding says it."""
    for dose in batch.filling.doses:
        for one in dose.each:
            lowered = one.lowered
            if one.is_offered or lowered is None or lowered.passed_already:
                continue
            limit = lowered.limit
            open_words = "" if lowered.proven else " The shares of a blend are not known, so that the most it can hold is counted."
            least = f"what a limit leaves of it is less than {'one drop and ' if one.drop else ''}one division of the scale"
            wrong = (
                f"{one.option} cannot be offered{f' at this size: {least}' if limit.most else ''}. "
                f"{limit_in_words(limit)[0].upper()}{limit_in_words(limit)[1:]} ({where_it_stands(limit)}). "
                f"This is {who_says(limit, batch.labelling)}.{open_words}"
            )
            remedy = f"{_REMEDY if limit.most else _NONE} {DEFER}"
            place = _place_of(one.option, dose.what, batch)
            if lowered.own_law and lowered.proven:
                yield batch.stop("option-not-offered", place, wrong, remedy, batch.name)
            else:
                yield batch.caution("option-not-offered", place, wrong, remedy, batch.name)


def _place_of(option: str, what: str, batch: Batch) -> Place:
    """Return the place at which a choice names an option."""
    named = (name for choice in batch.worked.recipe.choices if choice.what == what for name in choice.options if name is not None)
    return next(name.place for name in named if batch.cards[name.key].name == option)
