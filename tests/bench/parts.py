"""Parts of a publication, each in a process of its own (`python -m tests.bench.parts PART STUDIO OUTPUT`).

`html` writes the finished HTML of every sheet and how it is to be pressed; `plain` presses what was written one after the other, each by
itself, as somebody would who does nothing for speed; `without` publishes with blank sheets; `publish` publishes, and writes beside the
output how many bytes the largest of the processes took that pressed sheets.
"""

import pickle
import shutil
import sys
from collections.abc import Iterable, Iterator
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from tests.bench.measure import TODAY

if TYPE_CHECKING:
    from builder.model.document import Document


class _Silent:
    def start(self, total: int) -> None: ...

    def step(self, title: str) -> None: ...

    def wait(self) -> None: ...


def _publish_blank(studio: Path, output: Path) -> list["Document"]:
    """Publish with blank sheets, and give those that would have been pressed."""
    from unittest.mock import patch

    from builder import pipeline
    from builder.press import packs, pool
    from builder.press.kept import PressedSheet

    sheets: list[Document] = []
    shutil.rmtree(output, ignore_errors=True)  # nothing is taken from an earlier publication

    def blank(_: object, documents: Iterable["Document"]) -> Iterator[tuple["Document", PressedSheet]]:
        for document in documents:
            sheets.append(document)
            yield document, PressedSheet(b"", 1, (), {})

    def nothing(*_: object) -> Iterator[tuple["Document", PressedSheet, bool]]:
        return iter(())  # what joins sheets is of the pressing too

    with patch.object(pool.Presses, "press", blank), patch.object(packs, "press_packs", nothing):
        pipeline.publish(studio, output, on=date.fromisoformat(TODAY), only_sound=False, progress=_Silent())
    return sheets


def html(studio: Path, output: Path) -> None:
    sheets = _publish_blank(studio, output)
    output.with_suffix(".sheets").write_bytes(pickle.dumps(sheets))


def without(studio: Path, output: Path) -> None:
    _publish_blank(studio, output)


def plain(studio: Path, output: Path) -> None:
    from weasyprint import CSS, HTML

    from builder.fonts.files import font_faces, only_our_fonts
    from builder.library import LAYOUTS
    from builder.press.kept import style_file

    sheets = pickle.loads(output.with_suffix(".sheets").read_bytes())
    fonts = output.with_suffix(".fonts")
    fonts.mkdir(exist_ok=True)
    layouts = (studio / "layouts", LAYOUTS)
    with only_our_fonts(fonts):
        for sheet in sheets:
            styles = [CSS(string=font_faces()), *(CSS(filename=style_file(name, layouts)) for name in sheet.styles)]
            made = HTML(string=sheet.html, base_url=f"{studio.resolve().as_uri()}/")
            made.write_pdf(stylesheets=styles, presentational_hints=True, pdf_variant="pdf/ua-1")


def publish(studio: Path, output: Path) -> None:
    import resource

    from builder.cli import main

    status = main(["publish", str(studio), "--to", str(output), "--today", TODAY])
    taken = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss * (1 if sys.platform == "darwin" else 1024)
    output.with_suffix(".memory").write_text(str(taken), encoding="utf-8")
    sys.exit(status)


def parse(studio: Path, _: Path) -> None:
    """Parse all YAML that a check has to know, with the position of every value."""
    import yaml

    from builder.library import CONTENT

    for folder in (CONTENT, studio):
        # The starters are YAML only once their holes are filled.
        for file in (one for one in folder.rglob("*.yaml") if "starters" not in one.parts):
            yaml.compose(file.read_text(encoding="utf-8"), Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))


if __name__ == "__main__":
    part, *folders = sys.argv[1:]
    {"html": html, "plain": plain, "without": without, "publish": publish, "parse": parse}[part](*map(Path, folders))
