"""A label on which a design does not do what was wished: its name is not the largest thing, or nothing on it can be coloured in."""

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


@rule_on(LABELS, FindingKind("label-nothing-to-colour", CAUTION, "A label is to be coloured in, and its front has no room for a field."))
def find_fronts_without_fields(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Name each product whose fronts are outlines without anything that a crayon fills."""
    for fit in fits:
        if fit.fits and not fit.has_fields:
            yield caution(
                "label-nothing-to-colour",
                fit.place,
                f'{fit.name}: its labels are to be coloured in, and beside the words a label of the sheet "{fit.on}" has no room for a '
                "field of 4 mm in this design, so that there is nothing to colour in.",
                "Choose larger labels, allow two for front and back (`panels: 2`) or another `design:`; or write `tags: yes`, and colour "
                "in the gift tag. You may accept it with a reason.",
                about=frozenset({Labels(fit.recipe, fit.class_key)}),
            )
