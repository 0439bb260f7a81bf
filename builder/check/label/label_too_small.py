"""The text of a label does not fit on it in type as tall as the law asks for."""

from collections.abc import Iterable, Iterator

from builder.check.batches import NO_LABEL
from builder.check.rule import LABELS, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, FindingKind
from builder.model.label.label_fit import LabelFit
from builder.model.subject import Labels


@rule_on(LABELS, FindingKind("label-too-small", ACCEPTABLE_STOP, "What the label has to say does not fit in type of the least height."))
def find_labels_too_small(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Name each product whose labels do not fit, and the sheets of the known ones on which they would."""
    for fit in fits:
        if fit.fits:
            continue
        on = f'on a label of the sheet "{fit.asked_for}"' if fit.asked_for else "on any label that is known for this paper"
        yield stop(
            "label-too-small",
            fit.place,
            f"{fit.name}: what its label has to say does not fit {on} in type of the least height ({fit.least}), and type is "
            "never made smaller than that.",
            f"{_remedy(fit)} {fit.with_little_room}",
            about=frozenset({Labels(fit.recipe, fit.class_key)}),
            acceptable=True,
        )


def _remedy(fit: LabelFit) -> str:
    ways = [f"Choose a sheet on which it fits: {_listed(fit.would_do)}"] if fit.would_do else []
    ways += [f"write `panels: 2` under `labels:` and choose {_listed(fit.on_two)} to put it on two labels"] if fit.on_two else []
    ways += ["shorten directions, storage or cautions"]
    told = "; or ".join(ways)
    return f"{told[0].upper()}{told[1:]}. {NO_LABEL}"


def _listed(names: tuple[str, ...]) -> str:
    return " or ".join(f'"{name}"' for name in names[:3])
