"""The logo of a studio as a photograph: a drawing is pressed by the PDF engine, and drawn from that without its paper."""

from html import escape
from pathlib import Path

from builder.model.document import Document, Folder
from builder.model.label.logo import Logo
from builder.pictures import clean_picture

WIDE = 840  # Points: twice what a sharing picture shows of it at the most.


def logo_as_photograph(logo: Logo, studio_folder: Path, layout_folders: tuple[Path, ...]) -> bytes:
    """Return a logo as something that can be drawn into a picture; nothing where it is a drawing and this machine has no PDF engine."""
    file = studio_folder / logo.file
    if file.suffix.lower() != ".svg":
        return clean_picture(file.read_bytes(), file.suffix).data
    from builder.pictures.sheet_page import draw_page_without_paper
    from builder.press.engine.sheets import Engine, missing_engine

    if missing_engine() is not None:
        return b""
    style = f"@page{{size:{WIDE}px {WIDE / logo.proportion:.2f}px;margin:0}}body{{margin:0}}img{{display:block;width:100%}}"
    html = f'<html lang="en"><title>Logo</title><style>{style}</style><img src="{escape(logo.file)}" alt="Logo">'
    pressed = Engine(studio_folder, layout_folders).press(Document(Folder.PRINT, "logo.pdf", html))
    return draw_page_without_paper(pressed.pdf, WIDE)
