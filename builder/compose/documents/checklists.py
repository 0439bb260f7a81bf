"""The check list of one date: everything to get ready on one page, in the order of doing, with boxes to tick."""

from collections.abc import Iterable, Iterator

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.recipe.portion_words import emergency_lines
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.preparation_words import check_groups, summary
from builder.compose.views.running import ChecklistView
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def copies_of_checklist(_: Edition, __: ClassPlan) -> Iterator[ToPrint]:
    """Yield one copy, which it need not name on itself."""
    yield ToPrint("", say("Check list"))


def compose_checklist(edition: Edition, plan: ClassPlan, here: Address, printing: Iterable[str]) -> Composed:
    """Make the check list of one date; `printing` says how many copies to print of which document."""
    title = say("Check list: {class_title}", class_title=plan.studio_class.title)
    view = ChecklistView(
        frame=frame(edition, here, title, f"{title}, {when(edition, plan)}"),
        title=title,
        when=when(edition, plan),
        facts=summary(plan),
        emergency=emergency_lines(edition.studio.profile.emergency),
        groups=check_groups(edition, plan, printing),
    )
    return Composed(view)
