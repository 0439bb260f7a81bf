"""What staff look up and do not carry to the table: the roster, costs, the reasons for the format, and the workings.

Decided: these are documents of their own. Why: the teacher who needs the next step turns pages with wet gloves, and a roster with
allergies is one copy that lies where nobody else reads it.
"""

from collections.abc import Iterator

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, Lies, ToPrint
from builder.compose.dose.choice_totals import view_guests, view_totals
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.home.size_words import size_words
from builder.compose.label.label_counts import label_counts
from builder.compose.recipe.batch_words import sums_of, view_worked
from builder.compose.recipe.sums import view_sums
from builder.compose.roster.allergy_words import allergy_note, view_allergies
from builder.compose.supplies.supply_words import view_supplies
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.running import view_running
from builder.compose.views.for_staff import CostsView, ReasonsView, RosterView, WorkedProduct, WorkingsView
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import say


def copies_of_roster(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield one copy, where the class keeps a roster."""
    if plan.has_roster:
        yield ToPrint(say("Roster: 1\u00a0copy, for the teacher alone"), say("Roster, for the teacher alone"), lies=Lies.WITH_NAMES)


def compose_roster(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the roster of one date; none where nobody is listed."""
    if not plan.has_roster:
        return None
    title = say("Roster: {class_title}", class_title=plan.studio_class.title)
    head = frame(edition, here, title, f"{title}, {when(edition, plan)}")
    view = RosterView(head, title, when(edition, plan), view_guests(plan), view_allergies(plan), allergy_note(edition.studio, plan))
    return Composed(view)


def _looked_up(name: str) -> ToPrint:
    """Return a document that needs no paper."""
    return ToPrint("", name, lies=Lies.LOOKED_UP)


def copies_of_costs(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield the one to look up, where the studio lists supplies."""
    if plan.cost is not None:
        yield _looked_up(say("Costs and buying"))


def compose_costs(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the sheet of costs of one date; none where the studio lists no supplies."""
    supplies = view_supplies(edition.studio, plan)
    if supplies is None:
        return None
    title = say("Costs and buying: {class_title}", class_title=plan.studio_class.title)
    return Composed(CostsView(frame(edition, here, title, f"{title}, {when(edition, plan)}"), title, when(edition, plan), supplies))


def copies_of_reasons(_: Edition, __: ClassPlan) -> Iterator[ToPrint]:
    """Yield the one to look up."""
    yield _looked_up(say("Why this format, and the rules"))


def compose_reasons(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the sheet that says why a class is taught as it is, and on what its rules rest."""
    title = say("Why this format, and the rules: {class_title}", class_title=plan.studio_class.title)
    head = frame(edition, here, title, f"{title}, {when(edition, plan)}")
    return Composed(ReasonsView(head, title, when(edition, plan), view_running(edition.studio, plan)))


def copies_of_workings(_: Edition, __: ClassPlan) -> Iterator[ToPrint]:
    """Yield the one to look up."""
    yield _looked_up(say("Workings"))


def compose_workings(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the sums of one date."""
    title = say("Workings: {class_title}", class_title=plan.studio_class.title)
    view = WorkingsView(
        frame=frame(edition, here, title, f"{title}, {when(edition, plan)}"),
        title=title,
        when=when(edition, plan),
        products=tuple(_worked(edition.studio, plan, made) for made in plan.made),
        sums=tuple(sums for made in plan.made for sums in sums_of(made)),
    )
    return Composed(view)


def _worked(studio: Studio, plan: ClassPlan, made: MadeProduct) -> WorkedProduct:
    totals = view_totals(studio, made, has_roster=plan.has_roster)
    return WorkedProduct(made.batch.recipe.name, label_counts(studio, made), view_worked(studio, plan, made), totals)


def compose_home_workings(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the sums of the home sizes of a class; none where it has no home sizes."""
    sums = tuple(view_sums(f"{home.batch.recipe.name}, {size_words(home.size)}", home.batch) for made in plan.made for home in made.home)
    if not sums:
        return None
    title = say("Workings of the home sizes: {class_title}", class_title=plan.studio_class.title)
    return Composed(WorkingsView(frame(edition, here, title, title), title, "", (), sums))
