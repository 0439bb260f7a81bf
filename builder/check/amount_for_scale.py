"""amount-weighs-nothing, amount-too-small-for-scale, amount-over-the-scale: amounts that the scales cannot weigh well."""

from collections.abc import Iterator

from builder.check.batches import Batch
from builder.model.batch_sheet import Weighed
from builder.model.finding import Finding, caution, stop
from builder.model.quantity import Mass
from builder.model.studio import Scale


def find_amounts_scales_cannot_weigh(batch: Batch) -> Iterator[Finding]:
    """Compare each exact amount with the division and the reach of the scale that weighs it."""
    for column in batch.sheet.columns:
        for weighed in column.weighed:
            yield from _one(batch, weighed)
    for dose in batch.sheet.doses:
        if not dose.at_most:
            place = next(choice.place for choice in batch.sheet.recipe.choices if choice.what == dose.what)
            yield stop(
                "dose-weighs-nothing",
                place,
                f"The most of {dose.what} that one portion may take is less than the finest scale of the studio can show.",
                "Add a finer scale to studio.yaml, fill bigger portions, or remove the choice.",
                about=batch.about,
            )


def _one(batch: Batch, weighed: Weighed) -> Iterator[Finding]:
    line = weighed.line
    fewest = batch.constants["fewest divisions of a weighing"]
    what = f"{batch.what}: {line.name} comes to {_show(line.exact, weighed.scale)}"
    if not weighed.mass:
        yield stop(
            "amount-weighs-nothing",
            line.place,
            f"{what}, which the finest scale shows as nothing.",
            "Make a bigger batch, or weigh on a finer scale.",
            about=batch.about,
        )
    elif line.exact < weighed.scale.division * fewest.typical:
        yield caution(
            "amount-too-small-for-scale",
            line.place,
            f"{what}, less than {float(fewest.typical):g} divisions of the scale ({_show(weighed.scale.division, weighed.scale)}), "
            "so that what is weighed may be far from what is meant.",
            "Make a bigger batch, weigh on a finer scale, or dilute the ingredient in another one first.",
            about=batch.about,
        )
    elif not weighed.fits:
        yield caution(
            "amount-over-the-scale",
            line.place,
            f"{what}, more than any scale there can hold.",
            "Make two batches, or list the bigger scale in studio.yaml.",
            about=batch.about,
        )


def _show(mass: Mass, scale: Scale) -> str:
    return f"{float(mass.grams / scale.grams_per_unit):.4g} {scale.unit}"
