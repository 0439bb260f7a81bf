"""A sheet of labels that nobody has described, or a first label that it does not have."""

from collections.abc import Iterable, Iterator

from builder.check.rule import LABELS, STUDIO, rule_on
from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.label_fit import LabelFit
from builder.model.label.label_sheet import LabelSheet, LabelWishes
from builder.model.library import ANY
from builder.model.studio import Studio
from builder.model.subject import Labels, Subject
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

LABEL_POSITION_OFF_THE_SHEET = FindingKind(
    "label-position-off-the-sheet", STOP, "The first label is to have a number that the sheet of labels does not have."
)


@rule_on(STUDIO, FindingKind("label-sheet-unknown", STOP, "There is no sheet of labels of that name."), LABEL_POSITION_OFF_THE_SHEET)
def find_unfit_label_sheets(studio: Studio) -> Iterator[Finding]:
    """Look up the sheets that the studio and its classes ask for, and the positions at which they begin."""
    yield from _unknown(studio, studio.profile.labels, *studio.classes.values())
    for studio_class in studio.classes.values():
        yield from _unknown(studio, studio_class.labels, studio_class)
        sheet = _asked_for(studio, studio_class.labels) or _asked_for(studio, studio.profile.labels)
        for date in studio_class.dates:
            if sheet is not None and date.first_label > sheet.positions:
                yield stop(
                    "label-position-off-the-sheet",
                    date.at("first label"),
                    f'The first label is to be number {date.first_label}, and the sheet "{sheet.name}" has {sheet.positions}.',
                    f"Count the labels row by row from the top left: write a number from 1 to {sheet.positions}.",
                    about=_labels_of(studio_class),
                )


@rule_on(LABELS, LABEL_POSITION_OFF_THE_SHEET)
def find_first_labels_off_the_sheet(fits: Iterable[LabelFit]) -> Iterator[Finding]:
    """Compare the first label with the sheet that was found for a class which asks for none."""
    for fit in fits:
        start = fit.starts
        if start is not None and not fit.asked_for and start.number > start.positions:
            yield stop(
                "label-position-off-the-sheet",
                start.place,
                f"The first label is to be number {start.number}, and the labels of {fit.name} come on the sheet "
                f'"{start.sheet}", which has {start.positions}.',
                "Write the sheet that you have begun as `sheet:` under `labels:`, and count its labels row by row from the top left.",
                about=frozenset({Labels(fit.recipe, fit.class_key)}),
            )


def _asked_for(studio: Studio, wishes: LabelWishes) -> LabelSheet | None:
    return studio.label_sheets.get(fold(wishes.sheet)) if wishes.sheet else None


def _labels_of(*classes: StudioClass) -> frozenset[Subject]:
    return frozenset(Labels(make.recipe.text, a_class.key) for a_class in classes for make in a_class.makes)


def _unknown(studio: Studio, wishes: LabelWishes, *classes: StudioClass) -> Iterator[Finding]:
    unread = studio.unread.label_sheets
    if wishes.sheet and _asked_for(studio, wishes) is None and ANY not in unread and fold(wishes.sheet) not in unread:
        names = [sheet.name for sheet in studio.label_sheets.values()]
        yield stop(
            "label-sheet-unknown",
            wishes.place,
            f'There is no sheet of labels "{wishes.sheet}", so nobody knows where its labels lie on the paper.',
            "`stillroom list sheets` shows those that there are; or measure yours and add it to shelf/label_sheets.yaml."
            f"{did_you_mean(wishes.sheet, names)}",
            about=_labels_of(*classes),
        )
