"""The check list of one date: everything to get ready on one page, in the order of doing, with boxes to tick."""

from builder.compose import addresses
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.recipe.portion_words import emergency_lines
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.preparation_words import check_groups, summary
from builder.compose.views.running import ChecklistView
from builder.model.document import Document
from builder.model.teaching.class_plan import ClassPlan

STYLES = (*PAPER_STYLES, "checklist.css")


def compose_checklist(edition: Edition, plan: ClassPlan) -> Document:
    """Make the check list of one date."""
    title = f"Check list: {plan.studio_class.title}"
    view = ChecklistView(
        frame=sheet_frame(edition, title, f"{title}, {when(edition, plan)}"),
        title=title,
        when=when(edition, plan),
        facts=summary(plan),
        emergency=emergency_lines(edition.studio.profile.emergency),
        groups=check_groups(edition, plan),
    )
    here = addresses.class_sheet(plan, "checklist.pdf")
    return Document(here.folder, here.path, title, edition.templates.render("sheets/checklist.html", view), STYLES)
