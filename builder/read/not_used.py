"""What lies in a studio as if it were meant to be read, where nothing reads it: files and folders by a name almost ours, or out of place.

Decided: at the root only what looks like one of ours is told: text of the kinds that are read, and lists of people. Why: pictures, tables
of a notebook, notes and what tools leave behind are nobody's business.
"""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path, PurePosixPath

from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.read.text.text_files import TextFolder
from builder.words.fold import fold

FINDS = (
    FindingKind("file-not-used", CAUTION, "A file lies in the studio that nothing reads."),
    FindingKind("folder-not-used", CAUTION, "A folder has almost the name of one that is read, and nothing reads it."),
)

OURS = ("recipes", "classes", "shelf", "pages")
_LAYOUTS = "layouts"
_AT_ROOT = ("studio.yaml", "inventory.yaml")
_TEXTS = (".yaml", ".yml", ".md", ".csv", ".html", ".css")
# Other words for our folders; of those that are merely spelled alike, only what is a slip of one or two letters.
_MEANT = {
    "formulas": "recipes", "formulae": "recipes", "lessons": "classes", "courses": "classes", "workshops": "classes",
    "ingredients": "shelf/ingredients",
    "cards": "shelf/ingredients", "cautions": "shelf/cautions", "passages": "shelf/passages", "templates": "layouts", "shelves": "shelf",
}  # fmt: skip
# What can be read in those folders, beside YAML.
_READ_THERE = {"classes": ".md", "shelf/passages": ".md", "layouts": ".html"}
_ALMOST = 0.8
_BEGINNING = 20_000
# Where files belong, by their names or by a key that only they have.
_PLACES = {
    "studio": "studio.yaml", "inventory": "inventory.yaml", "supplies": "shelf/supplies.yaml", "sources": "shelf/sources.yaml",
    "containers": "shelf/containers.yaml", "products": "shelf/products.yaml", "label_sheets": "shelf/label_sheets.yaml",
    "allergy_words": "shelf/allergy_words.yaml", "class": "classes/NAME/class.yaml", "recipe": "recipes/NAME.yaml",
    "recipes": "recipes/NAME.yaml", "lesson": "classes/NAME/lesson.md", "lessons": "classes/NAME/lesson.md",
}  # fmt: skip
_BY_KEY = {"phases": "recipes/NAME.yaml", "makes": "classes/NAME/class.yaml", "counts as": "shelf/ingredients/NAME.yaml"}
# Texts that lie beside any work.
_OF_ANY_WORK = {"readme", "license", "licence", "copying", "changelog", "contributing", "authors", "notes", "todo", "ideas"}
_LISTS = (".csv", ".xlsx", ".xls", ".ods", ".tsv", ".txt", ".numbers")
_PEOPLE = ("roster", "rosters", "guests", "guest list", "students", "attendees", "participants", "enrolled", "enrolments")
_ROSTER = re.compile(r"classes/[^/]+/roster\.(csv|xlsx)")


def not_used(studio: TextFolder) -> Iterator[Finding]:
    """Yield what is found once all that is read has been met."""
    names = [name for name in studio.walk() if not PurePosixPath(name).name.startswith("~$")]
    met = {name.casefold(): name for name in studio.met}
    for name in names:
        # A machine that takes capital and small letters for the same has read it by its other name.
        is_met = name in studio.met or (name.casefold() in met and _is_one_file(studio.root / name, studio.root / met[name.casefold()]))
        told = None if is_met else _why_not(studio, name)
        if told:
            yield caution("file-not-used", Place(name), *told)
    yield from _folders_not_used(names)


def _is_one_file(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except OSError:
        return False


def _why_not(studio: TextFolder, name: str) -> tuple[str, str] | None:
    """Return what is wrong with a file that nothing has read, and what to do; None where it may lie there."""
    path = PurePosixPath(name)
    at_root, ours = len(path.parts) == 1, path.parts[0] in OURS
    if (at_root or path.parts[0] == "classes") and path.suffix.lower() in _LISTS and not _ROSTER.fullmatch(name) and _lists_people(path):
        wrong = "By its name this may be a list of who comes, and nothing reads it here: its allergies are compared with nothing."
        return wrong, "The roster of a class is classes/NAME/roster.csv, or roster.xlsx beside its class.yaml."
    if path.suffix.lower() == ".yml" and (ours or at_root):
        return "Nothing is read from a file whose name ends in .yml.", f'Call it "{path.stem.lower() if at_root else path.stem}.yaml".'
    if ours and path.suffix == ".yaml":
        return "Nothing is read from a file in this place.", _PLACES_OF_ALL
    if at_root and path.suffix.lower() in (".yaml", ".md") and name not in _AT_ROOT and fold(path.stem) not in _OF_ANY_WORK:
        return "Nothing is read from a file in this place.", _where(studio, path)
    return None


_PLACES_OF_ALL = "A recipe is recipes/NAME.yaml, a class is classes/NAME/class.yaml, a card is shelf/ingredients/NAME.yaml."


def _lists_people(path: PurePosixPath) -> bool:
    stem = " ".join(re.findall(r"[^\W\d_]+", path.stem.casefold()))
    return bool(get_close_matches(stem, _PEOPLE, n=1, cutoff=_ALMOST)) or any(word in _PEOPLE for word in stem.split())


def _where(studio: TextFolder, path: PurePosixPath) -> str:
    """Return where a file at the root belongs: by its name, by what stands in it, or else where each of its kind does."""
    meant = get_close_matches(fold(path.stem), _PLACES, n=1, cutoff=_ALMOST)
    if meant:
        return f"It may be meant for {_PLACES[meant[0]]}; call it so, or take it out."
    if path.suffix.lower() == ".md":
        return "A page of your own is pages/NAME.md, a lesson classes/NAME/lesson.md."
    by_key = [place for key, place in _BY_KEY.items() if re.search(rf"^{key}\s*:", _beginning_of(studio, path), re.MULTILINE)]
    return f"By what stands in it, it belongs at {by_key[0]}." if by_key else _PLACES_OF_ALL


def _beginning_of(studio: TextFolder, path: PurePosixPath) -> str:
    try:
        with (studio.root / path).open("rb") as file:
            return file.read(_BEGINNING).decode("utf-8", "replace")
    except OSError:
        return ""


def _folders_not_used(names: list[str]) -> Iterator[Finding]:
    """Find the folders beside `studio.yaml` that have almost the name of one of ours, with something to read in them."""
    below = [name for name in names if "/" in name]
    holding = dict.fromkeys(name.partition("/")[0] for name in below if name.endswith(_TEXTS))
    for name in holding:
        if name not in (*OURS, _LAYOUTS) and (ours := _folder_meant(name, [one for one in below if one.startswith(f"{name}/")])):
            wrong = f'Nothing is read from a folder of the name "{name}", so that what lies in it counts for nothing.'
            yield caution("folder-not-used", Place(name), wrong, f"Call it {ours}, or move what is in it there.")


def _folder_meant(name: str, files: list[str]) -> str:
    """Return the folder that is meant; of another word for it only where files lie there that could be read."""
    meant = _MEANT.get(fold(name), "")
    paths = [PurePosixPath(file) for file in files]
    if not any(path.suffix in (".yaml", _READ_THERE.get(meant)) and fold(path.stem) not in _OF_ANY_WORK for path in paths):
        meant = ""
    close = get_close_matches(fold(name), (*OURS, _LAYOUTS), n=1, cutoff=_ALMOST) if name.isalpha() else []
    return meant or "".join(close)
