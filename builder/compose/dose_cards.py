"""The card for the table: for each product the most that one portion may take, to be read at arm's length while the bottles are open."""

from collections.abc import Sequence

from builder.compose import addresses
from builder.compose.class_sheets import when
from builder.compose.dose_words import ABOUT, drops_in_words, mixed_drops, reasons
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.hazards import cautions_for
from builder.compose.portion_words import container_name, emergency_lines
from builder.compose.views.doses import DoseCard, DoseCardsView, DoseChoice, DoseOption
from builder.compose.wording import NBSP, grams, listed, sentence, within
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.document import Document
from builder.model.dose import Dose, MostOf
from builder.model.studio import Studio

STYLES = (*PAPER_STYLES, "dose-card.css")
NEAT = "neat essential oil"


def compose_dose_cards(edition: Edition, sheet: ClassSheet) -> tuple[Document, ...]:
    """Make the cards of one date, a page for each product with choices and each kind of container that it fills, since the most that a
    portion may take goes with its weight; none where there is nothing to choose, or nobody chooses.
    """
    made = sheet.chosen
    if not made:
        return ()
    title = f"Scent and colour: {sheet.studio_class.title}"
    profile = edition.studio.profile
    cards = tuple(_card(edition.studio, one, filled) for one in made for filled in one.filled)
    doses = [dose for one in made for dose in one.batch.doses]
    view = DoseCardsView(
        frame=sheet_frame(edition, title, title),
        title=title,
        when=when(edition, sheet),
        neat=_neat(edition.studio, doses),
        ask=f"Not sure? Ask {profile.teacher or 'the teacher'} before you add it.",
        emergency=emergency_lines(profile.emergency),
        cards=cards,
    )
    here = addresses.class_sheet(sheet, "dose-cards.pdf")
    return (Document(here.folder, here.path, title, edition.templates.render("sheets/dose-cards.html", view), STYLES),)


def _card(studio: Studio, made: MadeSheet, sheet: BatchSheet) -> DoseCard:
    title = f"{sheet.recipe.name}, {container_name(studio, sheet)}" if len(made.filled) > 1 else sheet.recipe.name
    each = f"For one portion: {grams(sheet.portions.fill)} in one container ({container_name(studio, sheet)})."
    notes = (*reasons(sheet.doses), *_estimate(sheet.doses))
    return DoseCard(title, each, tuple(_choice(dose) for dose in sheet.doses if dose.each), notes)


def _choice(dose: Dose) -> DoseChoice:
    offered = [one for one in dose.each if one.is_offered]
    together = ""
    if dose.mixed:
        drops = mixed_drops(dose)
        together = f"Several together: no more than {f'{drops}, or ' if drops else ''}{grams(dose.mixed.weight)} in all."
    return DoseChoice(
        title=sentence(dose.what),
        count="either count" if any(one.drops for one in offered) else "",
        weigh="or weigh" if any(one.drops for one in offered) else "weigh",
        options=tuple(_option(one) for one in offered),
        together=together,
        without=f"Or no {dose.what}." if None in dose.options else "",
    )


def _option(one: MostOf) -> DoseOption:
    drops, weight = drops_in_words(one), grams(one.weight) if one.weight else ""
    count, _, word = drops.removeprefix(ABOUT).partition(NBSP)
    number, _, unit = weight.partition(NBSP)
    return DoseOption(one.option, ABOUT if drops.startswith(ABOUT) else "", count, word, number, unit)


def _estimate(doses: Sequence[Dose]) -> tuple[str, ...]:
    guessed = [within(one.option) for dose in doses for one in dose.each if one.is_offered and one.drop and not one.drop.measured]
    if not guessed:
        return ()
    words = (
        f"“About” is an estimate on the safe side, for a dropper with a 3 mm tip: no drop of {listed(list(dict.fromkeys(guessed)))} "
        "has been weighed. Count as estimate, or weigh."
    )
    return (words,)


def _neat(studio: Studio, doses: list[Dose]) -> tuple[str, ...]:
    """Give what to avoid with neat scent, where any is offered."""
    cards = [studio.ingredient(one.option) for dose in doses for one in dose.each if one.is_offered]
    if not any(card and NEAT in card.hazards for card in cards):
        return ()
    return tuple(line for text in cautions_for(studio, [NEAT]) for line in (f"{text.name}.", *text.avoid))
