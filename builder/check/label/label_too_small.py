"""The text of a label does not fit on it in type as tall as the law asks for, or nobody has written how tall that is.

Decided: a region without heights of type stops all labels, and cannot be accepted. Why: labels of a guessed size would look as lawful as
all others.
"""

from collections.abc import Iterable, Iterator

from builder.check.batches import NO_LABEL
from builder.check.rule import LABELS, STUDIO, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, STOP, FindingKind
from builder.model.label.label_fit import LabelFit
from builder.model.studio import Studio
from builder.model.subject import Labels, Subject
from builder.words.listed import first_in_quotes


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


@rule_on(STUDIO, FindingKind("type-heights-unknown", STOP, "Nothing says how high the type of a label has to be in the studio's region."))
def find_type_heights_unknown(studio: Studio) -> Iterator[Finding]:
    """Look up the rows of the region; a region that cannot be read is a finding of its own."""
    made = list(studio.recipes_made)
    if not made or studio.profile.region not in studio.regions or studio.knows_type_heights:
        return
    yield stop(
        "type-heights-unknown",
        studio.profile.at("region"),
        f"Nothing says how high the type of a label has to be in this region ({studio.profile.region}), so no product gets a label.",
        "Write `region:` of a law whose heights are known here. Until then print labels by the text of your own law.",
        about=frozenset[Subject](Labels(recipe.key) for recipe in made),
    )


def _remedy(fit: LabelFit) -> str:
    ways = [f"Choose a sheet on which it fits: {first_in_quotes(fit.would_do)}"] if fit.would_do else []
    ways += [f"write `panels: 2` under `labels:` and choose {first_in_quotes(fit.on_two)} to put it on two labels"] if fit.on_two else []
    ways += ["shorten directions, storage or cautions"]
    told = "; or ".join(ways)
    return f"{told[0].upper()}{told[1:]}. {NO_LABEL}"
