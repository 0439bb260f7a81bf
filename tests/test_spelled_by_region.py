"""Pages and sheets are spelled as their region spells: American English in the US, and British elsewhere.

The pairs of words are common knowledge of the two spellings, from memory, and not taken from the code.
"""

import os
import re
from datetime import date
from pathlib import Path

import pytest
from babel.messages.pofile import read_po

from builder import pipeline
from builder.library import CONTENT
from builder.words.say import HOLE, say, speaking
from tests.making import sure
from tests.published import html_text, page_of_each_kind, pages, pdfs, sheet_text, sheets
from tests.test_findings import lay_out
from tests.whole_run import LONG

TODAY = date(2027, 1, 1)
BRITISH = re.compile(
    r"\b(?:un)?(?:colour|mould|flavour|odour|vapour|aluminium|grey\b|centre|fibre|neutralis|catalogue|labelled|cancelled|practised|millilitre"
    r"|litres?\b|favour|programme\b|sanitis|sterilis|crystallis|metres\b|spilt|learnt|draught|solubilis|moisturis|millimetre|centimetre)\w*",
    re.IGNORECASE,
)
AMERICAN = re.compile(
    r"\b(?:un)?(?:color|mold|flavor|odor|vapor|aluminum|gray\b|center|neutraliz|catalog\b|labeled|canceled)\w*", re.IGNORECASE
)
# Names that stand as they are: works, and what they call their parts.
# The place within a pharmacopoeia is told by its source.
NAMES = ("Colour Index", "International Programme", "Natural Colour", "20 drops of water in a millilitre")


def messages() -> list[str]:
    with (CONTENT / "languages" / "messages.pot").open("rb") as file:
        catalog = read_po(file)
    told = [one.id if isinstance(one.id, (list, tuple)) else (one.id,) for one in catalog if one.id]
    return [text for texts in told for text in texts]


def test_no_message_is_said_in_british_spelling_in_the_us_or_loses_a_value(tmp_path: Path) -> None:
    lay_out(None, tmp_path / "studio")
    studio = sure(pipeline.check(tmp_path / "studio", on=TODAY).studio)
    assert studio.profile.region == "US"
    with speaking(studio.speaks.messages):
        said = {english: say(english) for english in messages()}
    assert any(english != american for english, american in said.items())
    assert [one for one in said.values() if BRITISH.search(HOLE.sub("", one))] == []
    assert all(sorted(HOLE.findall(english)) == sorted(HOLE.findall(american)) for english, american in said.items())


@pytest.mark.parametrize("region", ["UK", "EU", "Canada"])
def test_elsewhere_messages_stay_as_they_are_written(tmp_path: Path, region: str) -> None:
    lay_out(None, tmp_path / "studio")
    file = tmp_path / "studio" / "studio.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("region: US", f"region: {region}"), encoding="utf-8")
    studio = sure(pipeline.check(tmp_path / "studio", on=TODAY).studio)
    assert studio.profile.region == region
    with speaking(studio.speaks.messages):
        assert [one for one in messages() if say(one) != one or AMERICAN.search(HOLE.sub("", one))] == []


@pytest.mark.long(sample=True)
def test_the_example_lies_in_the_us_and_is_spelled_so_from_the_catalog_to_the_labels() -> None:
    """Without `--long` a page and a sheet of each kind."""
    read = (pages(), sheets()) if LONG in os.environ else (page_of_each_kind(), pdfs())
    texts = {path: html_text(path) for path in read[0]} | {path: sheet_text(path) for path in read[1]}
    found = {(path.name, one[0]) for path, text in texts.items() for one in BRITISH.finditer(re.sub("|".join(NAMES), "", text))}
    assert sorted(found) == []
