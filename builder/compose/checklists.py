"""The check list of one date: everything to get ready on one page, in the order of doing, with boxes to tick."""

from builder.compose import addresses
from builder.compose.class_sheets import when
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.portion_words import emergency_lines
from builder.compose.preparation_words import check_groups, summary
from builder.compose.views.running import ChecklistView
from builder.model.class_sheet import ClassSheet
from builder.model.document import Document

STYLES = (*PAPER_STYLES, "checklist.css")


def compose_checklist(edition: Edition, sheet: ClassSheet) -> Document:
    """Make the check list of one date."""
    title = f"Check list: {sheet.studio_class.title}"
    view = ChecklistView(
        frame=sheet_frame(edition, title, f"{title}, {when(edition, sheet)}"),
        title=title,
        when=when(edition, sheet),
        facts=summary(sheet),
        emergency=emergency_lines(edition.studio.profile.emergency),
        groups=check_groups(edition, sheet),
    )
    here = addresses.class_sheet(sheet, "checklist.pdf")
    return Document(here.folder, here.path, title, edition.templates.render("sheets/checklist.html", view), STYLES)
