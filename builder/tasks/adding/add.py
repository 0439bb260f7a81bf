"""`stillroom add`: one thing more in a studio, with what is usual for its kind. Exit status 0 where nothing in the studio stops."""

import argparse
import sys
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TypeVar

from builder import pipeline
from builder.model.finding import Finding
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.recipe import CODE_LETTERS
from builder.model.studio import Studio
from builder.model.subject import WholeRecipe
from builder.press.new_files import replace_text
from builder.read.text.file_names import plain_name
from builder.reference.schemas import marked
from builder.refusals import CommandError, no_such
from builder.start import answers
from builder.start.added import SHELF_CONTAINERS, card_file, with_container, with_date
from builder.start.files import recipe_file
from builder.start.language_file import language_file
from builder.start.starters import card_kinds, starter_of
from builder.tasks.adding.notebook import compare_lye, recipe_of_notebook
from builder.tasks.drafts import studio_in
from builder.tasks.editor import refresh
from builder.tasks.place import classes_in, recipes_in, studio_folder
from builder.tasks.start import class_of, read_option, report, status_of, workshop, write
from builder.terminal.consoles import open_console, say
from builder.terminal.questions import ask
from builder.words.fold import fold

T = TypeVar("T")


def add(options: argparse.Namespace) -> int:
    """Add one thing to a studio. Raises CommandError."""
    folder = studio_folder(options.studio)
    if not (folder / "studio.yaml").is_file():
        raise CommandError(f"{folder} is no studio: it has no studio.yaml. `stillroom start FOLDER` begins one")
    studio = studio_in(folder)
    if options.thing == "recipe" and options.table is not None:
        return _recipe_of_notebook(options, folder, studio)
    return status_of(_reported(folder, _THINGS[options.thing](options, folder, studio)))


def _reported(folder: Path, changed: tuple[str, ...]) -> Sequence[Finding]:
    refresh(folder)
    for name in changed:
        say(open_console(), f"{folder / name}")
    return report(folder, changed)


def _recipe(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:
    if options.means or options.sheet or options.column:
        raise CommandError("--means, --sheet and --column go with --from")
    name, product = _name_and_kind(options, studio)
    begins_as = starter_of(studio.products[product]) or product
    files = recipe_file(name, product, workshop(studio), _code_of(plain_name(name), studio), begins_as)
    write(folder, files)
    return tuple(files)


def _recipe_of_notebook(options: argparse.Namespace, folder: Path, studio: Studio) -> int:
    name, product = _name_and_kind(options, studio)
    code = _code_of(plain_name(name), studio)
    files, recipe = recipe_of_notebook(options, name, studio.products[product], studio, workshop(studio), code)
    write(folder, files)
    found = _reported(folder, tuple(files))
    compare_lye(folder, plain_name(name), recipe)
    return status_of(found)


def _name_and_kind(options: argparse.Namespace, studio: Studio) -> tuple[str, str]:
    kinds = tuple(name for name, kind in studio.products.items() if starter_of(kind))
    name = _answer(options, "name", "NAME", "What do you call it?", answers.read_text)
    product = _answer(
        options,
        "product",
        "--product",
        f"What kind of product is it? {', '.join(kinds)}",
        answers.one_of(kinds, "kind of product that can be begun here", studio.synonyms.kinds),
    )
    return name, product


def _code_of(key: str, studio: Studio) -> str:
    """Return letters for batch codes where another recipe has those of this name; empty where none has."""
    taken = {recipe.letters for recipe in studio.recipes.values()}
    if not studio.recipes:
        return ""
    own = replace(next(iter(studio.recipes.values())), key=key, code="").letters
    free = (f"{own[:3]}{letter}" for letter in reversed(CODE_LETTERS))
    return next(code for code in free if code not in taken) if own in taken else ""


def _class(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:
    recipe = _named("recipe", options.recipe, studio.recipes, recipes_in(folder))
    if recipe in _stopped(folder):
        raise CommandError(f"a lesson names what is in the recipe: mend {recipe} first, `stillroom check` says what stops it")
    title = _answer(options, "name", "TITLE", "What is the class called?", answers.read_text)
    files = class_of(studio, title, recipe, workshop(studio))
    write(folder, files)
    return tuple(files)


def _stopped(folder: Path) -> set[str]:
    """Return the recipes of a studio that a stop is about."""
    found = pipeline.check(folder, on=date.today()).held.subjects  # noqa: DTZ011 (the studio's own day)
    return {one.key for one in found if isinstance(one, WholeRecipe)}


def _date(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:
    name = _named("class", options.for_class, studio.classes, classes_in(folder))
    when = _answer(options, "when", "WHEN", "When is it? Day and time, such as 2027-03-06 10:00", answers.read_date)
    if any(one.on == when.on for one in studio.classes[name].dates):
        raise CommandError(f"{name} has this date already")
    if options.enrolled is not None:
        when = replace(when, enrolled=read_option("--enrolled", answers.read_number, options.enrolled))
    path = folder / "classes" / name / "class.yaml"
    text = with_date(path.read_text(encoding="utf-8"), when)
    if text is None:
        raise CommandError(f"the dates in {path} stand in one line, and are left as they are; write there: {when.line}")
    replace_text(path, text)
    return (f"classes/{name}/class.yaml",)


def _card(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:
    kinds = card_kinds()
    name = _answer(options, "name", "NAME", "What is the ingredient called?", answers.read_text)
    kind = _answer(
        options,
        "kind",
        "--kind",
        f"Of what kind is it? {', '.join(kinds)}",
        answers.one_of(kinds, "kind of ingredient that can be begun here"),
    )
    known = studio.ingredient(name)
    if known is not None and known.name.casefold() != name.casefold():
        raise CommandError(f'"{name}" is another name of {known.name}; `stillroom card "{name}"` shows that card')
    files = card_file(name, kind)
    write(folder, files)
    return tuple(files)


def _container(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:
    name = _answer(options, "name", "NAME", "What do you call the container?", answers.read_text)
    known = studio.containers.get(fold(name))
    if known is not None:
        raise CommandError(f'"{known.name}" is there already; give yours a name of its own')
    holds = _answer(options, "holds", "--holds", "What does it hold, filled to the brim? For example 2 fl oz or 60 mL", answers.read_size)
    forms = tuple(ContainerForm)
    shape = _answer(options, "shape", "--shape", f"What shape has it? {', '.join(forms)}", answers.one_of(forms, "shape known here"))
    path = folder / SHELF_CONTAINERS
    before = path.read_text(encoding="utf-8") if path.is_file() else ""
    path.parent.mkdir(exist_ok=True)
    text = with_container(before, name, holds, shape)
    replace_text(path, text if before else marked({SHELF_CONTAINERS: text})[SHELF_CONTAINERS])
    return (SHELF_CONTAINERS,)


def _language(options: argparse.Namespace, folder: Path, studio: Studio) -> tuple[str, ...]:  # noqa: ARG001  all things are added alike
    name = plain_name(_answer(options, "name", "NAME", "What is the language called in English?", answers.read_text))
    code = _answer(options, "code", "--code", "What is its code, with that of the country? For example es_MX", answers.read_text)
    text = language_file(name, code)
    if text is None:
        raise CommandError(f'no language is known by the code "{code}"; write that of the language and that of the country, such as es_MX')
    file = f"shelf/languages/{name}.po"
    write(folder, {file: text})
    return (file,)


def _answer(options: argparse.Namespace, key: str, option: str, question: str, read: Callable[[str], T]) -> T:
    given = getattr(options, key)
    if given is not None:
        return read_option(option, read, given)
    if not sys.stdin.isatty():
        raise CommandError(f"there is nobody to ask here; give {option}")
    return ask(question, read)


def _named(what: str, named: str | None, read: Collection[str], there: Sequence[str]) -> str:
    """Return the recipe or class that is named, or the only one; `there` are also those that cannot be read now."""
    if named is None and len(there) > 1:
        raise CommandError(f"there is more than one {what}; say which with --{what}: {', '.join(there)}")
    if not there:
        raise CommandError(f"there is no {what} in this studio yet; `stillroom add {what}` begins one")
    name = named or there[0]
    if name not in there:
        no_such(what, name, there)
    if name not in read:
        raise CommandError(f"the {what} {name} cannot be read as it stands; `stillroom check` says what is wrong in it")
    return name


_THINGS: Mapping[str, Callable[[argparse.Namespace, Path, Studio], tuple[str, ...]]] = {
    "recipe": _recipe,
    "class": _class,
    "date": _date,
    "card": _card,
    "container": _container,
    "language": _language,
}
