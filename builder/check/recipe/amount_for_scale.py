"""Amounts that the scales cannot weigh well."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.places import place_of_choice, place_of_line
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.place import Place
from builder.model.recipe.column import Column, Role, Weighed
from builder.model.recipe.quantity import NO_MASS, Mass
from builder.model.studio import Scale
from builder.words.plain_number import plain_number

_BIGGER = "Make a bigger batch, or weigh on a finer scale."


@rule_on(
    BATCH,
    FindingKind("dose-weighs-nothing", STOP, "The most that a portion may take of a choice is less than the finest scale can show."),
    FindingKind("amount-weighs-nothing", STOP, "So little is wanted of something that the finest scale shows nothing."),
    FindingKind(
        "amount-too-small-for-scale",
        CAUTION,
        "An amount comes to a few divisions of the scale, so that what is weighed may be far from what is meant.",
    ),
    FindingKind("amount-over-the-scale", CAUTION, "An amount, with the vessel that holds it, is more than any scale there can hold."),
)
def find_amounts_scales_cannot_weigh(batch: Batch) -> Iterator[BatchFinding]:
    """Compare each exact amount with the division and the reach of the scale that weighs it."""
    for column in batch.worked.columns:
        yield from _fats_within_what_scales_are_off(batch, column)
        for weighed in column.weighed:
            # Water below zero is a finding of its own.
            if weighed.line.exact >= NO_MASS:
                yield from _one(batch, column, weighed)
        told = {w.line.phase for w in column.weighed if not w.fits}
        for top_up in (one for one in column.top_ups if not one.fits and one.phase not in told):
            place = next(one.name.place for one in batch.worked.recipe.phases if one.name.text == top_up.phase)
            what = f"The {top_up.phase}, which is weighed in its pot before and after it is heated,"
            yield _over(batch, column, place, what, top_up.weight, column.weighed[0].scale, "Make")
    for dose in batch.filling.doses:
        # What a limit leaves too little of is a finding of its own.
        if dose.each and not any(one.is_offered or one.lowered for one in dose.each):
            yield batch.stop(
                "dose-weighs-nothing",
                place_of_choice(dose.what, batch.worked.recipe),
                f"The most of {dose.what} that one portion may take is less than the finest scale can show.",
                "Add a finer scale to studio.yaml, fill bigger portions, or remove the choice.",
                batch.name,
            )


def _fats_within_what_scales_are_off(batch: Batch, column: Column) -> Iterator[BatchFinding]:
    """See that a soap whose weights are all more than nothing has a lye that could be checked."""
    if batch.worked.recipe.lye and column.lye is None and all(w.mass > NO_MASS for w in column.weighed):
        fat = next(w for w in column.weighed if w.line.role is Role.OIL)
        off = _show(fat.scale.off, fat.scale)
        yield batch.stop(
            "amount-weighs-nothing",
            place_of_line(fat.line, batch.worked.recipe),
            "So little fat is wanted that it could be none, by as much as the scale may be off.",
            _BIGGER,
            f"{batch.weighed_in(column.unit)} ({_show(fat.line.exact, fat.scale)} on a scale that may be off by {off})",
        )


def _one(batch: Batch, column: Column, weighed: Weighed) -> Iterator[BatchFinding]:
    line, scale = weighed.line, weighed.scale
    fewest = batch.constants["fewest divisions of a weighing"].typical
    place = place_of_line(line, batch.worked.recipe)
    where, amount = batch.weighed_in(column.unit), _show(line.exact, scale)
    division = _show(scale.division, scale)
    if not weighed.mass:
        yield batch.stop(
            "amount-weighs-nothing",
            place,
            f"So little {line.name} is wanted that the finest scale shows it as nothing.",
            _BIGGER,
            f"{where} ({amount} on a scale that reads to {division})",
        )
    elif line.exact < scale.division * fewest:
        yield batch.caution(
            "amount-too-small-for-scale",
            place,
            f"{line.name} comes to less than {plain_number(fewest)} divisions of the scale, "
            "so that what is weighed may be far from what is meant.",
            "Make a bigger batch, weigh on a finer scale, or dilute the ingredient in another one first.",
            f"{where} ({amount} on a scale that reads to {division})",
        )
    elif not weighed.fits:
        yield _over(batch, column, place, line.name, line.exact, scale, "Weigh it in parts, make")


def _over(batch: Batch, column: Column, place: Place, what: str, mass: Mass, scale: Scale, make: str) -> BatchFinding:
    least, share = batch.constants["lightest weighing cup"].typical, batch.constants["weighing vessel to what it holds"].typical
    return batch.caution(
        "amount-over-the-scale",
        place,
        f"{what} comes to more than any scale there can hold together with a vessel. What holds it is taken to weigh "
        f"{plain_number(least)} g, and {plain_number(share)} % of what is in it.",
        f"{make} two batches, or list the bigger scale in studio.yaml.",
        f"{batch.weighed_in(column.unit)} ({_show(mass, scale)})",
    )


def _show(mass: Mass, scale: Scale) -> str:
    return f"{plain_number(mass.grams / scale.grams_per_unit, 2)} {scale.unit}"
