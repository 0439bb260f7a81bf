"""What the teacher's sheet says of running the class: why this format, who watches whom, the plan of the room, who weighs what."""

from builder.compose.dates.time_words import format_sentence, format_words
from builder.compose.punctuation import labelled
from builder.compose.recipe.ingredient_tables import phases_of
from builder.compose.recipe.wording import sentence, within
from builder.compose.teaching.format_words import advice_line, how_it_is_made, taken_home
from builder.compose.teaching.seating import view_seating
from builder.compose.teaching.supervision_words import POLICY, ahead_lines, carried_words, rule_rows, watch_rows
from builder.compose.teaching.weighing_words import weighing_rows
from builder.compose.views.running import FormatView, RunningView
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say


def view_format(studio: Studio, plan: ClassPlan) -> FormatView:
    """Return the format with its sentences and the advice on it."""
    return FormatView(
        name=format_words(plan.format),
        sentences=tuple(text for text in (*how_it_is_made(studio, plan), taken_home(plan), format_sentence(plan)) if text),
        speaks_for=tuple(map(advice_line, plan.teaching.speaks_for)),
        speaks_against=tuple(map(advice_line, plan.teaching.speaks_against)),
    )


def _heat(plan: ClassPlan) -> tuple[str, ...]:
    """Return to what the phases of each recipe are heated, one line for a recipe that is heated."""
    lines = []
    for batch in (made.batch for made in plan.made):
        heated = {sentence(say(phase.name.text)) for phase in batch.recipe.phases if phase.heat_to}
        phases = [f"{one.title}, {within(one.treatment)}" for one in phases_of(batch) if one.title in heated]
        lines += [labelled(batch.recipe.name, "; ".join(phases))] if phases else []
    return tuple(lines)


def view_running(studio: Studio, plan: ClassPlan) -> RunningView:
    """Return everything on running a class."""
    return RunningView(
        taught=view_format(studio, plan),
        watch=watch_rows(plan),
        carried=carried_words(plan),
        rules=rule_rows(plan),
        heat=_heat(plan),
        ahead_lines=ahead_lines(plan),
        policy=say(POLICY),
        seating=view_seating(plan),
        cups=weighing_rows(plan),
    )
