"""`stillroom add recipe --from FILE`: a recipe of a notebook, each name matched or asked about, and its lye beside what it should be.

Decided: without a terminal nothing is asked; every name that nothing answers to is told at once with the nearest, and nothing is written.
Why: a wrong oil is a wrong lye.
"""

import argparse
import sys
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from builder import pipeline
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.product import Product
from builder.model.recipe.quantity import Share
from builder.model.studio import Studio
from builder.read.notebook.notebook import Entry, Notebook, read_notebook
from builder.read.notebook.table import NotebookError
from builder.read.values.amounts import parse_share
from builder.refusals import CommandError
from builder.start.files import Files, Workshop
from builder.start.notebook_recipe import MeantLine, NotebookRecipe, notebook_file, sorted_out, usual_superfat
from builder.terminal.consoles import open_console, say, styled
from builder.terminal.notebook import lye_beside
from builder.terminal.questions import ask, show
from builder.words.fold import fold
from builder.words.nearest import did_you_mean, nearest

_LEAVE_OUT = "nothing"


def recipe_of_notebook(
    options: argparse.Namespace, name: str, product: Product, studio: Studio, shop: Workshop, code: str
) -> tuple[Files, NotebookRecipe]:
    """Return the file of a recipe from a table, and what the table says; what cannot be read or matched is one CommandError."""
    path: Path = options.table
    try:
        notebook = read_notebook(path, options.sheet, options.column)
    except NotebookError as error:
        raise CommandError(_all(path, error.problems)) from None
    lines = _matched(path, notebook, _told(options.means, studio), studio)
    recipe = sorted_out(lines, notebook, product)
    if recipe.problems:
        raise CommandError(_all(path, recipe.problems))
    console = open_console()
    for line in _what_was_read(recipe):
        say(console, line)
    return notebook_file(name, recipe, shop, path.name, code), recipe


def compare_lye(folder: Path, key: str, recipe: NotebookRecipe) -> None:
    """Return in words what the lye of a notebook leaves, and how much it should be."""
    if not recipe.alkalis:
        return
    theirs = recipe.notebook.superfat
    superfat = parse_share(usual_superfat(recipe.product)) if theirs is None else Share(theirs / 100)
    written, anew = pipeline.with_another_superfat(folder, key, superfat, on=date.today())  # noqa: DTZ011 (the studio's own day)
    if written is None or anew is None:
        return
    console = open_console()
    for text, is_loud in lye_beside(written, anew, superfat, is_notebooks=theirs is not None):
        say(console, styled(text, "bold red") if is_loud else text)


def _all(path: Path, problems: Sequence[str]) -> str:
    return f"{path.name} was not taken in, and nothing was written:" + "".join(f"\n  {problem}" for problem in problems)


def _told(means: Sequence[str] | None, studio: Studio) -> dict[str, Ingredient | None]:
    """Read what names of the notebook mean, as options say it; None for what is to be left out."""
    told: dict[str, Ingredient | None] = {}
    for one in means or ():
        theirs, equals, ours = one.partition("=")
        card = studio.ingredient(ours.strip())
        if not equals or (card is None and fold(ours) != _LEAVE_OUT):
            near = did_you_mean(ours, _names(studio), studio.synonyms.ingredients) if equals else ""
            raise CommandError(f'--means "{one}": write the name in the table, =, and the name known here, or {_LEAVE_OUT}.{near}')
        told[fold(theirs)] = card
    return told


def _names(studio: Studio) -> list[str]:
    return sorted({card.name for card in studio.ingredients.values()})


def _matched(path: Path, notebook: Notebook, told: dict[str, Ingredient | None], studio: Studio) -> tuple[MeantLine, ...]:
    lines, problems = [], []
    for entry in notebook.entries:
        card = told.get(fold(entry.name)) or studio.ingredient(entry.name)
        if fold(entry.name) in told and told[fold(entry.name)] is None:
            continue
        if card is None and sys.stdin.isatty():
            card = told[fold(entry.name)] = _asked(entry, studio)
        elif card is None:
            near = did_you_mean(entry.name, _names(studio), studio.synonyms.ingredients)
            problems.append(f'line {entry.line}: no ingredient is called "{entry.name}".{near}')
        if card is not None:
            lines.append(MeantLine(entry, card))
    for number, heading in notebook.headings:
        if studio.ingredient(heading) is not None and fold(heading) not in told:
            problems.append(f"line {number}: {heading} has no amount")
    if problems:
        example = next((entry.name for entry in notebook.entries if not studio.ingredient(entry.name)), "")
        how = f'say what is meant with --means "{example or "..."}=...", or ={_LEAVE_OUT}; `stillroom add card` adds an ingredient of yours'
        raise CommandError(_all(path, [*problems, how]))
    return tuple(lines)


def _asked(entry: Entry, studio: Studio) -> Ingredient | None:
    near = nearest(entry.name, _names(studio), 5, studio.synonyms.ingredients)
    show([f"  {number:>2} {name}" for number, name in enumerate(near, 1)])

    def read(text: str) -> Ingredient | None:
        if fold(text) == _LEAVE_OUT:
            return None
        named = near[int(text) - 1] if text.isdigit() and 0 < int(text) <= len(near) else text
        card = studio.ingredient(named)
        if card is None:
            raise ValueError(f'No ingredient is called "{text}".{did_you_mean(text, _names(studio), studio.synonyms.ingredients)}')
        return card

    return ask(f'Line {entry.line}: what is "{entry.name}"? A number of this list, a name, or "{_LEAVE_OUT}" to leave the line out.', read)


def _what_was_read(recipe: NotebookRecipe) -> Iterator[str]:
    for line in (*recipe.others, *recipe.waters, *recipe.alkalis):
        if fold(line.entry.name) != fold(line.card.name):
            yield f'"{line.entry.name}" is taken for {line.card.name}.'
    if recipe.notebook.not_read:
        yield f"Not read: {', '.join(recipe.notebook.not_read)}."
    if recipe.notebook.in_percent and recipe.alkalis:
        yield "The percentages are written as weights, 10 g for each percent, so that the lye stays as it stands."
    if recipe.product.made_with_lye and not recipe.alkalis:
        yield "The table has no lye: how much the oils take is worked out here."
