"""The fonts of the printed sheets: Fira Sans and Fira Sans Condensed (OFL 1.1), from their packages, and no other; the names of products
on labels have display faces of their own (OFL 1.1 as well), and nothing else is set in those.

A private fontconfig file lists only their folders. Without it a letter that they lack would be taken from whatever font the machine has,
so that two machines would make different sheets.

Decided: web pages use the reader's own fonts, printed sheets only ours, but for titles in a font that a studio names. Why: no request, no
licence question on the web; the same paper on every machine.
"""

import os
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path

PACKAGES = {"Fira Sans": "fontpkg_fira_sans", "Fira Sans Condensed": "fontpkg_fira_sans_condensed"}
FACES = (("Regular", 400, "normal"), ("Medium", 500, "normal"), ("Bold", 700, "normal"), ("Italic", 400, "italic"))
# Variables of the surroundings that lead to what a run has put aside: the configuration of its fonts, and its folder.
OF_A_RUN = ("FONTCONFIG_FILE", "TMPDIR")
# The faces of names on labels: by the name that a label calls them, their package and file. Each is a family of one face for the engine.
DISPLAY = {
    "label serif": ("fontpkg_dm_serif_display", "DMSerifDisplay-Regular.ttf"),
    "label italic": ("fontpkg_dm_serif_display", "DMSerifDisplay-Italic.ttf"),
    "label narrow": ("fontpkg_anton", "Anton-Regular.ttf"),
    "label hand": ("fontpkg_delius", "Delius-Regular.ttf"),
    "label light": ("fontpkg_fira_sans", "FiraSans-Light.ttf"),
    "label heavy": ("fontpkg_fira_sans", "FiraSans-ExtraBold.ttf"),
}


def font_folders() -> tuple[Path, ...]:
    """Return the folders that hold the fonts."""
    packages = dict.fromkeys((*PACKAGES.values(), *(package for package, _ in DISPLAY.values())))
    return tuple(map(_folder_of, packages))


def all_files() -> tuple[Path, ...]:
    """Return the file of every face; raises FileNotFoundError where a package is broken."""
    return (*(font_file(family, cut) for family in PACKAGES for cut, _, _ in FACES), *map(display_file, DISPLAY))


def font_faces(address: Callable[[Path], str] = Path.as_uri) -> str:
    """Return the style rules that name each font by the address of its file."""
    text = (
        f'@font-face {{ font-family: "{family}"; font-weight: {weight}; font-style: {style}; '
        f'src: url("{address(font_file(family, cut))}"); }}'
        for family in PACKAGES
        for cut, weight, style in FACES
    )
    names = (f'@font-face {{ font-family: "{face}"; src: url("{address(display_file(face))}"); }}' for face in DISPLAY)
    return "\n".join((*text, *names))


@contextmanager
def only_our_fonts(folder: Path) -> Iterator[None]:
    """Hide every other font from fontconfig, which reads its file once when it is first used. Its files, and all that is put aside while
    sheets are pressed, go into a folder of the run's: a process that presses may be ended before it has tidied up.
    """
    config = folder / "fonts.conf"
    folders = "".join(f"<dir>{path}</dir>" for path in font_folders())
    config.write_text(f"<?xml version='1.0'?><fontconfig>{folders}<cachedir>{folder}</cachedir></fontconfig>", encoding="utf-8")
    ours = dict(zip(OF_A_RUN, (str(config), str(folder)), strict=True))
    before, aside = {name: os.environ.get(name) for name in ours}, tempfile.tempdir
    os.environ.update(ours)
    tempfile.tempdir = str(folder)
    try:
        yield
    finally:
        tempfile.tempdir = aside
        for name, value in before.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value


def font_file(family: str, cut: str) -> Path:
    """Return the file of one face; raises FileNotFoundError where its package is broken."""
    return _file_of(PACKAGES[family], f"{family.replace(' ', '')}-{cut}.ttf")


def display_file(face: str) -> Path:
    """Return the file of one face of names; raises FileNotFoundError where its package is broken."""
    return _file_of(*DISPLAY[face])


def _file_of(package: str, name: str) -> Path:
    file = _folder_of(package) / name
    if not file.is_file():
        raise FileNotFoundError(f"the font package {package} lacks {name}")
    return file


def _folder_of(package: str) -> Path:
    return Path(str(files(package))) / "files"
