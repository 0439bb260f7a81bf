"""The card for the table: for each product the most that one portion may take, to be read at arm's length while the bottles are open."""

import re
from collections.abc import Iterator, Sequence

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.dose.dose_words import drops_in_words, mixed_drops, mixed_weight, none_of, reasons
from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for
from builder.compose.frames import frame
from builder.compose.recipe.portion_words import container_name, emergency_lines
from builder.compose.recipe.wording import NBSP, grams, listed, sentence, within
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.lesson_flow import view_caution
from builder.compose.views.caution import CautionView
from builder.compose.views.doses import DoseCard, DoseCardsView, DoseChoice, DoseOption
from builder.model.dose.dose import Dose, MostOf
from builder.model.hazard import Hazard
from builder.model.recipe.filling import Filling
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import say

# The number of drops between what is said before it and after it.
_NUMBER_WITHIN = re.compile(r"(\d+)")


def copies_of_dose_cards(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many sets to print."""
    if plan.chosen:
        line = say("Scent and colour, cards for the table: 1 set for each table")
        yield ToPrint(line, say("Scent and colour, cards for the table"), said=say("1 for each table"), apart=True)


def compose_dose_cards(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the cards of one date, one for each product with choices and each kind of container that it fills, since the most that a portion
    may take goes with its weight, two on a page where they fit it; none where there is nothing to choose, or nobody chooses.
    """
    made = plan.chosen
    if not made:
        return None
    title = say("Scent and colour: {class_title}", class_title=plan.studio_class.title)
    profile = edition.studio.profile
    cards = tuple(_card(edition.studio, one, filled) for one in made for filled in one.filled)
    doses = [dose for one in made for dose in one.batch.own.doses]
    view = DoseCardsView(
        frame=frame(edition, here, title, title),
        title=title,
        when=when(edition, plan),
        neat=_neat(edition.studio, doses),
        ask=_ask(profile.teacher),
        emergency=emergency_lines(profile.emergency),
        pages=tuple(cards[at : at + 2] for at in range(0, len(cards), 2)),
    )
    return Composed(view)


def _ask(teacher: str) -> str:
    if teacher:
        return say("Not sure? Ask {teacher} before you add it.", teacher=teacher)
    return say("Not sure? Ask the teacher before you add it.")


def _card(studio: Studio, made: MadeProduct, filling: Filling) -> DoseCard:
    name, container = made.batch.recipe.name, container_name(studio, filling.fill)
    title = f"{name}, {container}" if len(made.filled) > 1 else name
    each = say("For one portion: {weight} in one container ({container}).", weight=grams(filling.fill.weight), container=container)
    notes = (*reasons(filling.doses), *_estimate(filling.doses))
    return DoseCard(title, each, tuple(_choice(dose) for dose in filling.doses if dose.each), notes)


def _choice(dose: Dose) -> DoseChoice:
    offered = [one for one in dose.each if one.is_offered]
    together = ""
    if dose.mixed:
        drops, weight = mixed_drops(dose), mixed_weight(dose)
        if drops and weight:
            together = say("Several together: no more than {drops}, or {weight} in all.", drops=drops, weight=weight)
        elif drops or weight:
            together = say("Several together: no more than {weight} in all.", weight=weight or drops)
    return DoseChoice(
        title=sentence(say(dose.what)),
        count=say("either count") if any(one.drops for one in offered) else "",
        weigh=say("or weigh") if any(one.drops for one in offered) else say("weigh"),
        options=tuple(_option(one) for one in offered),
        together=together,
        without=say("Or {nothing}.", nothing=none_of(dose.what)) if None in dose.options else "",
    )


def _option(one: MostOf) -> DoseOption:
    drops, weight = drops_in_words(one), grams(one.weight) if one.weight else ""
    about, count, word = _NUMBER_WITHIN.split(drops, 1) if drops else ("", "", "")
    number, _, unit = weight.partition(NBSP)
    return DoseOption(say(one.option), about, count, word.strip(NBSP), number, unit)


def _estimate(doses: Sequence[Dose]) -> tuple[str, ...]:
    guessed = [within(one.option) for dose in doses for one in dose.each if one.is_offered and one.drop and not one.drop.measured]
    if not guessed:
        return ()
    return (
        say(
            "“About” is an estimate on the safe side, for a dropper with a 3 mm tip: no drop of {options} has been weighed. Count as "
            "estimate, or weigh.",
            options=listed(list(dict.fromkeys(guessed))),
        ),
    )


def _neat(studio: Studio, doses: list[Dose]) -> tuple[CautionView, ...]:
    """Return the cautions on neat scent, where any is offered."""
    cards = [studio.ingredient(one.option) for dose in doses for one in dose.each if one.is_offered]
    if not any(card and Hazard.NEAT_ESSENTIAL_OIL in card.hazards for card in cards):
        return ()
    return tuple(view_caution(text) for text in cautions_for(studio, [Hazard.NEAT_ESSENTIAL_OIL]))
