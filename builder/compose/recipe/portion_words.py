"""What a batch fills, and whom to call, in words that several sheets share."""

from collections.abc import Callable, Mapping

from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import grams, grams_and_ounces, keep_together, listed, sentence, within
from builder.model.dates.studio_class import BatchFor
from builder.model.recipe.filling import Filling, Reading
from builder.model.recipe.quantity import Mass
from builder.model.recipe.recipe import Fill
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import message, messages, say, say_count


def container_name(studio: Studio, fill: Fill) -> str:
    """Return the name of a container that is filled; no number in it is parted from its unit."""
    return keep_together(within(written_name(studio, fill)) if studio.container(fill.container) else fill.container.text)


def written_name(studio: Studio, fill: Fill) -> str:
    """Return the name of a container that is filled, as the library or the studio has written it."""
    container = studio.container(fill.container)
    return container.name if container else fill.container.text


NOUNS = {
    "bottle": messages("{count}\u00a0bottle", "{count}\u00a0bottles"),
    "jar": messages("{count}\u00a0jar", "{count}\u00a0jars"),
    "tin": messages("{count}\u00a0tin", "{count}\u00a0tins"),
    "tube": messages("{count}\u00a0tube", "{count}\u00a0tubes"),
    "pouch": messages("{count}\u00a0pouch", "{count}\u00a0pouches"),
    "bar": messages("{count}\u00a0bar", "{count}\u00a0bars"),
    "bag": messages("{count}\u00a0bag", "{count}\u00a0bags"),
    "cup": messages("{count}\u00a0cup", "{count}\u00a0cups"),
    "container": messages("{count}\u00a0container", "{count}\u00a0containers"),
}


def containers_of(studio: Studio, fill: Fill, count: int) -> str:
    """Count containers by the noun in their name: `4 bottles`, `6 bars`; others are containers."""
    return say_count(*nouns_of(written_name(studio, fill)), count)


def nouns_of(name: str) -> tuple[str, str]:
    """Return the messages that count what has a name, as it is written and not as a language says it."""
    words = name.casefold().split()
    return NOUNS[next((noun for noun in NOUNS if noun in words), "container")]


def read_both_ways(filling: Filling, what: Callable[[Reading], Mass]) -> str:
    """Write what scales show of a portion, in grams and in ounces; where no scale there reads in ounces, cut to two decimals."""
    ounces = filling.read_in_ounces
    return grams_and_ounces(what(filling.read), what(ounces) if ounces else None)


def fills(studio: Studio, batch: WorkedBatch) -> str:
    """Return in words what a batch fills, what is counted for the pot, and what is left over.

    `Fills 4 bottles (4 fl oz bottle) with 113 g (3.98 oz) each. 20 g are counted for what stays in the pot; 28 g are left, too little
    to fill one more.`
    """
    portions, read = batch.own.portions, batch.own.read
    name = container_name(studio, batch.own.fill)
    pot, left = grams(read.in_the_pot), grams(read.left)
    if portions.in_the_pot and read.left and portions.wanted is None:
        rest = say(
            "{pot} are counted for what stays in the pot and on the tools; {left} are left, too little to fill one more.",
            pot=pot,
            left=left,
        )
    elif portions.in_the_pot:
        rest = say("{pot} are counted for what stays in the pot and on the tools.", pot=pot)
    elif read.left and portions.wanted is None:
        rest = say("{left} are left, too little to fill one more.", left=left)
    else:
        rest = say("What sticks to bowls and tools is missing from the last one.")
    count, each = containers_of(studio, batch.own.fill, portions.yields), read_both_ways(batch.own, lambda one: one.fill)
    return f"{say('Fills {containers} ({name}) with {weight} each.', containers=count, name=name, weight=each)} {rest}"


def left_over(studio: Studio, plan: ClassPlan, made: MadeProduct) -> str:
    """Return what the batch of a smaller last group holds beyond what its people take: `3 bars of 110 g`; empty where there is nothing."""
    if made.make.batch_for is not BatchFor.GROUP:
        return ""
    kinds = [(one.fill, plan.unclaimed(one.each_student)) for one in made.batch.fillings]
    return listed([_of_weight(studio, fill, count) for fill, count in kinds if count])


def _of_weight(studio: Studio, fill: Fill, count: int) -> str:
    return say("{containers} of {weight}", containers=containers_of(studio, fill, count), weight=grams(fill.weight))


def numbers_to_call(numbers: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """Return the numbers to call, each after whose it is."""
    words = {"number": message("Emergency"), "poison centre": message("Poison centre")}
    return tuple((say(words.get(name, sentence(name))), number) for name, number in numbers.items() if number)


def emergency_lines(numbers: Mapping[str, str]) -> tuple[str, ...]:
    """Return the numbers to call, each with what it is."""
    return tuple(labelled(whose, number) for whose, number in numbers_to_call(numbers))
