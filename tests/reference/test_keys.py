"""Every key that a file may have is described, and stands on the page of its file."""

import re
from collections.abc import Iterator
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any

import pytest
import yaml
from pydantic import TypeAdapter
from pytest import ParameterSet

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.recipe.figure import Source, SourceKind
from builder.read.known import NamesKnown
from builder.read.library import read_library
from builder.read.shapes import shape as shapes
from builder.read.shapes.shape import Shape
from builder.read.text.text_files import TextFolder
from builder.reference.descriptions import about_field, about_shape
from builder.reference.files import SHIPPED_FILES, STUDIO_FILES, StudioFile
from builder.reference.keys import Key, sections_of
from tests.making import sure
from tests.test_findings import FINDINGS

FILES = (*STUDIO_FILES, *SHIPPED_FILES)
FOLDER = Path(shapes.__file__).parent


def all_shapes(
    of: type[Shape] = Shape,
) -> Iterator[type[Shape]]:
    for module in FOLDER.glob("*.py"):
        import_module(f"builder.read.shapes.{module.stem}")
    for shape in of.__subclasses__():
        yield shape
        yield from all_shapes(shape)


SHAPES = sorted(set(all_shapes()), key=lambda shape: shape.__name__)


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.__name__)
def test_every_key_is_described_in_sentences(
    shape: type[Shape],
) -> None:
    told = {name: about_field(shape, name) for name in shape.model_fields}
    assert [name for name, text in told.items() if not re.fullmatch(r"[A-Z0-9`].*[.]", text)] == []
    assert about_shape(shape).endswith(".")


@pytest.mark.parametrize("file", STUDIO_FILES, ids=lambda file: file.key)
def test_every_key_of_a_studio_has_an_example(file: StudioFile) -> None:
    assert [key.name for section in sections_of(*file.shapes) for key in section.keys if not key.example] == []


def test_there_are_shapes_and_keys() -> None:
    assert len(SHAPES) > 40
    assert sum(len(shape.model_fields) for shape in SHAPES) > 350


def test_every_shape_stands_on_the_page_of_a_file() -> None:
    shown = {section.shape for file in FILES for section in sections_of(*file.shapes)}
    # What only others build on stands in no file by itself.
    bases = {base for shape in SHAPES for base in shape.__mro__[1:] if base in SHAPES}
    assert [shape.__name__ for shape in SHAPES if shape not in shown | bases] == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.key)
def test_every_key_says_what_may_stand_there(file: StudioFile) -> None:
    for section in sections_of(*file.shapes):
        for key in section.keys:
            assert key.value, key
            assert key.is_needed is section.shape.model_fields[key_field(section.shape, key.name)].is_required()


def key_field(
    shape: type[Shape],
    alias: str,
) -> str:
    return next(name for name, field in shape.model_fields.items() if field.alias == alias)


def keys_of(*shapes: type[Shape]) -> dict[str, Key]:
    return {key.name: key for section in sections_of(*shapes) for key in section.keys}


def test_values_are_in_the_words_of_the_trade() -> None:
    recipe = keys_of(*next(file for file in STUDIO_FILES if file.key == "recipe.yaml").shapes)
    assert recipe["heat to"].value == "a temperature"
    assert recipe["superfat"].value == "a percentage"
    assert recipe["amounts"].value == "one of: percent of total, percent of oils, parts, weights"
    assert recipe["after the cook"].default == "no"
    assert recipe["phases"].value == "a list, each with keys of its own"
    assert recipe["phases"].is_needed
    assert not recipe["lye"].is_needed


def test_a_description_is_read_from_beneath_its_field() -> None:
    recipe = keys_of(*next(file for file in STUDIO_FILES if file.key == "recipe.yaml").shapes)
    assert recipe["superfat"].about.startswith("The share of the fat that stays unsaponified.")


def test_a_file_of_the_example_has_its_page() -> None:
    studio = Path(__file__).parent.parent.parent / "site_example"
    names = [path.relative_to(studio).as_posix() for path in studio.rglob("*.yaml") if "output" not in path.parts]
    assert [name for name in names if not any(file.is_at(name) for file in STUDIO_FILES)] == []


def examples() -> Iterator[ParameterSet]:
    for shape in SHAPES:
        for name, field in shape.model_fields.items():
            if field.examples:
                yield pytest.param(shape, name, id=f"{shape.__name__}-{name}")


@pytest.fixture(scope="module")
def known() -> NamesKnown:
    findings: list[Finding] = []
    read = read_library(CONTENT, TextFolder(FINDINGS / "_sound", findings)).known
    assert findings == []
    named = {name: Source(name, name, SourceKind.TRADE) for name in ("a-source", "our-supplier")}
    return replace(read, sources={**read.sources, **named}, oils={"lavender": "lavender"})


@pytest.mark.parametrize(("shape", "name"), list(examples()))
def test_an_example_may_stand_where_it_is_shown(
    shape: type[Shape],
    name: str,
    known: NamesKnown,
) -> None:
    field = shape.model_fields[name]
    written = yaml.load(f"key: {sure(field.examples)[0]}", Loader=yaml.BaseLoader)["key"]
    annotated: Any = Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation
    adapter: TypeAdapter[object] = TypeAdapter(annotated)
    adapter.validate_python(written, context=known)
