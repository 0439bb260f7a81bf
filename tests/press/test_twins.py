"""The pages beside the sheets: every sheet of the studio is there as one, also without the PDF engine, and finds all it shows."""

import re
from pathlib import Path
from posixpath import dirname, normpath
from urllib.parse import unquote

import pytest

from builder.library import LAYOUTS
from builder.model.document import CopiedFile, Document, Folder, Joined, Publication
from builder.press import press_publication
from builder.press.engine import sheets

STYLES = ("tokens.css", "paper.css", "labels.css")
DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'
ADDRESS = re.compile(r'(?:href|src)="([^"#]+)"|url\("([^"]+)"\)')


def sheet(path: str, body: str = "", folder: Folder = Folder.PRINT, joined: Joined | None = None) -> Document:
    html = f'<!DOCTYPE html><html lang="en"><head><title>{path}</title></head><body class="letter"><h1>A sheet</h1>{body}</body></html>'
    return Document(folder, path, html, STYLES, joined)


def written(tmp_path: Path, *documents: Document, files: tuple[CopiedFile, ...] = ()) -> Path:
    """Press some documents of a studio that has one picture, and give the folder."""
    studio, output = tmp_path / "studio", tmp_path / "output"
    (studio / "classes/one").mkdir(parents=True)
    (studio / "classes/one/the pot.svg").write_text(DRAWING, encoding="utf-8")
    press_publication(
        Publication(documents, files),
        studio_folder=studio,
        layout_folders=(studio / "layouts", LAYOUTS),
        output=output,
        progress=lambda _: None,
    )
    return output


def html_of(output: Path) -> set[str]:
    return {path.relative_to(output).as_posix() for path in output.rglob("*.html")}


@pytest.mark.parametrize("engine", [True, False])
def test_a_sheet_has_a_page_beside_it_that_finds_all_it_shows(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, engine: bool) -> None:
    if not engine:
        monkeypatch.setattr(sheets, "missing_engine", lambda: "No PDF was written: install the engine.")
    picture = '<p><img src="classes/one/the%20pot.svg" alt="a pot"></p>'
    output = written(tmp_path, sheet("one/2027-01-02/teacher.pdf", picture), sheet("top.pdf"))
    assert html_of(output) == {"print/one/2027-01-02/teacher.html", "print/top.html"}
    assert (output / "print/one/2027-01-02/teacher.pdf").exists() is engine
    found = 0
    for file in (*output.rglob("*.html"), *output.rglob("*.css")):
        here = dirname(file.relative_to(output).as_posix())
        for link, shown in ADDRESS.findall(file.read_text(encoding="utf-8")):
            assert (output / normpath(f"{here}/{unquote(link or shown)}")).is_file(), f"{file.name}: {link or shown}"
            found += 1
    # Two pages with five styles each, a picture, fourteen faces, and the sign that a style of labels shows.
    assert found == 2 * 5 + 1 + 14 + 1


def test_what_a_page_says_already_what_is_public_and_what_joins_others_has_none(tmp_path: Path) -> None:
    page = Document(Folder.PRINT, "one/take-home.html", "<p>The page itself.</p>")
    pack = sheet("one/pack.pdf", joined=Joined((), lambda _, __: sheet("").html))
    output = written(tmp_path, page, sheet("one/take-home.pdf"), sheet("public.pdf", folder=Folder.SITE), pack)
    assert html_of(output) == {"print/one/take-home.html"}
    assert (output / "print/one/take-home.html").read_text(encoding="utf-8") == "<p>The page itself.</p>"
    assert not (output / "print/styles").exists()


def test_a_picture_outside_the_studio_is_not_copied(tmp_path: Path) -> None:
    (tmp_path / "secret.svg").write_text(DRAWING, encoding="utf-8")
    output = written(tmp_path, sheet("a.pdf", '<img src="../secret.svg" alt="x"><img src="https://elsewhere.example/a.svg" alt="y">'))
    assert not list(output.rglob("secret.svg"))
