"""The folders of stock, and of the studio's shelf beside it, become what recipes and lessons draw on.

The shelf has the same files as the stock. What it holds under a name takes the place of what the stock holds under that name.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import TypeVar

from builder.model.caution import CautionText
from builder.model.container import Container
from builder.model.figure import Figure, Source
from builder.model.finding import Finding
from builder.model.ingredient import Ingredient
from builder.model.lesson import Block
from builder.read.cautions import read_caution
from builder.read.constants import read_constants
from builder.read.containers import read_containers
from builder.read.fit import Known
from builder.read.ingredients import index_ingredients, read_ingredient
from builder.read.passages import read_passage
from builder.read.placed_yaml import PlacedYaml, read_yaml_file
from builder.read.products import read_products
from builder.read.sources import read_sources
from builder.read.text_files import TextFolder

T = TypeVar("T")


@dataclass(frozen=True)
class Stock:
    """Everything that recipes and lessons draw on."""

    known: Known
    constants: Mapping[str, Figure]
    ingredients: Mapping[str, Ingredient]
    containers: Mapping[str, Container]
    cautions: Mapping[str, CautionText]
    passages: Mapping[str, tuple[Block, ...]]


def read_stock(content: TextFolder, studio: TextFolder) -> Stock:
    """Read the stock, and the studio's shelf over it."""
    findings = studio.findings
    shelves = ((content, ""), (studio, "shelf/"))
    sources: dict[str, Source] = {}
    for folder, shelf in shelves:
        sources |= _one(folder, f"{shelf}sources.yaml", lambda placed: read_sources(placed, findings))
    known = Known(sources, _one(content, "products.yaml", lambda placed: read_products(placed, findings)))
    constants = _one(content, "constants.yaml", lambda placed: read_constants(placed, known, findings))
    containers: dict[str, Container] = {}
    cautions: dict[str, CautionText] = {}
    passages: dict[str, tuple[Block, ...]] = {}
    cards: list[list[Ingredient]] = []
    for folder, shelf in shelves:
        containers |= _one(folder, f"{shelf}containers.yaml", lambda placed: read_containers(placed, known, findings))
        cautions |= {text.key: text for text in _each(folder, f"{shelf}cautions", lambda placed: read_caution(placed, known, findings))}
        passages |= _passages(folder, f"{shelf}passages", known, findings)
        cards.append(_each(folder, f"{shelf}ingredients", lambda placed: read_ingredient(placed, known, constants, findings)))
    return Stock(
        known=known,
        constants=constants,
        ingredients=index_ingredients(cards[0], cards[1], findings),
        containers=containers,
        cautions=cautions,
        passages=passages,
    )


def _one(folder: TextFolder, name: str, read: Callable[[PlacedYaml], dict[str, T]]) -> dict[str, T]:
    placed = read_yaml_file(folder, name) if folder.has(name) else None
    return read(placed) if placed else {}


def _each(folder: TextFolder, name: str, read: Callable[[PlacedYaml], T | None]) -> list[T]:
    placed = (read_yaml_file(folder, file) for file in folder.files(name, ".yaml"))
    made = (read(one) for one in placed if one)
    return [one for one in made if one is not None]


def _passages(folder: TextFolder, name: str, known: Known, findings: list[Finding]) -> dict[str, tuple[Block, ...]]:
    texts = ((file, folder.text(file)) for file in folder.files(name, ".md"))
    return {
        PurePosixPath(file).stem: read_passage(text, folder.shown_as + file, known, findings) for file, text in texts if text is not None
    }
