"""What a sheet tells people to put on stands among the tools that it lists, and on the check list of the date: read back from the sheets.

The words are those of the cautions themselves, whose sources stand in their files.
"""

import re
from dataclasses import replace
from functools import cache

import pytest

from builder.compose.edition import Edition
from builder.compose.teaching.tool_words import tools_to_set_out
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.reckon import reckon_classes
from builder.rules.hands.gear import kind_of
from tests import published
from tests.composing import composed
from tests.page_text import tree_of
from tests.studios import sound_studio

KINDS = {"goggles", "gloves", "apron", "mask", "mitts"}
WORDS = re.compile(r"\b(?:goggles|gloves|apron|mask|mitts)\b", re.IGNORECASE)
SHIPPED = sound_studio()[0].cautions


def kinds_in(text: str) -> set[str]:
    return {word.casefold() for word in WORDS.findall(text)}


@pytest.mark.parametrize("key", SHIPPED)
def test_the_prose_of_a_caution_and_its_gear_agree(key: str) -> None:
    text = SHIPPED[key]
    assert kinds_in(" ".join(text.avoid)) == {kind_of(piece) for piece in text.gear}
    assert kinds_in(text.again) <= kinds_in(" ".join(text.avoid))


def without_gear(studio: Studio) -> Studio:
    """Return the studio with recipes whose tools name no gear at all."""
    recipes = {key: replace(one, tools=tuple(tool for tool in one.tools if not kinds_in(tool))) for key, one in studio.recipes.items()}
    return replace(studio, recipes=recipes)


@cache
def edition() -> Edition:
    whole = published.edition()
    studio = without_gear(whole.studio)
    sheets = reckon_classes(studio, studio.classes.values(), on=whole.today)
    # Sizes of one recipe have one lesson, and one list of tools.
    return replace(whole, studio=studio, plans=tuple(replace(one, made=tuple(map(with_one_size, one.made))) for one in sheets))


def with_one_size(made: MadeProduct) -> MadeProduct:
    return replace(made, home=made.home[:1])


def asked_on(html: str) -> set[str]:
    return kinds_in(" ".join(one.get_text(" ") for one in tree_of(html).select(".caution")))


def test_a_home_sheet_lists_the_gear_that_its_cautions_ask_for() -> None:
    sheets = composed("take-home sheet", edition())
    assert {kind for sheet in sheets for kind in asked_on(sheet.html)} == KINDS
    for sheet in sheets:
        tools = tree_of(sheet.html).select_one("ul.tools")
        assert tools is not None, sheet.path
        assert asked_on(sheet.html) <= kinds_in(tools.get_text(" ")), sheet.path


def test_the_check_list_of_a_date_counts_the_gear_that_its_steps_ask_for() -> None:
    lists = {sheet.path.rsplit("/", 1)[0]: kinds_in(tree_of(sheet.html).get_text(" ")) for sheet in composed("check list", edition())}
    asked = {sheet.path.rsplit("/", 1)[0]: asked_on(sheet.html) for sheet in composed("steps at the bench", edition())}
    assert asked and any(asked.values())
    for date, kinds in asked.items():
        assert kinds <= lists[date], date


# The studio's own word for a piece stays; a weaker piece gives way; what no tool names comes first.
@pytest.mark.parametrize(
    ("tools", "gear", "expected"),
    [
        (("bowl",), ("dust mask", "goggles"), ("dust mask", "goggles", "bowl")),
        (("bowl", "nitrile gloves, two sizes"), ("nitrile gloves",), ("bowl", "nitrile gloves, two sizes")),
        (("goggles", "bowl"), ("goggles", "chemical splash goggles"), ("chemical splash goggles", "bowl")),
        (("safety glasses",), ("goggles",), ("goggles", "safety glasses")),
        (("bowl",), (), ("bowl",)),
    ],
)
def test_gear_that_no_tool_names_stands_before_the_tools(tools: tuple[str, ...], gear: tuple[str, ...], expected: tuple[str, ...]) -> None:
    assert tools_to_set_out(tools, gear) == expected
