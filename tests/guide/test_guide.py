"""The guide: what its pages show is done and answered as they say, its sums are right, and its pictures are of its own sheets."""

import re
from fractions import Fraction
from pathlib import Path

import pytest

from builder import cli, pipeline
from builder.arguments import parse
from builder.guide import files_of, find_guide_page, guide_pages
from builder.guide.making import DAY, guide_publication
from builder.guide.pages import TOLD, WORKED
from builder.guide.shown import pictures_of, what_is_done, with_pictures
from builder.library import CONTENT
from builder.press import missing_pdf_engine
from builder.reference import pages
from tests.guide.doing import answered_anew, text_of
from tests.making import sure

KEYS = (*TOLD, *WORKED)
REFERENCE = {page.key for page in pages()}
SHOWING = tuple(key for key in KEYS if files_of(text_of(key)))


@pytest.mark.parametrize("key", KEYS)
def test_what_a_page_shows_is_what_happens(key: str, tmp_path: Path) -> None:
    """`python -m tests.guide.doing` writes the answers anew."""
    assert answered_anew(text_of(key), tmp_path) == text_of(key)


def test_every_text_that_ships_is_a_page() -> None:
    assert {path.stem for path in (CONTENT / "guide").glob("*.md")} == set(KEYS)
    assert not {page.key for page in guide_pages()} & REFERENCE
    assert sum(len(what_is_done(text_of(key))) for key in KEYS) > 30


@pytest.mark.parametrize("key", KEYS)
def test_commands_that_are_only_told_of_are_commands(key: str) -> None:
    told = re.findall(r"(?:^    |`)(stillroom [^`\n]+)", text_of(key), re.MULTILINE)
    for command in told:
        words = [word.strip('"') for word in re.findall(r'"[^"]*"|\S+', command.partition("  #")[0])[1:]]
        parse(words)


@pytest.mark.parametrize("key", SHOWING)
def test_the_worked_examples_are_sound_and_their_pictures_can_be_drawn(key: str, tmp_path: Path) -> None:
    assert cli.main(["guide", key, "--files", str(tmp_path / "studio")]) == 0
    outcome, listed = pipeline.preview(tmp_path / "studio", on=DAY)
    assert [finding.name for finding in outcome.findings if finding.accepted is None] == []
    assert {picture.sheet for picture in pictures_of(text_of(key))} <= set(sure(listed).entries)
    addresses = {f"{key}/{path.removeprefix('site/')}" for path in sure(listed).entries}
    links = set(re.findall(r"(?<!!)\[[^\]]+\]\(([^)#]+)\)", text_of(key)))
    assert {link for link in links if link not in addresses} <= {f"{name}.html" for name in (*REFERENCE, *KEYS)}


@pytest.mark.long
@pytest.mark.skipif(missing_pdf_engine() is not None, reason="no PDF engine here")
def test_a_page_is_written_with_the_pictures_of_its_sheets_and_its_site() -> None:
    """One example with one picture: each more takes as long again."""
    party = sure(find_guide_page("party"))
    first = pictures_of(party.text)[1]
    shorter = type(party)(party.key, party.title, with_only(party.text, first.sheet))
    publication = guide_publication((shorter,), lambda _: None)
    made = {one.path: one.content for one in publication.made}
    assert made["party/picture-1.webp"][:4] == b"RIFF" and made["party/picture-1.webp"][8:12] == b"WEBP"
    assert made["party/dose-cards.pdf"].startswith(b"%PDF")
    html = {one.path: one.html for one in publication.documents}
    assert f'<a href="party/dose-cards.pdf"><img src="party/picture-1.webp" alt="{first.alt}"></a>' in html["party.html"]
    assert "party/classes/star-party.html" in html and "index.html" in html
    assert all("Ada Loom" not in page for path, page in html.items() if path.startswith("party/"))


def with_only(text: str, sheet: str) -> str:
    """Leave of the pictures of a page only those of one sheet."""
    kept = {picture: ("", "") for picture in pictures_of(text) if picture.sheet != sheet}
    for picture in kept:
        text = text.replace(f"![{picture.alt}]({picture.sheet}#{picture.number})", "")
    return text


def test_where_nothing_can_be_drawn_the_picture_is_named() -> None:
    text = "![A bench card](print/a/bench-cards.pdf#1)"
    assert with_pictures(text, {}) == "*(A bench card: not drawn on this machine)*"


def test_the_sum_that_is_done_by_hand_is_right() -> None:
    """Middles of the published ranges: British Pharmaceutical Codex 1911 (olive), CXS 210-1999 (coconut, sunflower), WHO (castor).

    Molar masses from the standard atomic weights: Na 22.990, K 39.098, O 15.999, H 1.008 (IUPAC, abridged).
    """
    page = text_of("numbers")
    oils = {"olive": (600, 185, 196), "coconut": (250, 248, 265), "sunflower": (100, 187, 194), "castor": (50, 176, 187)}
    taken_up = sum(Fraction(weight * (low + high), 2000) for weight, low, high in oils.values())
    assert f"Together {float(taken_up)} g" in page
    sodium, potassium = (Fraction(metal) + Fraction("15.999") + Fraction("1.008") for metal in ("22.990", "39.098"))
    pure = taken_up * sodium / potassium
    assert f"= {float(pure):.2f} g of sodium hydroxide" in page
    lye = pure * Fraction("0.93") / Fraction("0.975")
    row = sure(re.search(r"Sodium hydroxide +[\d.]+% +[\d.]+ g +([\d.]+) g +reads to ([\d.]+) g", page))
    weighed, division = map(Fraction, row.groups())
    assert f"/ 0.975 = {float(lye):.2f} g" in page and f"reads to {row[2]} g. Lye is always" in page
    assert weighed == lye // division * division


def test_the_walk_begins_with_what_start_writes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    begin = sure(re.search(r"^\$ stillroom (start .*)$", text_of("walk"), re.MULTILINE))[1]
    assert cli.main([word.strip('"') for word in re.findall(r'"[^"]*"|\S+', begin)]) == 0
    assert (tmp_path / "loft" / "studio.yaml").read_text() == files_of(text_of("walk"))["studio.yaml"]


def test_names_are_printed_listed_or_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["guide"]) == 0
    assert all(f"{key}: " in capsys.readouterr().out for key in KEYS[:1])
    assert cli.main(["guide", "soaplab"]) == 2
    assert '"soap-lab"' in capsys.readouterr().err
    assert cli.main(["guide", "numbers", "--files", str(tmp_path / "x")]) == 2
    assert cli.main(["guide", "party", "--files", str(tmp_path / "y")]) == 0
    assert cli.main(["guide", "party", "--files", str(tmp_path / "y")]) == 2
