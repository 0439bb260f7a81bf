"""A file of `recipes/` becomes a recipe, with a place on everything that a finding may point at."""

from collections.abc import Callable
from functools import partial
from pathlib import PurePosixPath
from typing import Any

from builder.model.finding import Finding
from builder.model.label.language import Translation
from builder.model.place import Name
from builder.model.recipe.recipe import Choice, Cure, Fill, MeasuredDensity, MeasuredPh, Phase, Recipe, RecipeLine, SteamsAway
from builder.model.recipe.unread import UNREAD, UnreadError
from builder.read.acceptances import make_acceptances
from builder.read.known import Known
from builder.read.lye.lye_plans import make_lye_plan
from builder.read.shapes.recipe import FillShape, PhaseShape, RecipeShape, TranslationShape
from builder.read.yaml.fit import fit
from builder.read.yaml.in_part import in_part
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Step
from builder.words.fold import fold

_Part = Callable[[Callable[[], Any]], Any]


def read_recipe(placed: PlacedYaml, known: Known, findings: list[Finding]) -> tuple[Recipe | None, bool]:
    """Read one recipe, and tell whether all of it can be read; None where nothing of it can."""
    shape = fit(RecipeShape, placed, findings, known=known)
    if shape is not None:
        return _recipe(shape, placed, lambda make: make()), True
    left = in_part(RecipeShape, placed.data, known)
    return (None if left is UNREAD else _recipe(left, placed, _as_far_as_read)), False


def _as_far_as_read(make: Callable[[], Any]) -> Any:
    """Make a part of a recipe; one that needs what cannot be read, or is not written, cannot be read either."""
    try:
        return make()
    except (UnreadError, LookupError, TypeError):
        return UNREAD


def _recipe(shape: RecipeShape, placed: PlacedYaml, part: _Part) -> Recipe:
    """Make a recipe of a shape. `part` makes each part of it that needs more than the value of one key."""
    return shape.make(
        Recipe,
        key=PurePosixPath(placed.file).stem,
        product=shape.product.name,
        amounts_as=shape.amounts,
        phases=part(lambda: tuple(part(partial(_phase, one, placed, ("phases", number))) for number, one in enumerate(shape.phases))),
        fill=part(lambda: make_fill(shape.fills, placed, ("fills",))),
        lye=part(lambda: make_lye_plan(shape.lye, shape.product.usual_alkali, placed) if shape.lye else None),
        choices=part(lambda: tuple(_choice(what, placed, shape) for what in shape.choices)),
        cure=part(lambda: shape.cure.make(Cure) if shape.cure else None),
        density=part(lambda: MeasuredDensity(shape.density.value, shape.density.measured) if shape.density else None),
        listed=shape.ingredients_listed,
        ph=part(lambda: shape.ph.make(MeasuredPh) if shape.ph else None),
        not_for_colour=part(lambda: tuple(Name(one, placed.place("not for colour", at)) for at, one in enumerate(shape.not_for_colour))),
        translations=part(lambda: {language: _translation(told) for language, told in shape.translations.items()}),
        accepts=part(lambda: make_acceptances(shape.accepts, placed)),
        in_part=placed.in_part,
        place=placed.place("name"),
        places=placed.places(),
    )


def make_fill(shape: FillShape, placed: PlacedYaml, path: tuple[Step, ...]) -> Fill:
    """Make the portion that stands at a path."""
    container = Name(shape.container, placed.place(*path, "container"))
    return Fill(container, shape.weight, shape.measured, shape.units, placed.place(*path, "weight"))


def _phase(shape: PhaseShape, placed: PlacedYaml, path: tuple[Step, ...]) -> Phase:
    lines = tuple(
        RecipeLine(
            Name(name, placed.key_place(*path, "ingredients", name)),
            amount,
            placed.place(*path, "ingredients", name),
        )
        for name, amount in shape.ingredients.items()
    )
    lost = shape.steams_away.make(SteamsAway) if shape.steams_away else None
    return shape.make(Phase, name=Name(shape.name, placed.place(*path, "name")), lines=lines, steams_away=lost)


def _translation(shape: TranslationShape) -> Translation:
    return shape.make(Translation, options={fold(english): text for english, text in shape.options.items()})


def _choice(what: str, placed: PlacedYaml, shape: RecipeShape) -> Choice:
    choice = shape.choices[what]
    options = tuple(
        None if fold(text) == "none" or fold(text).startswith("no ") else Name(text, placed.place("choices", what, "from", number))
        for number, text in enumerate(choice.options)
    )
    return Choice(what, options, choice.at_most, placed.place("choices", what, "at most"))
