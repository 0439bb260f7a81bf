"""label-over-container: a label that is larger than every place on its container where it could sit."""

from collections.abc import Iterable, Iterator

from builder.model.finding import Finding, caution
from builder.model.label_fit import LabelFit


def find_labels_over_containers(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Name each product whose labels do not sit, and the sheets whose labels would. What nobody has measured is not looked at."""
    for fit in fits:
        if fit.over is None:
            continue
        over = fit.over
        yield caution(
            "label-over-container",
            fit.place,
            f'{fit.name}: a label of the sheet "{over.sheet}" is {over.label}, and the container "{over.container}" has no place for '
            f"{'it' if over.labels == 1 else f'{over.labels} of them'} ({over.places}).",
            f"{_remedy(over.would_do, over.tags)} {fit.with_little_room}",
            about=frozenset({fit.class_key}),
        )


def _remedy(would_do: tuple[str, ...], tags: tuple[str, ...]) -> str:
    listed = " or ".join(f'"{name}"' for name in would_do[:3])
    ways = [f"choose a sheet whose labels hold the text and sit: {listed}"] if would_do else []
    ways += [f"write `sheet: {tags[0]}` under `labels:` to hang a tag on it"] if tags else []
    ways += ["measure the container again, take a larger one, or shorten what the label says"]
    told = "; or ".join(ways)
    return f"{told[0].upper()}{told[1:]}."
