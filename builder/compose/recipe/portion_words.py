"""What a batch fills, and whom to call, in words that several sheets share."""

from collections.abc import Mapping

from builder.compose.recipe.wording import counted, grams, grams_and_ounces, listed, sentence, within
from builder.model.dates.studio_class import BatchFor
from builder.model.recipe.recipe import Fill
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct


def container_name(studio: Studio, fill: Fill) -> str:
    """Give the name of a container that is filled."""
    container = studio.container(fill.container)
    return within(container.name) if container else fill.container.text


NOUNS = ("bottle", "jar", "tin", "tube", "pouch", "bar", "bag", "cup")


def containers_of(count: int, name: str) -> str:
    """Count containers by the noun that their name ends in: `4 bottles`, `6 bars`; others are containers."""
    noun = next((noun for noun in NOUNS if noun in name.casefold().split()), "container")
    return counted(count, noun, f"{noun}{'es' if noun.endswith('ch') else 's'}")


def fills(studio: Studio, batch: WorkedBatch) -> str:
    """Say what a batch fills, what is counted for the pot, and what is left over.

    `Fills 4 bottles (4 fl oz bottle) with 113 g (3.98 oz) each. 20 g are counted for what stays in the pot; 28 g are left over.`
    """
    portions = batch.own.portions
    name = container_name(studio, batch.own.fill)
    size = f"({name}) with {grams_and_ounces(portions.fill)} each"
    pot = [f"{grams(portions.in_the_pot)} are counted for what stays in the pot and on the tools"] if portions.in_the_pot else []
    left = [f"{grams(portions.left)} are left over"] if portions.left and portions.wanted is None else []
    rest = "; ".join((*pot, *left)) or "What sticks to bowls and tools is missing from the last one"
    return f"Fills {containers_of(portions.yields, name)} {size}. {rest}."


def left_over(studio: Studio, plan: ClassPlan, made: MadeProduct) -> str:
    """Say what the batch of a smaller last group holds beyond what its people take: `3 bars of 110 g`; empty where there is nothing."""
    if made.make.batch_for is not BatchFor.GROUP:
        return ""
    kinds = [(one.fill, plan.unclaimed(one.each_student)) for one in made.batch.fillings]
    return listed([f"{containers_of(count, container_name(studio, fill))} of {grams(fill.weight)}" for fill, count in kinds if count])


def emergency_lines(numbers: Mapping[str, str]) -> tuple[str, ...]:
    """Give the numbers to call, each with what it is."""
    words = {"number": "Emergency"}
    return tuple(f"{words.get(name, sentence(name))}: {number}" for name, number in numbers.items() if number)
