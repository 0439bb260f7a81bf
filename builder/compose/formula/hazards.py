"""Which hazards a recipe brings, and which caution speaks of each."""

from collections.abc import Iterable
from dataclasses import replace
from gettext import NullTranslations

from builder.compose.recipe.wording import keep_together
from builder.model.hazard import Hazard
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.model.teaching.caution import CautionText, Signal
from builder.rules.hazard import hazards_of, hazards_of_card
from builder.words.say import message, say, spoken


def hazards_of_recipe(studio: Studio, batch: WorkedBatch) -> tuple[str, ...]:
    """Return every hazard of a recipe, what students may choose included; soap made with lye is caustic until it has cured."""
    found = [hazard for line in batch.lines for hazard in hazards_of(studio, line.ingredient, line.phase, batch)]
    found += [Hazard.RAW_SOAP] if batch.product.made_with_lye else []
    return tuple(dict.fromkeys((*found, *hazards_of_choices(studio, batch))))


def hazards_of_choices(studio: Studio, batch: WorkedBatch) -> tuple[str, ...]:
    """Return the hazards of what students may choose."""
    chosen = (studio.ingredient(option) for dose in batch.own.doses for option in dose.offered if option is not None)
    return tuple(dict.fromkeys(hazard for card in chosen if card is not None for hazard in hazards_of_card(card, batch)))


def cautions_for(studio: Studio, hazards: Iterable[str]) -> tuple[CautionText, ...]:
    """Return the cautions that speak of some hazards, the gravest first."""
    wanted = set(hazards)
    found = sorted((text for text in studio.cautions.values() if text.hazard in wanted), key=_gravest_first)
    return tuple(said(text) for text in found)


# The signal words of cautions, as they are printed.
DANGER = message("DANGER")
_PRINTED = {
    Signal.DANGER: DANGER,
    Signal.WARNING: message("WARNING"),
    Signal.CAUTION: message("CAUTION"),
    Signal.NOTICE: message("NOTICE"),
}


def signal_word(text: CautionText) -> str:
    """Return the signal word of a caution as it is printed."""
    return say(_PRINTED[text.signal])


def said(text: CautionText) -> CautionText:
    """Return a caution in the language that is spoken; no number in it is parted from its unit."""
    return _said_in(text, spoken())


@remembered(256)
def _said_in(text: CautionText, _: NullTranslations) -> CautionText:
    return replace(
        text,
        name=say(text.name),
        what=_said(text.what),
        avoid=tuple(_said(line) for line in text.avoid),
        if_it_happens=tuple(_said(line) for line in text.if_it_happens),
        in_brief=_said(text.in_brief),
        again=_said(text.again),
    )


def _said(line: str) -> str:
    return keep_together(say(line)) if line else ""


def _gravest_first(text: CautionText) -> tuple[int, str]:
    return text.signal.rank, text.key
