"""A file of `recipes/` becomes a recipe."""

from pathlib import PurePosixPath

from builder.model.finding import Finding
from builder.model.recipe.recipe import Recipe
from builder.read.known import Known
from builder.read.shapes.recipe import RecipeShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.in_part import made_in_part


def read_recipe(placed: PlacedData, known: Known, findings: list[Finding]) -> tuple[Recipe | None, bool]:
    """Read one recipe, and tell whether all of it can be read; None where nothing of it can."""
    return made_in_part(RecipeShape, placed, findings, known, key=PurePosixPath(placed.file).stem, in_part=placed.in_part)
