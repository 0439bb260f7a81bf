"""What a batch fills, what may be added to a portion, and whom to call, in words that several sheets share."""

from collections.abc import Mapping

from builder.compose.views.take_home import ChoiceView
from builder.compose.wording import counted, grams, grams_and_ounces, listed, percent, sentence, within
from builder.model.batch_sheet import BatchSheet, Dose
from builder.model.studio import Studio


def container_name(studio: Studio, sheet: BatchSheet) -> str:
    """Give the name of the container of a recipe."""
    container = studio.container(sheet.recipe.fill.container)
    return within(container.name) if container else sheet.recipe.fill.container.text


def fills(studio: Studio, sheet: BatchSheet) -> str:
    """Say what a batch fills: `Fills 4 containers (4 fl oz bottle) of 113 g (3.98 oz); 12 g left over.`"""
    portions = sheet.portions
    size = f"({container_name(studio, sheet)}) with {grams_and_ounces(portions.fill)} each"
    left = f"{grams(portions.left)} left over" if portions.left else "nothing left over"
    return f"Fills {counted(portions.yields, 'container', 'containers')} {size}; {left}."


def view_choice(dose: Dose) -> ChoiceView:
    """Give what may be added to one portion."""
    options = listed([within(option) if option is not None else f"no {dose.what}" for option in dose.options], "or")
    drops = [f"{counted(limit.drops, 'drop', 'drops')} of {within(limit.option)}" for limit in dose.drops if limit.measured]
    also = f", or {listed(drops, 'or')}" if drops else ""
    return ChoiceView(sentence(dose.what), options, f"at most {grams(dose.at_most)} for each container ({percent(dose.share)}{also})")


def emergency_lines(numbers: Mapping[str, str]) -> tuple[str, ...]:
    """Give the numbers to call, each with what it is."""
    words = {"number": "Emergency"}
    return tuple(f"{words.get(name, sentence(name))}: {number}" for name, number in numbers.items() if number)
