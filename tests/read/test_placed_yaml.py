"""YAML to text with places: what was written stays as it was written, and what YAML has beyond that is refused."""

from collections.abc import Sequence

import pytest
import yaml

from builder.model.finding import Finding
from builder.model.place import Place
from builder.read.text.placed_data import Data, PlacedData
from builder.read.yaml import placed_yaml
from builder.read.yaml.placed_yaml import read_yaml
from tests.making import sure

TEXT = """\
name: "Plain bar"
phases:
  - name: oils
    ingredients:
      olive oil: 70 %
      coconut oil: 30 %
fills: {container: 4 fl oz jar, weight: 113 g}
about: >-
  Two lines
  of text.
empty:
"""


# The second one is for machines that lack the library of the first.
@pytest.fixture(params=["CSafeLoader", pytest.param("SafeLoader", marks=pytest.mark.long)])
def loader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(placed_yaml, "_LOADER", getattr(yaml, request.param))


def read(text: str) -> tuple[PlacedData | None, list[Finding]]:
    findings: list[Finding] = []
    return read_yaml(text, "recipes/a.yaml", findings), findings


def names(findings: Sequence[Finding]) -> list[str]:
    return [finding.name for finding in findings]


def spot(place: Place) -> tuple[int, int, int]:
    return place.line, place.column, place.width


def mapping(placed: PlacedData | None) -> dict[str, Data]:
    """Return the data of a file that is one mapping."""
    data = sure(placed).data
    assert isinstance(data, dict)
    return data


@pytest.mark.usefixtures("loader")
def test_every_scalar_stays_the_text_that_was_written() -> None:
    written = ["no", "yes", "1:30", "010", "1_000", "2027-03-06", "0.910", "1e3", ".inf", "true", "½", "~", "911", "=", "0x10"]
    placed, findings = read("".join(f"k{number}: {text}\n" for number, text in enumerate(written)))
    assert list(mapping(placed).values()) == written
    assert not findings


@pytest.mark.usefixtures("loader")
def test_places_of_keys_and_values() -> None:
    placed, findings = read(TEXT)
    assert not findings
    assert mapping(placed)["about"] == "Two lines of text."
    assert mapping(placed)["empty"] == ""
    assert sure(placed).place("name") == Place("recipes/a.yaml", 1, 7, 11)
    assert spot(sure(placed).key_place("name")) == (1, 1, 4)
    assert spot(sure(placed).place("phases", 0, "ingredients", "coconut oil")) == (6, 20, 4)
    assert spot(sure(placed).key_place("phases", 0, "ingredients", "coconut oil")) == (6, 7, 11)
    assert spot(sure(placed).place("fills", "container")) == (7, 20, 11)
    assert spot(sure(placed).place("fills")) == (7, 8, 39)


def test_the_place_of_what_is_not_there_is_that_of_what_is_around_it() -> None:
    placed, _ = read(TEXT)
    assert sure(placed).key_place("fills", "colour") == sure(placed).key_place("fills")
    assert sure(placed).place("phases", 0, "ingredients", "palm oil", 3) == sure(placed).place("phases", 0, "ingredients")


def test_a_piece_of_a_file_counts_its_lines_from_where_it_begins() -> None:
    findings: list[Finding] = []
    placed = read_yaml("name: x\nname: y\n", "p.md", findings, first_line=2)
    assert sure(placed).place("name").line == 2
    assert findings[0].place.line == 3


@pytest.mark.usefixtures("loader")
def test_a_repeated_key_keeps_the_first_value_and_goes_on() -> None:
    placed, findings = read("a: 1\nb: {c: 1, c: 2}\na: 3\nd: 4\n")
    assert sure(placed).data == {"a": "1", "b": {"c": "1"}, "d": "4"}
    assert names(findings) == ["key-repeated", "key-repeated"]
    assert [spot(finding.place) for finding in findings] == [(2, 11, 1), (3, 1, 1)]
    assert "line 1" in findings[1].wrong


@pytest.mark.usefixtures("loader")
@pytest.mark.parametrize(
    ("text", "expected", "line"),
    [
        ("a: &x [1]\nb: *x\n", ["alias-used"], 2),
        ("a: &x [1]\nb: [*x, *x]\n", ["alias-used", "alias-used"], 2),
        ("a: &a [*a, *a]\n", ["alias-used", "alias-used"], 1),
        ("a: !x [1]\n", ["tag-used"], 1),
        ("a: !!python/object/apply:os.system ['true']\n", ["tag-used"], 1),
        ("c:\n  <<: {b: 1}\n", ["merge-used"], 2),
        ("[1, 2]: x\n", ["key-not-text"], 1),
        ("? {a: 1}\n: x\n", ["key-not-text"], 1),
        ("a: " + "[" * 50 + "]" * 50, ["yaml-too-deep"], 1),
        ("a: [" + "1," * 20_001 + "]", ["file-too-large"], 1),
        ("a:\n\tb: 1\n", ["yaml-broken"], 2),
        ("a:\n  b: 1\n c: 2\n", ["yaml-broken"], 3),
        ("note: careful: hot\n", ["yaml-broken"], 1),
        ('a: "x\nb: 2\n', ["yaml-broken"], 1),
        ('b: 2\na: "x\nc: "y"\n', ["yaml-broken"], 2),
        ("b: 3\na: [1, 2\nc: 3\n", ["yaml-broken"], 2),
        ("a: 1\nfoo\nb: 2\n", ["yaml-broken"], 2),
        ("a:\n- b\n  c\n- d: 1\n  e\n", ["yaml-broken"], 5),
        ("a: &x 1\n", ["anchor-used"], 1),
        ("a: !!int 1\n", ["tag-used"], 1),
        ("a: ! b\n", ["tag-used"], 1),
        ("Olive oil: 1\nolive\u00a0oil: 2\n", ["key-repeated"], 2),
        ("a: x\u2028y\nb: 1\nb: 2\n", ["key-repeated"], 3),
        ("a: x\u0085y\nb: [1\n", ["yaml-broken"], 2),
        ("a: 1\n---\nb: 2\n", ["yaml-broken"], 2),
        ("a: *x\n", ["yaml-broken"], 1),
        ("a: @x\n", ["yaml-broken"], 1),
        ("a: 1\nb: \x07\n", ["yaml-broken"], 2),
        ("", ["file-empty"], 0),
        ("# nothing yet\n", ["file-empty"], 0),
    ],
)
def test_what_is_refused(text: str, expected: Sequence[str], line: int) -> None:
    _, findings = read(text)
    assert names(findings) == expected
    assert findings[0].place.line == line
    assert all(finding.stops and finding.wrong.endswith(".") and finding.remedy for finding in findings)


@pytest.mark.usefixtures("loader")
def test_brackets_without_end_are_refused_and_nothing_crashes() -> None:
    placed, findings = read("[" * 5000)
    assert placed is None
    assert names(findings) in (["yaml-too-deep"], ["yaml-broken"])


def test_values_that_name_one_another_cannot_grow_without_bound() -> None:
    lines = ["a: &a [x, x]"] + [
        f"{new}: &{new} [*{old}, *{old}, *{old}]" for old, new in zip("abcdefghijklmnopqr", "bcdefghijklmnopqrs", strict=True)
    ]
    placed, findings = read("\n".join(lines))
    assert placed is None
    assert set(names(findings)) == {"alias-used", "anchor-used"}


def test_messages_speak_the_words_of_the_studio() -> None:
    _, findings = read("note: careful: hot\n")
    text = findings[0].wrong + findings[0].remedy
    assert not any(word in text.lower() for word in ("mapping", "token", "scalar", "parser", "yaml"))
