"""What the commands do that look things up: a page of the reference, lists of names, and what a name means. All give the exit status 0."""

import argparse
import re
from pathlib import Path

from builder import pipeline
from builder.list_names import ListName
from builder.press.folder import FolderError
from builder.reference import explain, find_page, finding_names, pages
from builder.reference.figures import figure_lines, limit_lines
from builder.reference.layouts import layout_names
from builder.reference.lists import Shown, list_of
from builder.reference.terms import find_term, terms
from builder.refusals import CommandError, NotDoneError, no_such
from builder.tasks.drafts import drawn_on, library_of, studio_in
from builder.tasks.place import studio_around, studio_folder
from builder.terminal.lists import print_list, print_told
from builder.terminal.reference import print_explanation, print_page, print_written
from builder.words.fold import fold
from builder.words.nearest import did_you_mean


def print_reference(options: argparse.Namespace) -> int:
    """Print a page, or the list of all of them; with `--to` write all as web pages. Raises CommandError and NotDoneError."""
    if options.to is None:
        page = find_page(options.name or pages()[0].key)
        if page is None:
            no_such("page", options.name, [*(page.key for page in pages()), *layout_names()], meanings=_pages_about())
        print_page(page)
        return 0
    if options.name is not None:
        raise CommandError("--to writes every page; leave out the name")
    try:
        print_written(pipeline.publish_reference(options.to), options.to)
    except FolderError as error:
        raise NotDoneError(f"{error.wrong} {error.remedy}") from None
    return 0


def _pages_about() -> dict[str, tuple[str, ...]]:
    """Return the pages whose title has a word, by the folded word."""
    about: dict[str, tuple[str, ...]] = {}
    for page in pages():
        for word in re.findall(r"\w{4,}", fold(page.title)):
            about[word] = (*about.get(word, ()), page.key)
    return about


def explain_name(options: argparse.Namespace) -> int:
    """Return in words what a finding, a word, a figure or the limits of an ingredient mean."""
    name = options.name
    explanation, term = explain(name), find_term(name)
    if explanation is not None:
        print_explanation(explanation)
    if term is not None:
        print_told(term.name, (term.means.replace("`", ""), *([f"Also called {', '.join(term.also_called)}."] if term.also_called else ())))
    if explanation is not None or term is not None:
        return 0
    library = library_of(studio_around(Path.cwd()))
    lines = figure_lines(name, library) or limit_lines(name, library)
    if not lines and library.ingredients.get(fold(name)):
        lines = [f'No limit is known here for it. `stillroom card "{name}"` shows its figures.']
    if not lines:
        known = (
            *finding_names(),
            *(term.name for term in terms()),
            *library.constants,
            *(card.name for card in library.ingredients.values()),
        )
        no_such("finding, word, figure or ingredient", name, known, meanings=library.synonyms.ingredients)
    print_told(name, lines)
    return 0


def list_names(options: argparse.Namespace) -> int:
    """List what can be named in a file, with what a studio adds. Raises CommandError."""
    what = next((one for one in ListName if one == _ALSO.get(options.what, options.what)), None)
    if what is None:
        near = did_you_mean(options.what, ListName) or f" The lists are: {', '.join(ListName)}."
        like = f" `stillroom list ingredients --like {options.what.removesuffix('s')}` looks among ingredients."
        raise CommandError(f'there is no list "{options.what}".{near}{like}')
    if options.studio and not options.studio.is_dir():
        like = f'`stillroom list {options.what} --like "{options.studio}"` looks for these words in the list'
        raise CommandError(f"there is no folder {options.studio}; {like}")
    folder = studio_folder(options.studio) if options.studio else studio_around(Path.cwd())
    if folder is None and what in (ListName.RECIPES, ListName.CLASSES):
        folder = studio_folder(None)
    listing = list_of(what, Shown(drawn_on(folder), studio_in(folder) if folder else None), options.like or "")
    if not listing.rows:
        raise CommandError(f"nothing in this list{f' has {options.like!r} in it' if options.like else ''}")
    print_list(listing)
    return 0


# Words that people type for a list.
_ALSO = {
    "products": "kinds", "ingredient": "ingredients", "cards": "ingredients", "label-sheets": "sheets", "labels": "sheets",
    "essential-oils": "oils", "words": "terms", "glossary": "terms", "constants": "figures", "limits": "figures", "kind": "kinds",
    "container": "containers", "caution": "cautions", "passage": "passages", "drawing": "drawings", "recipe": "recipes", "class": "classes",
    "templates": "layouts", "styles": "layouts", "blocks": "layouts",
}  # fmt: skip
