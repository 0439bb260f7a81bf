"""The schemas for editors: what is sound passes, what is misspelled is underlined, and every key is explained in the words of its shape.

Texts are read as an editor reads them, by the core schema of YAML 1.2.2 (section 10.3.2), and judged by a library for JSON Schema.
"""

import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from builder import cli
from builder.read.shapes.recipe import RecipeShape
from builder.reference.files import STUDIO_FILES
from builder.reference.schemas import FOLDER, editor_files, head_of, marked
from builder.tasks.drafts import studio_in, studio_of
from tests.making import sure
from tests.start.test_starters import REGIONS, files_of
from tests.test_readme import FILES

ROOT = Path(__file__).parents[2]
SOUND = {
    "example": ROOT / "site_example",
    "usual": ROOT / "tests" / "usual" / "studio",
    "sound": ROOT / "tests" / "findings" / "_sound",
}


class Core(yaml.SafeLoader):
    """Reads what the core schema knows: null, true and false, whole numbers, other numbers, and text."""


Core.yaml_implicit_resolvers = {}
for tag, signs, first in (
    ("null", r"null|Null|NULL|~|", ["n", "N", "~", ""]),
    ("bool", r"true|True|TRUE|false|False|FALSE", list("tTfF")),
    ("int", r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+", list("-+0123456789")),
    ("float", r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?", list("-+.0123456789")),
):
    Core.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{signs})$"), first)


def read(
    text: str,
) -> Any:
    return yaml.load(text, Loader=Core)


def schema_for(name: str, schemas: Mapping[str, str]) -> dict[str, Any]:
    file = next((file for file in STUDIO_FILES if file.path.endswith(".yaml") and file.is_at(name)), None)
    return sure(None if file is None else json.loads(schemas[f"{FOLDER}/{file.key.removesuffix('.yaml')}.json"]))


def faults(name: str, text: str, schemas: Mapping[str, str]) -> list[str]:
    validator = jsonschema.Draft202012Validator(schema_for(name, schemas))
    return [
        f"{name}: {'/'.join(str(step) for step in error.absolute_path)}: {error.message[:200]}"
        for error in validator.iter_errors(read(text))
    ]


@pytest.mark.parametrize("studio", [pytest.param(name, marks=() if name == "sound" else pytest.mark.long) for name in SOUND])
def test_every_file_of_a_sound_studio_passes(studio: str) -> None:
    folder = SOUND[studio]
    schemas = editor_files(studio_in(folder))
    names = [path.relative_to(folder).as_posix() for path in sorted(folder.rglob("*.yaml")) if "output" not in path.parts]
    judged = [name for name in names if schema_for(name, schemas)]
    assert len(judged) >= 3 and set(names) - set(judged) == set()
    assert [fault for name in judged for fault in faults(name, (folder / name).read_text(encoding="utf-8"), schemas)] == []


@pytest.mark.parametrize("region", [pytest.param(key, marks=() if key == "US" else pytest.mark.long) for key in REGIONS])
def test_every_starter_passes(region: str) -> None:
    files = files_of(region)
    schemas = editor_files(studio_of(files))
    assert [fault for name, text in files.items() if name.endswith(".yaml") for fault in faults(name, text, schemas)] == []


def test_the_studio_of_the_readme_passes() -> None:
    schemas = editor_files(studio_of(FILES))
    assert [fault for name, text in FILES.items() if name.endswith(".yaml") for fault in faults(name, text, schemas)] == []


@pytest.fixture(scope="module")
def schemas() -> dict[str, str]:
    return editor_files(studio_of(FILES))


@pytest.mark.long
def test_every_schema_is_one(schemas: Mapping[str, str]) -> None:
    for text in schemas.values():
        jsonschema.Draft202012Validator.check_schema(json.loads(text))


@pytest.mark.parametrize(
    ("name", "old", "new", "where"),
    [
        ("recipes/orchard-bar.yaml", "superfat: 8 %", "superfatt: 8 %", "superfatt"),
        ("recipes/orchard-bar.yaml", "product: cold-process soap", "product: cold soap", "product"),
        ("recipes/orchard-bar.yaml", "fills: {container: bar mould cavity, weight: 100 g}", "fills: [bar mould cavity]", "fills"),
        ("recipes/orchard-bar.yaml", "name: Orchard bar", "nam: Orchard bar", "name"),
        ("classes/first-bar/class.yaml", "format: demo", "format: show", "format"),
        ("classes/first-bar/class.yaml", "seats: 8", "seats: [8]", "seats"),
        ("classes/first-bar/class.yaml", "seats: 8", "seats: eight", "seats"),
        ("recipes/orchard-bar.yaml", "heat to: 40 degC", "heat to: 40", "heat to"),
        ("recipes/orchard-bar.yaml", "heat to: 40 degC", "heat to: warm", "heat to"),
        ("recipes/orchard-bar.yaml", "olive oil: 65 %", "olive oil: most of it", "olive oil"),
        ("recipes/orchard-bar.yaml", "olive oil: 65 %", "olive oil: 65", "olive oil"),
        ("recipes/orchard-bar.yaml", "superfat: 8 %", "superfat: 8", "superfat"),
        ("studio.yaml", "region: US", "region: USA", "region"),
        ("studio.yaml", "paper: letter", "paper: legal", "paper"),
    ],
)
def test_a_slip_is_underlined(name: str, old: str, new: str, where: str, schemas: Mapping[str, str]) -> None:
    assert old in FILES[name]
    found = faults(name, FILES[name].replace(old, new), schemas)
    assert found and any(where in fault for fault in found)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("product: cold-process soap", "product: Cold-Process Soap"),
        ("purity: 98 %", "purity: {sodium hydroxide: 98 %}"),
        ("alkali: sodium hydroxide", "alkali: {sodium hydroxide: 60 %, potassium hydroxide: 40 %}"),
        ("water: {lye concentration: 33 %}", "water: 12 oz"),
        ("product: cold-process soap", "product: CP soap"),
        ("fills: {container: bar mould cavity", "not for color: [zinc oxide]\nfills: {container: bar mold cavity"),
        ("olive oil: 65 %", "Our Own Olive Oil: 65 %"),
        ("olive oil: 65 %", "olive oil: \u00bd lb"),
        ("olive oil: 65 %", "olive oil: Rest"),
    ],
)
def test_what_the_program_reads_is_not_underlined(old: str, new: str, schemas: Mapping[str, str]) -> None:
    assert old in FILES["recipes/orchard-bar.yaml"]
    assert faults("recipes/orchard-bar.yaml", FILES["recipes/orchard-bar.yaml"].replace(old, new), schemas) == []


OWN = """\
weir tin: {capacity: 60 mL, shape: round lid, source: common-practice, at: "as sold", known: practice}
"""


def test_names_are_offered_and_keys_explained() -> None:
    recipe = json.loads(editor_files(studio_of(FILES | {"shelf/containers.yaml": OWN}))[f"{FOLDER}/recipe.json"])
    fill, phase = recipe["$defs"]["Fill"]["properties"], recipe["$defs"]["Phase"]["properties"]
    assert {"weir tin", "bar mould cavity"} <= set(fill["container"]["anyOf"][0]["enum"])
    assert {"olive oil", "kaolin clay"} <= set(phase["ingredients"]["properties"])
    alkali = recipe["$defs"]["Lye"]["properties"]["alkali"]["anyOf"]
    assert alkali[0]["anyOf"][0]["enum"] == list(alkali[1]["properties"])
    assert set(alkali[1]["properties"]) == {"sodium hydroxide", "potassium hydroxide"}
    keys = recipe["$defs"]["Recipe"]["properties"]
    assert set(keys) - {"not for color"} == {str(one.alias) for one in RecipeShape.model_fields.values()}
    assert "cold-process soap" in keys["product"]["anyOf"][0]["enum"]
    assert keys["name"]["description"].startswith("The name of the product, on sheets and labels.")
    assert all(len(keys[key]["description"].split()) > 3 for key in keys)


def test_the_head_leads_to_the_schema() -> None:
    assert head_of("classes/first-bar/class.yaml") == "# yaml-language-server: $schema=../../.schemas/class.json\n"
    assert head_of("classes/first-bar/lesson.md") == ""
    assert marked(marked(FILES)) == marked(FILES)


def test_the_command_writes_them_and_marks_each_file_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for name, text in FILES.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    for _ in range(2):
        assert cli.main(["editor", str(tmp_path), "--mark"]) == 0
    marks = {path.relative_to(tmp_path).as_posix(): path.read_text(encoding="utf-8") for path in tmp_path.rglob("*.yaml")}
    assert all(text.count("$schema=") == 1 and text.startswith("# yaml-language-server") for text in marks.values())
    assert {name: text.partition("\n")[2] for name, text in marks.items()} == {name: FILES[name] for name in marks}
    for name, text in marks.items():
        assert ((tmp_path / name).parent / text.partition("\n")[0].partition("=")[2]).resolve().is_file()
    assert cli.main(["check", str(tmp_path), "--today", "2027-01-02"]) == 0
    assert "Nothing found" in capsys.readouterr().out
