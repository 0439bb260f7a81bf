"""Whether a container exists, and whether the weight that goes into it fits: a capacity is a volume, a fill is a weight.

The usual head space is common practice, no source.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP, FindingKind
from builder.model.library import ANY
from builder.model.recipe.container import Container
from builder.model.recipe.quantity import Mass, Volume
from builder.model.recipe.recipe import Fill, Recipe
from builder.model.studio import Studio
from builder.rules.basis import PRACTICE
from builder.words.nearest import did_you_mean
from builder.words.plain_number import plain_number

HEAD_SPACE = "usual head space"
HEAVIEST = "heaviest product"


@rule_on(
    STUDIO_UNWORKED,
    FindingKind("unknown-container", STOP, "A recipe or a class names a container that does not exist."),
    FindingKind(
        "fill-not-measured", CAUTION, "Whether the weight fits into the container is not known, since nobody has measured a density."
    ),
    FindingKind("fill-does-not-fit", ACCEPTABLE_STOP, "The weight that goes into a container is more than it holds."),
)
def find_fills_that_do_not_fit(studio: Studio) -> Iterator[Finding]:
    """Look at the container of each recipe, and at the others that a class fills from the same batch."""
    for recipe in studio.recipes.values():
        yield from _look(recipe.fill, recipe, studio)
    for studio_class in studio.classes.values():
        for make in studio_class.makes:
            recipe_or_none = studio.recipes.get(make.recipe.text)
            for also in make.also:
                yield from _look(also.fill, recipe_or_none, studio)


def _look(fill: Fill, recipe: Recipe | None, studio: Studio) -> Iterator[Finding]:
    container = studio.container(fill.container)
    if container is None:
        yield from _unknown(fill, studio)
    elif recipe is not None:
        yield from _fit(fill, container, recipe, studio)


def _unknown(fill: Fill, studio: Studio) -> Iterator[Finding]:
    name = fill.container
    known = [container.name for container in studio.containers.values()]
    if not studio.unread.containers & {name.key, ANY}:
        near = did_you_mean(name.text, known, studio.synonyms.containers)
        yield stop(
            "unknown-container",
            name.place,
            f'No container is called "{name}".',
            f"Correct the name, or add it to shelf/containers.yaml with its capacity.{near}",
        )


def _fit(fill: Fill, container: Container, recipe: Recipe, studio: Studio) -> Iterator[Finding]:
    volume = container.capacity or (container.inside.volume if container.inside else None)
    if volume is not None and fill.measured:
        yield from _too_heavy(fill, container, volume, studio)
    customary = container.takes_by_custom(fill.weight, studio.products[recipe.product])
    if volume is None or fill.measured or (customary and recipe.density is None):
        return
    empty = container.head_space.fraction if container.head_space else studio.constants[HEAD_SPACE].typical / 100
    usable = Volume(volume.millilitres * (1 - empty))
    inside = f"{container.name}: {_millilitres(volume)}, of which {plain_number(empty * 100)} % stay empty as head space"
    if recipe.density is None:
        yield caution(
            "fill-not-measured",
            fill.place,
            f"Whether {_grams(fill.weight)} of {recipe.name} fit is not known ({inside}). Only a density, or one filled container, "
            "says what that weighs.",
            "Fill one container to the line, weigh what is in it, and write it down beside the weight: "
            '`measured: "one filled and weighed, when"`. Or enter the `density:` of the recipe.',
        )
        return
    most = recipe.density.density.mass_of(usable)
    if fill.weight > most:
        yield stop(
            "fill-does-not-fit",
            fill.place,
            f"{_grams(fill.weight)} of {recipe.name} do not fit ({inside}). At the measured density of "
            f"{plain_number(recipe.density.density.grams_per_millilitre, 3)} g/mL it holds {_grams(most)}.",
            "Fill less, take a bigger container, or measure anew: if one filled container held it, write "
            '`measured: "one filled and weighed, when"` beside the weight.',
            acceptable=True,
        )


def _too_heavy(fill: Fill, container: Container, volume: Volume, studio: Studio) -> Iterator[Finding]:
    """Look for a measured weight that nothing weighs in so little room. Batch and doses would follow it."""
    heaviest = studio.constants[HEAVIEST].typical
    density = fill.weight.grams / volume.millilitres
    if density > heaviest:
        yield stop(
            "fill-does-not-fit",
            fill.place,
            f"{_grams(fill.weight)} in {container.name} ({_millilitres(volume)}) is {plain_number(density, 2)} g/mL, and nothing that is "
            f"filled here weighs more than {plain_number(heaviest)} g/mL ({PRACTICE}). The batch, and the most that "
            "students may add, would be worked out for that weight.",
            "Correct the weight or the container.",
            acceptable=True,
        )


def _grams(mass: Mass) -> str:
    return f"{plain_number(mass.grams, 4)} g"


def _millilitres(volume: Volume) -> str:
    return f"{plain_number(Fraction(volume.millilitres), 4)} mL"
