"""The ingredient cards of the library and, before them, of a studio's own shelf."""

from collections.abc import Mapping
from pathlib import Path

from builder.model.finding import Finding
from builder.model.recipe.ingredient import Ingredient
from builder.read.library import read_library
from builder.read.text.text_files import TextFolder


def read_shelf(folder: Path | None, content: Path) -> tuple[Mapping[str, Ingredient], list[Finding]]:
    """Read every card by the names it answers to; `folder` is a studio whose shelf comes first, or None."""
    findings: list[Finding] = []
    studio = TextFolder(folder, findings) if folder else TextFolder(content / "no studio", findings)
    return read_library(content, studio).library.ingredients, findings
