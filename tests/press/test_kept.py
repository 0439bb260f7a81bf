"""A sheet that nothing new goes into is taken from the last publication, and that publication equals a fresh one, byte by byte."""

import json
import random
from pathlib import Path

import pytest

from builder.library import LAYOUTS
from builder.model.document import Document, Folder, Publication
from builder.press import PressOutcome, kept, pool, press_publication

STYLES = ("tokens.css", "words.css", "paper.css")
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="20" height="20"><rect width="{0}" height="{0}"/></svg>'


class Desk:
    """A studio of a few sheets, each with a picture; what is changed in it is published anew, and afresh beside it."""

    def __init__(self, home: Path) -> None:
        self.home, self.studio = home, home / "studio"
        (self.studio / "layouts" / "styles").mkdir(parents=True)
        self.layouts = (self.studio / "layouts", LAYOUTS)
        self.words = {f"{number}.pdf": f"Weigh {number} g." for number in range(4)}
        for number in range(3):
            self.draw(number, 5)

    def draw(self, number: int, size: int) -> None:
        (self.studio / f"{number}.svg").write_text(SVG.format(size), encoding="utf-8")

    def restyle(self, size: int) -> None:
        (self.studio / "layouts" / "styles" / "words.css").write_text(f"p {{ font-size: {size}pt }}", encoding="utf-8")

    def publish(self, output: Path) -> PressOutcome:
        documents = tuple(
            Document(
                Folder.PRINT,
                path,
                f'<!DOCTYPE html><html lang="en"><head><title>{path}</title></head><body class="a4" data-title="A">'
                f'<p>{words}</p><p><img src="{int(path[0]) % 4}.svg" alt="a square"></p></body></html>',
                STYLES,
            )
            for path, words in self.words.items()
        )
        return press_publication(
            Publication(documents, ()), studio_folder=self.studio, layout_folders=self.layouts, output=output, progress=lambda _: None
        )

    def files(self, output: Path) -> dict[str, bytes]:
        return {path.relative_to(output).as_posix(): path.read_bytes() for path in output.rglob("*") if path.is_file()}

    def publish_both_ways(self, name: str) -> PressOutcome:
        """Publish over the last output and into an empty folder; both must hold the same bytes and say the same."""
        again, fresh = self.publish(self.home / "again"), self.publish(self.home / name)
        assert self.files(self.home / "again") == self.files(self.home / name)
        assert (again.written, again.warnings) == (fresh.written, fresh.warnings)
        assert fresh.kept == 0
        return again


@pytest.fixture
def desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """Give a desk at which one process presses: that several make the same is tried in `test_press.py`."""
    monkeypatch.setattr(pool, "_cores", lambda: 1)
    return Desk(tmp_path)


@pytest.mark.long
def test_each_change_presses_what_it_is_about_and_no_more(desk: Desk) -> None:
    assert desk.publish_both_ways("0").kept == 0
    assert desk.publish_both_ways("1").kept == 4
    desk.words["2.pdf"] = "Weigh 2.5 g."
    assert desk.publish_both_ways("2").kept == 3
    desk.draw(1, 9)  # It stands on the second sheet alone.
    assert desk.publish_both_ways("3").kept == 3
    assert len(desk.publish_both_ways("4").warnings) == 1  # What the engine told of a kept sheet is told again.
    desk.draw(3, 7)  # A picture that was missing until now.
    assert desk.publish_both_ways("5").kept == 3
    desk.restyle(20)  # The studio's own style takes the place of ours.
    assert desk.publish_both_ways("6").kept == 0


@pytest.mark.long
def test_random_edits(desk: Desk) -> None:
    draws = random.Random(7)
    for number in range(8):
        for _ in range(draws.randint(1, 2)):
            match draws.randrange(5):
                case 0:
                    desk.words[f"{draws.randrange(7)}.pdf"] = f"Weigh {draws.randrange(99)} g."
                case 1:
                    desk.words.pop(draws.choice([path for path in desk.words if path != "0.pdf"] or [""]), None)
                case 2:
                    desk.draw(draws.randrange(4), draws.randint(1, 20))
                case 3:
                    (desk.studio / f"{draws.randrange(4)}.svg").unlink(missing_ok=True)
                case 4:
                    desk.restyle(draws.choice([10, 11]))
        desk.publish_both_ways(f"edit {number}")


@pytest.mark.long
@pytest.mark.parametrize("spoil", ["pdf", "note", "gone", "engine"])
def test_what_cannot_be_trusted_is_pressed_again(desk: Desk, spoil: str, monkeypatch: pytest.MonkeyPatch) -> None:
    desk.publish_both_ways("0")
    output = desk.home / "again"
    if spoil == "pdf":
        (output / "print" / "0.pdf").write_bytes(b"%PDF, but another")
    elif spoil == "note":
        (output / kept.FILE).write_text(json.dumps({"print/0.pdf": {"made_of": 3}}), encoding="utf-8")
    elif spoil == "gone":
        (output / "print" / "0.pdf").unlink()
    else:
        monkeypatch.setattr("builder.press.engine_sum", lambda _: "another engine")
    assert desk.publish_both_ways("1").kept == (3 if spoil in ("pdf", "gone") else 0)


def test_the_engine_is_known_by_all_that_it_requires() -> None:
    versions = set(kept.versions(*kept.ENGINES))
    assert {one.split()[0] for one in versions} >= {"weasyprint", "pydyf", "fonttools", "tinycss2", "cssselect2"}
    assert kept.engine_sum(("pango 1",)) != kept.engine_sum(("pango 2",))


def test_the_engine_is_known_by_all_code_that_presses_wherever_it_lies() -> None:
    built = Path(kept.__file__).parents[1]
    modules = [*(file for room in ("press", "pictures", "fonts") for file in (built / room).rglob("*.py")), built / "joined.py"]
    assert set(kept.sum_of_code()) == {kept.sum_of_file(file) for file in modules}
    assert any("engine" in file.parts for file in modules)
