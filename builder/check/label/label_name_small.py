"""A label without a composed front: its name cannot be the largest thing on it beside net contents of the lawful height."""

from collections.abc import Iterable, Iterator

from builder.check.rule import LABELS, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.label.label_fit import LabelFit
from builder.model.subject import Labels


@rule_on(
    LABELS, FindingKind("label-name-small", CAUTION, "The name on a label cannot be the largest thing on it, so that no design is used.")
)
def find_names_too_small(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Name each product whose labels fit, but in no design."""
    for fit in fits:
        if fit.fits and not fit.is_composed:
            yield caution(
                "label-name-small",
                fit.place,
                f"{fit.name}: beside net contents of the lawful height ({fit.least}) its name cannot be the largest thing on a label of "
                f'the sheet "{fit.on}". The label says all that it must, packed and without a design.',
                "Choose larger labels, allow two for front and back (leave out `panels:`, or write `panels: 2`), or shorten the name or "
                "its longest word; or accept it with a reason.",
                about=frozenset({Labels(fit.recipe, fit.class_key)}),
            )
