"""HTML to PDF. The PDF library is imported late: a machine may lack it.

Every sheet is a tagged PDF/UA-1 file. The library writes no scope on header cells and no print flag on links, and tags what goes on on the
next page anew there; a finisher mends all three. That needs names of the library that are private (`private_names`), which is why its next
major version is shut out in pyproject.toml.
"""

from __future__ import annotations

import contextlib
import io
import logging
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any
from urllib.request import url2pathname

from builder.fonts.files import font_faces, font_folders
from builder.model.document import Document
from builder.model.label.own_font import FONT_ENDINGS
from builder.pictures import clean_picture
from builder.press.engine.fitting import overfull
from builder.press.engine.private_names import boxes_of, break_lines, draw_once, note_what_tags_are_made_of, set_scope
from builder.press.engine.sizes import laid_out
from builder.press.engine.whole_tags import join_what_goes_on
from builder.press.folder import FolderError
from builder.press.in_time import TooLongError, at_most
from builder.press.kept import PressedSheet, style_file, sum_of_file

NOT_SET = "{} cannot be made: a style or a template in layouts/ asks for what the PDF engine cannot do ({})."
TOO_LONG = "{} cannot be made: with {} the PDF engine works at it for more than {} seconds and comes to no end."
TAKE_OUT = "Take out what was written there last, and publish again; what was published before is as it was."
# Seconds of processor time that a sheet in a look of the studio's own may take, and for each of its elements: our own sheets take a
# quarter to one thousandth of a second for an element on one core of a server.
LONGEST, LONGEST_OF_AN_ELEMENT = 5, 0.002
MISSING = (
    "No PDF was written: the PDF engine does not start ({}). Every sheet is in the output as a page, which a browser prints. "
    "On Debian or Ubuntu this installs what the engine needs: "
    "apt-get install --no-install-recommends libpangoft2-1.0-0 libharfbuzz-subset0"
)
WITHOUT = (
    "No PDF was written: the PDF engine does not start without {}, and this Python was built without it. Every sheet is in the output as a "
    "page, which a browser prints. Python from python.org, or with all its packages from your system, has it."
)


def missing_engine() -> str | None:
    """Return in one line what keeps PDFs from being made; None where nothing does."""
    try:
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            # The engine needs it to load nothing, and without it fails by an error that does not name it.
            import ssl  # noqa: F401

            import weasyprint  # noqa: F401
    except (ImportError, OSError) as error:
        if isinstance(error, ImportError) and error.name in sys.stdlib_module_names:
            return WITHOUT.format(f"`{error.name}`")
        return MISSING.format(str(error).splitlines()[0] if str(error) else type(error).__name__)
    return None


def system_libraries() -> tuple[str, ...]:
    """Return the versions of the system's libraries that lay out text, as far as they tell them."""
    from weasyprint.text.ffi import pango

    return (f"pango {pango.pango_version()}",)


def roots_of(studio_folder: Path, layout_folders: tuple[Path, ...]) -> dict[str, Path]:
    """Return the folders in which a sheet's files may lie, each by a short name."""
    folders = {"studio": studio_folder.resolve()} | {f"layouts{number}": one.resolve() for number, one in enumerate(layout_folders)}
    return folders | {f"fonts{number}": one.resolve() for number, one in enumerate(font_folders())}


class Engine:
    """Everything that sheets share: fonts set up once, each stylesheet parsed once. One for each process."""

    def __init__(self, studio_folder: Path, layout_folders: tuple[Path, ...]) -> None:
        """Set up for a studio, whose pictures sheets may show, and for the folders that hold styles."""
        from weasyprint import CSS
        from weasyprint.text.fonts import FontConfiguration

        break_lines()
        draw_once()
        note_what_tags_are_made_of()
        self._studio = studio_folder.resolve()
        self._layouts = layout_folders
        self._opened: dict[str, str] = {}
        self._opened_by_styles: dict[str, dict[str, str]] = {}
        self._fetcher = _local_fetcher(roots_of(studio_folder, layout_folders), self._opened)
        self._fonts = FontConfiguration()
        self._faces = CSS(string=font_faces(), font_config=self._fonts, url_fetcher=self._fetcher)
        self._styles: dict[str, Any] = {}

    def press(self, document: Document) -> PressedSheet:
        """Make one PDF; text that runs over the edge of a box that has to hold it is told.

        Raises FolderError where the engine fails on a studio that has layouts of its own, or comes to no end with them: whatever these ask
        for, it is no fault of ours.
        """
        if not any(folder.is_dir() for folder in self._layouts[:-1]):
            return self._pressed(document)
        seconds = LONGEST + LONGEST_OF_AN_ELEMENT * document.html.count("<")
        try:
            with at_most(seconds):
                return self._pressed(document)
        except TooLongError:
            raise FolderError(TOO_LONG.format(document.path, self._own_look_of(document), round(seconds)), TAKE_OUT) from None
        except (OSError, MemoryError):
            raise
        except Exception as error:
            raise FolderError(NOT_SET.format(document.path, str(error) or type(error).__name__), TAKE_OUT) from error

    def _own_look_of(self, document: Document) -> str:
        own = (name for name in document.styles if style_file(name, self._layouts).parent.parent != self._layouts[-1])
        return " and ".join(f"layouts/styles/{name}" for name in own) or "a template in layouts/"

    def _pressed(self, document: Document) -> PressedSheet:
        from weasyprint import HTML

        self._opened.clear()
        with _heard() as messages:
            sheet = HTML(string=document.html, base_url=f"{self._studio.as_uri()}/", url_fetcher=self._fetcher)
            rendered = laid_out(sheet.etree_element.find("body"), partial(self._render, sheet, document))
            over = overfull(rendered)
            pdf = rendered.write_pdf(pdf_variant="pdf/ua-1", finisher=_polish)
        told = (
            message.replace(f"{self._studio.as_uri()}/", "")
            for message in (*messages, *(f"{box}: the text runs over its edge" for box in over))
        )
        of_styles = (self._opened_by_styles[name] for name in document.styles)
        opened = dict(sorted({name: found for one in (self._opened, *of_styles) for name, found in one.items()}.items()))
        return PressedSheet(pdf, len(rendered.pages), tuple(f"{document.path}: {message}" for message in dict.fromkeys(told)), opened)

    def _render(self, sheet: Any, document: Document) -> Any:
        styles = [self._faces, *(self._style(name) for name in document.styles)]
        return sheet.render(font_config=self._fonts, stylesheets=styles, presentational_hints=True, pdf_variant="pdf/ua-1")

    def _style(self, name: str) -> Any:
        from weasyprint import CSS

        if name not in self._styles:
            before = dict(self._opened)
            self._opened.clear()
            file = style_file(name, self._layouts)
            self._styles[name] = CSS(filename=file, font_config=self._fonts, url_fetcher=self._fetcher)
            self._opened_by_styles[name] = dict(self._opened)
            self._opened.update(before)
        return self._styles[name]


def _local_fetcher(roots: dict[str, Path], opened: dict[str, str]) -> Any:
    """Return a fetcher that opens files of these folders and nothing else, no network and no other file, and notes each in `opened`.

    Of the studio's pictures it gives what is published of them.
    """
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class LocalFetcher(URLFetcher):  # type: ignore[misc]
        def fetch(self, url: str, headers: dict[str, str] | None = None) -> Any:
            path = Path(url2pathname(url.removeprefix("file:").removeprefix("//"))).resolve()
            names = [f"{root}/{path.relative_to(folder).as_posix()}" for root, folder in roots.items() if path.is_relative_to(folder)]
            if not url.startswith("file:") or not names:
                raise ValueError("only files of the studio folder can be shown")
            opened[names[0]] = sum_of_file(path)
            if names[0].startswith("studio/") and path.suffix.lower() not in FONT_ENDINGS:
                # An address of a file would be opened once more by the engine, and go into the sheet as the camera wrote it.
                return URLFetcherResponse(f"picture:{names[0]}", clean_picture(path.read_bytes(), path.suffix).data)
            return super().fetch(url, headers)

    return LocalFetcher()


def _polish(document: Any, pdf: Any) -> None:
    for page in document.pages:
        for box in boxes_of(page):
            if box.element_tag == "th":
                set_scope(box, "Row" if box.element.get("scope") == "row" else "Column")
    join_what_goes_on(pdf)
    # A sheet of labels printed at 97 % lies beside its cuts.
    viewer = pdf.catalog.setdefault("ViewerPreferences", {})
    viewer["PrintScaling"] = "/None"
    for item in pdf.objects:
        if isinstance(item, dict) and item.get("Type") == "/Annot":
            item.setdefault("F", 4)


@contextlib.contextmanager
def _heard() -> Iterator[list[str]]:
    """Collect what the library logs while a sheet is made."""
    messages: list[str] = []
    handler = logging.Handler(logging.WARNING)
    handler.emit = lambda record: messages.append(record.getMessage())  # type: ignore[method-assign]
    logger = logging.getLogger("weasyprint")
    logger.addHandler(handler)
    try:
        yield messages
    finally:
        logger.removeHandler(handler)
