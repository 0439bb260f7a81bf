"""A studio folder, and the library, become one studio and everything that is wrong in its text.

Decided: a file that reads as it did before is the same value as before, within one process. Why: what has been worked out from it is still
known (`model/remembered.py`).

Decided: the code that reads a kind of file is loaded where one has to be read. Why: `read/library.py`.

Decided: what is there but cannot be read is not found missing elsewhere (`Studio.unread`). Why: one mistake, one finding. That of which
something can be read is judged by that alone (`Studio.in_part`).
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path, PurePosixPath
from typing import Any, TypeVar

from builder.model.dates.studio_class import StudioClass
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.language import OWN
from builder.model.label.region import Region
from builder.model.library import Library
from builder.model.own_document import Look
from builder.model.picture import PictureFile
from builder.model.recipe.recipe import Recipe
from builder.model.recipe.unread import UNREAD
from builder.model.remembered import remembered
from builder.model.roster.roster import Roster
from builder.model.studio import PICTURE_ENDINGS, InPart, Profile, Studio
from builder.model.teaching.lesson import Block, Page
from builder.model.teaching.supervision import WatchRule
from builder.read.drawn_on import DrawnOn, fields_of
from builder.read.known import NOTHING_KNOWN, NamesKnown
from builder.read.label.languages import spelled_in, spoken
from builder.read.layout_files import unread_layouts
from builder.read.library import passages_in, read_library
from builder.read.not_used import OURS, not_used
from builder.read.read_once import read_once
from builder.read.roster.roster_files import read_roster_file
from builder.read.text.pictures import read_pictures
from builder.read.text.text_files import TextFolder

FINDS = (
    FindingKind("class-missing", STOP, "The folder of a class has no class.yaml."),
    FindingKind("lesson-missing", STOP, "The folder of a class has no lesson.md."),
    FindingKind("studio-missing", STOP, "The folder has no studio.yaml, so that it is no studio."),
)

T = TypeVar("T", Recipe, StudioClass)
_SUPPLIES, _INVENTORY = "shelf/supplies.yaml", "inventory.yaml"


def read_studio(folder: Path, content: Path) -> tuple[Studio, list[Finding]]:
    """Read a studio folder with the library that it draws on.

    What cannot be made is left out, and everything else is read all the same, so that one run shows all there is to mend.
    """
    findings: list[Finding] = []
    studio = TextFolder(folder, findings)
    if not studio.has("studio.yaml"):
        return _no_studio(studio, content), findings
    drawn_on = read_library(content, studio)
    recipe_files, page_files = tuple(studio.files("recipes", ".yaml")), tuple(studio.files("pages", ".md"))
    class_folders = tuple(studio.folders("classes"))
    profile = _profile(findings, studio.text("studio.yaml"), drawn_on.known)
    library = drawn_on.library
    region = library.regions.get(profile.region, Region(profile.region))
    library = replace(library, languages={**library.languages, OWN: spelled_in(region)})
    speaks = spoken(profile, library.languages, TextFolder(content, findings, "content/"), findings)
    drawn_on = replace(drawn_on, passages=passages_in(speaks, drawn_on, findings))
    # The words of a recipe stand on labels: they are in the studio's language where the region's labels are, and in English elsewhere.
    written_in = profile.language if profile.language in region.languages else OWN
    recipes, recipes_in_part = _recipes(studio, recipe_files, _translated_from(written_in, drawn_on.known), written_in)
    classes, classes_in_part = _classes(studio, class_folders, drawn_on)
    supplies, supplies_in_part, unread_items = _things(findings, _text_if_there(studio, _SUPPLIES), _SUPPLIES)
    inventory, inventory_in_part, _ = _things(findings, _text_if_there(studio, _INVENTORY), _INVENTORY)
    pages = _pages(studio, page_files)
    pictures, other_files = _pictures(studio, profile.look)
    read = Studio(
        **fields_of(Library, library)
        | {
            "supervision": _supervision(findings, library.supervision, profile),
            "unread": replace(
                library.unread,
                recipes=_stems(recipe_files) - set(recipes),
                classes=_stems(class_folders) - set(classes),
                pages=_stems(page_files) - set(pages),
                items=unread_items,
                layouts=unread_layouts(studio),
            ),
        },
        profile=profile,
        speaks=speaks,
        recipes=recipes,
        in_part=InPart(recipes_in_part, classes_in_part, drawn_on.cards_in_part, supplies_in_part, inventory_in_part),
        classes=classes,
        pages=pages,
        pictures=pictures,
        other_files=other_files,
        supplies=supplies,
        inventory=inventory,
        rosters=_rosters(studio, class_folders, region.locale),
    )
    findings.extend(not_used(studio))
    return read, findings


def _no_studio(studio: TextFolder, content: Path) -> Studio:
    """Return a studio that holds the library alone, and find that there is none: what else lies in the folder is not looked at."""
    wrong = "There is no studio here: a studio folder has a file studio.yaml, which says who teaches, where, and with which scales."
    remedy = "Name the folder that holds studio.yaml, or write that file. Beside it stand the folders recipes, classes and pages."
    studio.findings.append(stop("studio-missing", studio.place("studio.yaml"), wrong, remedy))
    library = read_library(content, TextFolder(studio.root, [])).library
    return Studio(**fields_of(Library, library), profile=_profile([], None, NOTHING_KNOWN))


@read_once(8)
def _profile(findings: list[Finding], text: str | None, known: NamesKnown) -> Profile:
    from builder.read.profiles import read_profile
    from builder.read.yaml.placed_yaml import read_yaml

    placed = None if text is None else read_yaml(text, "studio.yaml", findings)
    return read_profile(placed, known, findings)


@read_once(8)
def _supervision(findings: list[Finding], rules: Mapping[str, WatchRule], profile: Profile) -> Mapping[str, WatchRule]:
    from builder.read.teaching.teaching import apply_policy

    return apply_policy(rules, profile.teaching_policy, findings)


@read_once(16)
def _things(findings: list[Finding], text: str | None, file: str) -> tuple[tuple[Any, ...], tuple[Any, ...], frozenset[str]]:
    """Return what a list holds, what of it can be read in part, and the names of items among that."""
    if text is None:
        return (), (), frozenset()
    from builder.read.supplies.things import INVENTORY, PACKS, read_things, unread_items
    from builder.read.yaml.placed_yaml import read_yaml

    placed = read_yaml(text, file, findings)
    whole, in_part = read_things(PACKS if file == _SUPPLIES else INVENTORY, placed, findings)
    return whole, in_part, unread_items(placed, whole, in_part)


def _text_if_there(studio: TextFolder, file: str) -> str | None:
    return studio.text(file) if studio.has(file) else None


@remembered(8)
def _translated_from(written_in: str, known: NamesKnown) -> NamesKnown:
    """Return the names that a recipe may use, where it may be translated into every language but that in which it is written."""
    return known if written_in == OWN else replace(known, languages=tuple(name for name in (OWN, *known.languages) if name != written_in))


def _recipes(
    studio: TextFolder, files: tuple[str, ...], known: NamesKnown, written_in: str
) -> tuple[dict[str, Recipe], tuple[Recipe, ...]]:
    """Return the recipes by their keys, and beside them those of which not all can be read."""
    texts = ((name, studio.text(name)) for name in files)
    return _apart(_recipe(studio.findings, text, name, known, written_in) for name, text in texts if text is not None)


def _apart(read: Iterable[tuple[T | None, bool]]) -> tuple[dict[str, T], tuple[T, ...]]:
    """Return by their keys what could be read whole, and beside it what could be read in part."""
    there = [(one, is_whole) for one, is_whole in read if one is not None]
    return {one.key: one for one, is_whole in there if is_whole}, tuple(one for one, is_whole in there if not is_whole)


@read_once(256)
def _recipe(findings: list[Finding], text: str, file: str, known: NamesKnown, written_in: str) -> tuple[Recipe | None, bool]:
    from builder.read.shapes.recipe import RecipeShape
    from builder.read.yaml.in_part import made_in_part
    from builder.read.yaml.placed_yaml import read_yaml

    placed = read_yaml(text, file, findings)
    said = {"key": PurePosixPath(file).stem, "language": written_in}
    return made_in_part(RecipeShape, placed, findings, known, **said, in_part=placed.in_part) if placed else (None, False)


def _classes(studio: TextFolder, folders: tuple[str, ...], drawn_on: DrawnOn) -> tuple[dict[str, StudioClass], tuple[StudioClass, ...]]:
    return _apart(_class(studio, folder, drawn_on) for folder in folders)


def _class(studio: TextFolder, folder: str, drawn_on: DrawnOn) -> tuple[StudioClass | None, bool]:
    about, lesson = f"{folder}/class.yaml", f"{folder}/lesson.md"
    for name, finding, says in (
        (about, "class-missing", "what is made, when and for whom"),
        (lesson, "lesson-missing", "how it is taught"),
    ):
        if not studio.has(name):
            wrong = f"The folder of this class has no file {PurePosixPath(name).name}, which says {says}."
            studio.findings.append(stop(finding, studio.place(name), wrong, "Write the file, or remove the folder."))
    taught, told = _text_if_there(studio, lesson), _text_if_there(studio, about)
    return _class_of(studio.findings, told, about, taught, lesson, drawn_on.passages)


@read_once(256)
def _class_of(
    findings: list[Finding], told: str | None, about: str, taught: str | None, lesson: str, passages: Mapping[str, tuple[Block, ...]]
) -> tuple[StudioClass | None, bool]:
    from builder.read.shapes.studio_class import ClassShape
    from builder.read.teaching.lessons import read_lesson
    from builder.read.yaml.in_part import made_in_part
    from builder.read.yaml.placed_yaml import read_yaml

    read = read_lesson(taught, lesson, passages, findings) if taught is not None else None
    placed = read_yaml(told, about, findings) if told is not None else None
    if placed is None:
        return None, False
    key = PurePosixPath(about).parent.name
    made, is_whole = made_in_part(ClassShape, placed, findings, key=key, lesson=UNREAD if read is None else read)
    return made, is_whole and read is not None


def _rosters(studio: TextFolder, folders: tuple[str, ...], locale: str) -> dict[str, Roster]:
    read = ((PurePosixPath(folder).name, read_roster_file(studio, folder, locale)) for folder in folders)
    return {key: roster for key, roster in read if roster}


def _pages(studio: TextFolder, files: tuple[str, ...]) -> dict[str, Page]:
    texts = ((name, studio.text(name)) for name in files)
    pages = (_page(studio.findings, text, name) for name, text in texts if text is not None)
    return {page.key: page for page in pages if page}


@read_once(64)
def _page(findings: list[Finding], text: str, file: str) -> Page | None:
    from builder.read.teaching.pages import read_page

    return read_page(text, file, findings)


def _stems(names: Iterable[str]) -> frozenset[str]:
    return frozenset(PurePosixPath(name).stem for name in names)


def _pictures(studio: TextFolder, look: Look) -> tuple[dict[str, PictureFile], frozenset[str]]:
    """Return the pictures beside what is read, with the logo and the portrait, and the files there that are none."""
    of_look = {name.text for name in (look.logo, look.portrait) if name}
    names = [name for name in studio.walk() if name.partition("/")[0] in OURS or name in of_look]
    pictures = [name for name in names if name.lower().endswith(PICTURE_ENDINGS) and studio.is_sound_picture(name)]
    return read_pictures(studio, pictures), frozenset(names) - frozenset(pictures)
