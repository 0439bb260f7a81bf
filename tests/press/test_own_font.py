"""A font file of the studio's own: what its maker allows (OS/2 fsType of OpenType 1.9), how it measures, what cannot be read."""

from datetime import date
from pathlib import Path

import pytest

from builder import pipeline
from builder.fonts.typefaces import own_font
from builder.model.label.own_font import OWN_TITLES
from builder.model.label.typeface import POINT, MeasuredOn
from builder.words.say import speaking
from tests.making import sure
from tests.own_fonts import CAPITAL, EM, SMALL, WIDE, write_font
from tests.test_findings import lay_out


# OpenType 1.9, OS/2 fsType: 0 installable; 2 restricted licence; 4 preview and print; 8 editable; of several of these the least restrictive
# holds; 0x100 no subsetting, 0x200 bitmap embedding only.
@pytest.mark.parametrize(
    ("bits", "prints", "shows"),
    [
        (0, True, True),
        (0x2, False, False),
        (0x4, True, False),
        (0x8, True, False),
        (0x6, True, False),
        (0x100, False, False),
        (0x208, False, False),
    ],
)
def test_what_the_maker_allows(tmp_path: Path, bits: int, prints: bool, shows: bool) -> None:
    write_font(tmp_path / "ours.ttf", bits)
    font = own_font(tmp_path, "ours.ttf")
    assert (font.prints, font.shows) == (prints, shows)


def test_heights_are_those_of_its_outlines(tmp_path: Path) -> None:
    write_font(tmp_path / "ours.ttf")
    face = sure(own_font(tmp_path, "ours.ttf").typeface)
    assert face.width("Ab", 10) == pytest.approx(2 * WIDE / EM * 10 * POINT)
    assert face.size_for("NET", 1.5875, MeasuredOn.LETTERS) == pytest.approx(1.5875 / POINT / (CAPITAL / EM))
    assert face.size_for("net", 1.5875, MeasuredOn.LETTERS) == pytest.approx(1.5875 / POINT / (SMALL / EM))


def test_what_is_no_font_has_no_typeface(tmp_path: Path) -> None:
    write_font(tmp_path / "outside.ttf")
    studio = tmp_path / "studio"
    studio.mkdir()
    (studio / "half.ttf").write_bytes((tmp_path / "outside.ttf").read_bytes()[:900])
    (studio / "words.ttf").write_text("not a font", encoding="utf-8")
    (studio / "ours.zip").write_bytes((tmp_path / "outside.ttf").read_bytes())
    for name in ("half.ttf", "words.ttf", "ours.zip", "gone.ttf", "../outside.ttf", "."):
        assert own_font(studio, name).typeface is None, name


def test_a_sound_font_is_met_in_silence_and_sets_titles_and_the_names_on_labels(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(None, studio)
    write_font(studio / "ours.ttf")
    with (studio / "studio.yaml").open("a", encoding="utf-8") as file:
        file.write("look: {title font: ours.ttf}\n")
    outcome, listed = pipeline.preview(studio, on=date(2027, 1, 1))
    assert outcome.findings == () and listed is not None
    with speaking(sure(outcome.studio).speaks.messages):
        labels = next(entry for path, entry in listed.entries.items() if "/labels-" in path)
        page = next(entry for path, entry in listed.entries.items() if path == "site/classes/one-bar.html")
        assert f"font-family:{OWN_TITLES!r}".replace("'", '"') in sure(page.make()).html
        assert OWN_TITLES in sure(labels.make()).html
