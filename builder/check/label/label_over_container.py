"""A label that is larger than every place on its container where it could sit.

Decided: labels that do not sit come after tags, and of a container that nobody has measured only that is said which holds for
every one of its capacity. Why: half a label over an edge comes off; a guess at a jar would be a false alarm.
"""

from collections.abc import Iterable, Iterator

from builder.check.rule import LABELS, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.label.label_fit import LabelFit, OverContainer
from builder.model.subject import Labels
from builder.words.listed import first_in_quotes


@rule_on(LABELS, FindingKind("label-over-container", CAUTION, "The label is larger than every place that the container has for it."))
def find_labels_over_containers(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Name each product whose labels do not sit, and the sheets whose labels would."""
    for fit in fits:
        if fit.over is None:
            continue
        over = fit.over
        yield caution(
            "label-over-container",
            fit.place,
            f'{fit.name}: a label of the sheet "{over.sheet}" is {over.label}, and the container "{over.container}" has no place for '
            f"{'it' if over.labels == 1 else f'{over.labels} of them'} ({over.places}).",
            f"{_remedy(over)} {fit.with_little_room}",
            about=frozenset({Labels(fit.recipe, fit.class_key)}),
        )


def _remedy(over: OverContainer) -> str:
    """Name the ways out; that of two labels only where one does not do."""
    ways = [f"choose a sheet whose labels hold the text and sit: {first_in_quotes(over.would_do)}"] if over.would_do else []
    ways += [f"write `sheet: {over.tags[0]}` under `labels:` to hang a tag on it"] if over.tags else []
    if over.on_two and not ways:
        ways = [f"write `panels: 2` and `sheet: {over.on_two[0]}` under `labels:`, for the front and the back on two"]
    ways += [
        "measure the container and leave out `sheet:` to get labels of its own size, take a larger one, or shorten what the label says"
    ]
    told = "; or ".join(ways)
    return f"{told[0].upper()}{told[1:]}."
