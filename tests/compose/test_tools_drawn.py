"""Which small drawing stands before a tool of a list. What a tool looks like is common practice, no source."""

import pytest

from builder.compose.home.tools_drawn import drawing_of
from builder.words.say import speaking
from tests.composing import of_example
from tests.page_text import tree_of
from tests.studios import sound_studio

DRAWINGS = sound_studio()[0].tool_drawings


def drawn(words: str) -> str:
    found = drawing_of(words, DRAWINGS.values())
    return found.name if found else ""


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Polypropylene or stainless steel jug for lye", "jug"),
        ("Lidded polypropylene cup for dry lye", "lidded cup"),
        ("Spoon and glass for the clear test", "spoon"),
        ("Glass or steel rod", "rod"),
        ("Slow cooker with a ceramic or steel pot", "slow cooker"),
        ("Saucepan with a lid for the water bath", "saucepan"),
        ("Spray bottle of isopropyl alcohol", "spray bottle"),
        ("Oven gloves", "mitts"),
        ("Nitrile gloves, two sizes", "gloves"),
        ("Paper pouches", "pouch"),
        ("Paper towels", "paper towels"),
        ("Two knives", "knife"),
        ("Mold of silicone that holds 800 mL, never aluminum", "mould"),
        ("Mould of silicone that holds 800 mL, never aluminium", "mould"),
        # A word within another word is no tool, and what has no drawing stands in its words alone.
        ("Cupboard key", ""),
        ("Spanner", ""),
    ],
)
def test_the_first_name_in_the_words_of_a_tool_decides_and_of_two_the_longer(words: str, expected: str) -> None:
    assert drawn(words) == expected


def test_no_name_is_of_two_drawings() -> None:
    names = [name for drawing in DRAWINGS.values() for name in drawing.names.split(", ")]
    assert len(names) == len(set(names)) > len(DRAWINGS) >= 40
    assert all(drawn(name) == drawing.name for drawing in DRAWINGS.values() for name in drawing.names.split(", "))


def test_each_tool_of_a_home_sheet_is_a_drawing_and_a_word() -> None:
    sheets = of_example("take-home sheet")
    tools = [tool for sheet in sheets for tool in tree_of(sheet.html).select("ul.tools li")]
    assert len(tools) > 100
    assert [tool.get_text() for tool in tools if len(tool.select("svg")) != 1] == []
    # Its words say all: nobody hears it twice.
    assert all(tool.select_one("svg[aria-hidden=true]") for tool in tools)


def test_a_tool_is_found_by_the_words_of_the_language_of_the_sheets() -> None:
    with speaking(sound_studio()[0].languages["French"].messages):
        assert [drawn(words) for words in ("Gants en nitrile", "Deux pots avec couvercle", "Cuillères", "Pot")] == [
            "gloves",
            "jar",
            "spoon",
            "jar",
        ]
