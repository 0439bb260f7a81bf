"""A publication to files: PDFs are read back for their pages, their size, their text, their fonts and their tags."""

import io
import itertools
import os
import pickle
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import AbstractContextManager
from dataclasses import replace
from multiprocessing import get_all_start_methods
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

import page
import pdfplumber
import pytest
from pdfplumber.pdf import PDF

from builder.library import LAYOUTS
from builder.model.document import CopiedFile, Document, Folder, Origin, Publication
from builder.press import PressOutcome, pool, press_publication
from builder.press.engine import sheets
from builder.press.folder import FolderError
from tests.making import Number, sure

STYLES = ("tokens.css", "words.css", "paper.css", "take-home.css")
BODY = """<h1>A sheet</h1>
<p>Weigh 30\u00a0g, ½ cup, at 70\u00a0°C.</p>
<table><thead><tr><th scope="col">A</th></tr></thead><tbody><tr><td>1</td></tr></tbody></table>"""


def sheet(path: str = "sheet.pdf", body: str = BODY, paper: str = "letter", styles: tuple[str, ...] = STYLES) -> Document:
    head = f'<!DOCTYPE html><html lang="en-US"><head><title>{path}</title></head>'
    html = f'{head}<body id="top" class="{paper}" data-title="A sheet" data-page="page" data-of="of">{body}</body></html>'
    return Document(Folder.PRINT, path, html, styles)


Pressing = Callable[..., tuple[PressOutcome, dict[str, bytes]]]


@pytest.fixture
def pressed(tmp_path: Path) -> Pressing:
    """Press some documents; give the outcome and the bytes of each by its path."""
    studio = tmp_path / "studio"
    studio.mkdir()

    def press(*documents: Document, files: Sequence[CopiedFile] = (), output: Path | None = None) -> tuple[PressOutcome, dict[str, bytes]]:
        told: list[str] = []
        outcome = press_publication(
            Publication(documents, tuple(files)),
            studio_folder=studio,
            layout_folders=(studio / "layouts", LAYOUTS),
            output=output or tmp_path / "output",
            progress=told.append,
        )
        assert sorted(told) == sorted(document.place for document in documents if outcome.pdf_missing is None or "pdf" not in document.path)
        written = {path: ((output or tmp_path / "output") / folder / path).read_bytes() for folder, path in outcome.written}
        return outcome, written

    return press


def read(pdf: bytes) -> PDF:
    return pdfplumber.open(io.BytesIO(pdf))


def elements(
    tree: Iterable[dict[str, Any]],
) -> Iterator[dict[str, Any]]:
    for element in tree:
        yield element
        yield from elements(element.get("children", ()))


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), pytest.param("a4", (595.276, 841.89), marks=pytest.mark.long)])
def test_a_sheet_has_the_paper_and_the_foot(pressed: Pressing, paper: str, size: tuple[Number, Number]) -> None:
    outcome, written = pressed(sheet(body=BODY + '<p style="break-before: page">Second page.</p>', paper=paper))
    assert outcome.warnings == ()
    with read(written["sheet.pdf"]) as pdf:
        assert len(pdf.pages) == 2
        assert (pdf.pages[0].width, pdf.pages[0].height) == pytest.approx(size, abs=0.01)
        text = " ".join(pdf.pages[1].extract_text().split())
        assert "Second page." in text
        assert "A sheet page 2 of 2" in text
        assert "30\u00a0g, ½ cup, at 70\u00a0°C" in pdf.pages[0].extract_text().replace(" g", "\u00a0g").replace(" °C", "\u00a0°C")
        fonts = {char["fontname"].split("+")[-1] for one in pdf.pages for char in one.chars}
        assert all(font.startswith("Fira-Sans") for font in fonts)


def test_a_sheet_is_a_tagged_pdf_that_passes_its_rules(pressed: Pressing) -> None:
    _, written = pressed(sheet(body=BODY + '<p><a href="https://studio.example/">a link</a></p>'))
    report = page.validate_pdf_bytes(written["sheet.pdf"], profile="ua1")
    assert report.is_compliant, report.failures
    with read(written["sheet.pdf"]) as pdf:
        assert [cell["attributes"]["Scope"] for cell in elements(pdf.structure_tree) if cell["type"] == "TH"] == ["Column"]


WAYS = [("fork", 2), *(pytest.param(*one, marks=pytest.mark.long) for one in (("fork", 3), ("spawn", 2)))]


@pytest.mark.parametrize(("start", "number"), WAYS)
def test_so_many_processes_make_the_same_bytes_as_one(
    pressed: Pressing, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, start: str, number: int
) -> None:
    if start not in get_all_start_methods():
        pytest.skip("this system cannot fork")
    documents = [sheet(f"{place}.pdf", f"<h1>Number {place}</h1><p>{'Weigh it. ' * place}</p>") for place in range(6)]
    made: list[int] = []
    started = pool._started

    def note(processes: int, *more: Any) -> AbstractContextManager[list[Connection]]:
        made.append(processes)
        return started(processes, *more)

    monkeypatch.setattr(pool, "_started", note)
    monkeypatch.setattr(pool, "START", start)
    monkeypatch.setattr(pool, "FEWEST_FOR_A_PROCESS", 2)
    monkeypatch.setattr(pool, "_held_by_memory", lambda: 8)
    written: dict[int, dict[str, bytes]] = {}
    for cores in (1, number):
        monkeypatch.setattr(pool, "_cores", lambda cores=cores: cores)
        _, written[cores] = pressed(*documents, output=tmp_path / str(cores))
    assert made == [number]
    assert written[1] == written[number] and len([path for path in written[1] if path.endswith(".pdf")]) == 6


def test_there_are_no_more_processes_than_half_the_memory_holds(monkeypatch: pytest.MonkeyPatch) -> None:
    size = {"SC_PHYS_PAGES": 500_000, "SC_PAGE_SIZE": 4096}
    monkeypatch.setattr(os, "sysconf", size.__getitem__, raising=False)
    assert pool._held_by_memory() == 5
    size["SC_PHYS_PAGES"] = 1
    assert pool._held_by_memory() == 1
    monkeypatch.delattr(os, "sysconf")
    assert pool._held_by_memory() > 1000


def test_a_letter_that_the_font_lacks_is_a_warning(pressed: Pressing) -> None:
    outcome, _ = pressed(sheet(body="<h1>A \u2713 tick</h1>"))
    assert len(outcome.warnings) == 1
    assert outcome.warnings[0].startswith("sheet.pdf: ")


def test_a_picture_that_is_missing_is_a_warning_that_names_it_without_the_machines_paths(pressed: Pressing) -> None:
    outcome, _ = pressed(sheet(body='<h1>A</h1><p><img src="classes/one/none.svg" alt="nothing"></p>'))
    assert "classes/one/none.svg" in outcome.warnings[0]
    assert "file:///" not in outcome.warnings[0].split(":", 1)[1].split("classes/")[0]


def test_only_pictures_of_the_studio_are_shown(pressed: Pressing, tmp_path: Path) -> None:
    outside = tmp_path / "outside.svg"
    outside.write_text('<svg xmlns="http://www.w3.org/2000/svg"/>', encoding="utf-8")
    for address in (outside.as_uri(), "https://elsewhere.example/a.svg"):
        outcome, _ = pressed(sheet(body=f'<h1>A</h1><p><img src="{address}" alt="a picture"></p>'))
        assert "only files of the studio folder can be shown" in outcome.warnings[0]


def test_without_the_engine_everything_else_is_written(pressed: Pressing, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sheets, "missing_engine", lambda: "No PDF was written: install the engine.")
    outcome, written = pressed(Document(Folder.SITE, "index.html", "<p>x</p>"), sheet())
    assert outcome.pdf_missing == "No PDF was written: install the engine."
    assert {path for path in written if path.endswith((".html", ".pdf"))} == {"index.html", "sheet.html"}


def test_an_engine_that_does_not_start_is_told_in_one_line(monkeypatch: pytest.MonkeyPatch) -> None:
    import builtins

    real = builtins.__import__

    def fail(
        name: str,
        *rest: Any,
        **named: Any,
    ) -> Any:
        if name == "weasyprint":
            raise OSError("cannot load library 'libpango-1.0-0'\nand more")
        return real(name, *rest, **named)

    monkeypatch.setattr(builtins, "__import__", fail)
    line = sure(sheets.missing_engine())
    assert "libpango-1.0-0" in line
    assert "apt-get install" in line
    assert "\n" not in line


def test_files_are_copied(pressed: Pressing) -> None:
    outcome, written = pressed(files=[CopiedFile(Folder.SITE, "styles/words.css", Origin.LAYOUTS, "styles/words.css")])
    assert written["styles/words.css"] == (LAYOUTS / "styles" / "words.css").read_bytes()
    assert outcome.written == ((Folder.SITE, "styles/words.css"),)


@pytest.mark.parametrize("has_layouts", [True, False])
def test_what_the_engine_fails_on_is_told_where_the_studio_has_layouts(
    has_layouts: bool, pressed: Pressing, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise TypeError("this width is not handled yet")

    monkeypatch.setattr(pool, "_cores", lambda: 1)
    monkeypatch.setattr(sheets, "laid_out", fail)
    if has_layouts:
        (tmp_path / "studio" / "layouts").mkdir()
    with pytest.raises(FolderError if has_layouts else TypeError) as told:
        pressed(sheet())
    if isinstance(told.value, FolderError):
        asks = "a style or a template in layouts/ asks for what the PDF engine cannot do"
        assert told.value.wrong == f"sheet.pdf cannot be made: {asks} (this width is not handled yet)."
    assert not (tmp_path / "output").exists()


@pytest.mark.parametrize(("own", "told"), [(("own-paper.css",), "layouts/styles/own-paper.css"), ((), "a template in layouts/")])
def test_a_sheet_that_comes_to_no_end_in_a_look_of_the_studios_own_is_told(
    own: tuple[str, ...], told: str, pressed: Pressing, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = pressed(sheet())[1]["sheet.pdf"]
    (tmp_path / "studio" / "layouts" / "styles").mkdir(parents=True)
    (tmp_path / "studio" / "layouts" / "styles" / "own-paper.css").write_text("body { columns: 9000 }", encoding="utf-8")
    monkeypatch.setattr(pool, "_cores", lambda: 1)
    monkeypatch.setattr(sheets, "LONGEST", 0)
    monkeypatch.setattr(sheets, "laid_out", lambda *_: [one for one in itertools.count() if one < 0])
    with pytest.raises(FolderError) as error:
        pressed(sheet(body=f"{BODY}<p>Pour it.</p>", styles=(*STYLES, *own)))
    wrong = f"sheet.pdf cannot be made: with {told} the PDF engine works at it for more than 0 seconds and comes to no end."
    assert error.value.wrong == wrong
    assert (tmp_path / "output" / "print" / "sheet.pdf").read_bytes() == before


def test_what_is_told_of_a_folder_goes_from_one_process_to_another() -> None:
    told = pickle.loads(pickle.dumps(FolderError("It is full.", "Make room.")))
    assert (told.wrong, told.remedy, str(told)) == ("It is full.", "Make room.", "It is full. Make room.")


def test_a_page_that_is_all_margin_has_no_room_left(pressed: Pressing, tmp_path: Path) -> None:
    (tmp_path / "studio" / "layouts" / "styles").mkdir(parents=True)
    (tmp_path / "studio" / "layouts" / "styles" / "own-paper.css").write_text("@page { margin: 20in }", encoding="utf-8")
    closer = sheet(styles=(*STYLES, "own-paper.css"))
    pressed(replace(closer, html=closer.html.replace("<body", '<body data-closers="narrow"')))
