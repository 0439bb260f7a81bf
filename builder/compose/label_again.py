"""The labels of one student once more, for one that was spoilt or lost, where the sheets of the date have room left.

Decided: they begin with the first label that the sheets of the date leave free; plain paper begins anew. Why: a half-used sheet lies
there, and paper that has been cut is no sheet any more.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from builder.compose.document_kind import DocumentKind
from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.compose.label_layout.label_layout import LaidOut
from builder.compose.label_layout.label_sheets import wished
from builder.compose.scopes import LABELS, Labelled
from builder.model.document import Document
from builder.model.label.label_sheet import LabelSheet


class NotOnTheSheetError(ValueError):
    """A sheet has no label of the number with which labels were to begin."""

    def __init__(self, sheet: LabelSheet, first: int) -> None:
        """Take the sheet, and the label that it does not have, counted from 1."""
        super().__init__(f'a sheet "{sheet.name}" has {sheet.positions} labels, and label {first} is not one of them')


@dataclass(frozen=True)
class Again:
    """One sheet: of what its labels are, how many lie on it, on which sheet they lie, and with which of its labels they begin, from 1.

    Front and back are counted as two where they lie apart on it. `begins_behind` is where the backs begin, if they lie on a sheet of their
    own (`behind`).
    """

    document: Document
    of: str
    count: int
    sheet: LabelSheet
    begins: int
    behind: LabelSheet | None
    begins_behind: int


def labels_again(edition: Edition, place: int, first: int | None) -> Iterator[Again]:
    """Make the labels of one place on the roster, a sheet for each size of label; none where nothing is laid out or all is held back.

    The edition has one date. `first` says where to begin on a sheet; without it that is where the labels of the date end. Raises
    NotOnTheSheetError.
    """
    (kind,) = (kind for kind in DOCUMENTS if kind.scope is LABELS)
    for labelled in LABELS.all(edition):
        own = tuple(one for one in labelled.labels if one.jar.student == place)
        if own:
            to_colour = wished(edition.studio, labelled.plan).to_colour
            placed = _placed(labelled, replace(labelled, labels=own), first, to_colour=to_colour)
            yield _again(edition, kind, placed, place, sum(one.laid_out.labels_each(to_colour=to_colour) for one in own))


def _placed(whole: Labelled, own: Labelled, first: int | None, *, to_colour: bool) -> Labelled:
    laid = own.labels[0].laid_out
    for sheet in (laid.sheet, laid.back.sheet if laid.back else laid.sheet):
        if first is not None and first > sheet.positions:
            raise NotOnTheSheetError(sheet, first)
    taken = sum(one.laid_out.labels_each(to_colour=to_colour) for one in whole.labels)
    begins = first or _next_free(laid.sheet, whole.first - 1 + taken)
    behind = first or (_next_free(laid.back.sheet, whole.first_back - 1 + len(whole.labels)) if laid.back else 1)
    return replace(own, first=begins, first_back=behind)


def _next_free(sheet: LabelSheet, taken: int) -> int:
    return 1 if sheet.is_cut else taken % sheet.positions + 1


def _again(edition: Edition, kind: DocumentKind[Labelled], labelled: Labelled, place: int, count: int) -> Again:
    made = kind.make(edition, labelled)
    assert made is not None
    laid: LaidOut = labelled.labels[0].laid_out
    names = LABELS.names(labelled)
    path = f"{names['class']}--{names['date']}--place-{place}--{names['filling']}.pdf"
    behind = laid.back.sheet if laid.back else None
    return Again(replace(made, path=path), labelled.title, count, laid.sheet, labelled.first, behind, labelled.first_back)
