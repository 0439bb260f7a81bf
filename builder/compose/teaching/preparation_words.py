"""What to get ready, in words: what is printed, and the check list in the order of doing."""

from collections.abc import Iterable, Sequence
from functools import partial

from builder.compose.dates.time_words import FORMAT_NAMES
from builder.compose.edition import Edition
from builder.compose.formula.hazards import hazards_of_recipe
from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import grams_at_least, keep_together, listed, sentence, within
from builder.compose.teaching.class_facts import staff
from builder.compose.teaching.mentions import class_amount
from builder.compose.teaching.staff_words import after_rows, staff_row
from builder.compose.teaching.supervision_words import asks_for_eyewash, numbers, place_kind, watch_rows
from builder.compose.teaching.tool_words import batch_with, tool_words
from builder.compose.teaching.weighing_words import cup_lines, mixing_lines, scale_lines
from builder.compose.views.running import CheckGroup, StaffRow
from builder.model.dates.studio_class import Format
from builder.model.hazard import Hazard
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.preparation import Worn
from builder.rules.hands.gear import is_gear
from builder.words.say import message, say, say_count

# What nobody may find who comes in after the class, by the hazard that its card names.
LOCKED_AWAY = {
    Hazard.CAUSTIC: message("lye"),
    Hazard.IRRITANT_ACID: message("acids"),
    Hazard.NEAT_ESSENTIAL_OIL: message("scent oils"),
    Hazard.NEAT_PRESERVATIVE: message("preservatives"),
    Hazard.FLAMMABLE: message("what can catch fire"),
}


def check_groups(edition: Edition, plan: ClassPlan, printing: Iterable[str]) -> tuple[CheckGroup, ...]:
    """Return everything to tick, `printing` among it, in the order of doing; headings without a line are left out."""
    ready = plan.preparation
    before, that_day = (
        tuple(_staff_line(staff_row(plan, one, edition.locale)) for one in plan.ahead if (one.begins is None) is another_day)
        for another_day in (True, False)
    )
    groups = [
        CheckGroup(say("Days before"), before),
        CheckGroup(say("Print"), tuple(printing)),
        CheckGroup(say("Before the class, on the clock"), that_day),
        CheckGroup(say("Set out, in all"), (*_in_all(plan), *scale_lines(plan))),
        CheckGroup(say("Weigh ahead, and mark"), (*mixing_lines(plan), *cup_lines(plan))),
        CheckGroup(_benches(plan), _tools(edition.studio, plan, ready.at_benches) if plan.format is not Format.DEMO else ()),
        CheckGroup(say("On the demo table"), _tools(edition.studio, plan, ready.at_demo)),
        CheckGroup(say("At the sink"), ready.at_sink),
        CheckGroup(say("For each person"), tuple(map(_worn, ready.worn))),
        CheckGroup(say("Safety, in reach"), tuple(_kit(ready.kit))),
        CheckGroup(say("Before the doors open"), tuple(_doors(plan))),
        CheckGroup(say("When all have gone"), tuple(_all_gone(edition.studio, plan))),
        CheckGroup(say("After the class"), tuple(_staff_line(row) for row in after_rows(plan, edition.locale))),
    ]
    return tuple(CheckGroup(group.title, tuple(keep_together(sentence(line)) for line in group.lines)) for group in groups if group.lines)


def _in_all(plan: ClassPlan) -> Iterable[str]:
    """Yield in words what all pots of each product take, rounded up: that much has to stand on the table."""
    for made in plan.made:
        amounts = ", ".join(f"{within(one.ingredient)} {grams_at_least(one.mass)}" for one in made.needed)
        yield say("For {recipe}: {amounts}", recipe=made.batch.recipe.name, amounts=amounts)


def _worn(worn: Worn) -> str:
    """Return in words how many of a piece of gear there have to be; gloves come in pairs."""
    if is_gear(worn.item, ["gloves"]):
        return say_count("{count}\u00a0pair of {gloves}", "{count}\u00a0pairs of {gloves}", worn.people, gloves=say(worn.item))
    return f"{worn.people} × {say(worn.item)}"


def _kit(kit: Sequence[str]) -> Iterable[str]:
    """Yield what has to be in reach, without what a longer line of it says as well: cold running water, and that it is for burns."""
    return (say(thing) for thing in kit if not any(other.startswith(f"{thing} ") for other in kit))


def _tools(studio: Studio, plan: ClassPlan, tools: Iterable[str]) -> tuple[str, ...]:
    return tuple(tool_words(tool, partial(class_amount, studio, batch_with(tool, plan.made))) for tool in tools)


def _staff_line(row: StaffRow) -> str:
    return labelled(row.when, f"{row.title}, {row.minutes}")


def _benches(plan: ClassPlan) -> str:
    return say("On each bench ({benches})", benches=numbers(range(1, plan.groups + 1), place_kind(plan)))


def _doors(plan: ClassPlan) -> Iterable[str]:
    watching = "; ".join(labelled(within(row.who), row.watches) for row in watch_rows(plan)) if plan.groups else ""
    if watching:
        yield say("Everybody knows whom they watch ({watching})", watching=watching)
    else:
        yield say("Everybody knows their place")
    if asks_for_eyewash(plan):
        yield say("Eyewash run and the way to it walked: 10 seconds from every bench")
    yield say("Ways free, cords to the wall, bags and coats away")
    yield say("First-aid kit, telephone and emergency numbers in sight")


def _all_gone(studio: Studio, plan: ClassPlan) -> Iterable[str]:
    yield say("Whatever was switched on or lit is off, and unplugged")
    yield say("Gear washed, counted and hung up")
    met = {hazard for made in plan.made for hazard in hazards_of_recipe(studio, made.batch)}
    locked = [say(thing) for hazard, thing in LOCKED_AWAY.items() if hazard in met]
    if locked:
        yield say("{things} locked away", things=sentence(listed(locked)))


def summary(plan: ClassPlan) -> tuple[str, ...]:
    """Return in words who comes, on one line."""
    return (
        say_count("{count}\u00a0student", "{count}\u00a0students", plan.students),
        staff(*plan.staff),
        say("taught as {format}", format=say(FORMAT_NAMES[plan.format])),
    )
