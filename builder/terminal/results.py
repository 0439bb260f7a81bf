"""What was published, what was left out, and what was found."""

from collections.abc import Iterator
from pathlib import Path

from builder.model.document import Folder
from builder.model.subject import HomeSheet, Labels, OneDate, ShoppingList, TextPage, WholeClass, wholes_of
from builder.pipeline import Outcome
from builder.terminal.consoles import open_console, say
from builder.terminal.findings import tally


def print_published(outcome: Outcome, output: Path) -> None:
    """Print what was written where, what was left out, and what was found."""
    console = open_console()
    pressed = outcome.pressed
    if pressed is None:
        say(console, "Nothing was written: a stop has to be mended first. `--only-sound` writes what no stop is about.")
    else:
        for folder, what in ((Folder.SITE, "to upload"), (Folder.PRINT, "for the studio only")):
            count = sum(where is folder for where, _ in pressed.written)
            say(console, f"Wrote {count} files to {output / folder.value}/ ({what}).")
        if pressed.kept:
            say(console, f"{pressed.kept} sheets are as they were, and were not pressed again.")
        if outcome.left_out:
            say(console, f"Left out, since a stop is about them: {', '.join(sorted(outcome.left_out))}.")
        for line in left_out_lines(outcome):
            say(console, line)
        if pressed.pdf_missing:
            say(console, pressed.pdf_missing)
        for warning in pressed.warnings:
            say(console, warning)
    say(console, tally(outcome.findings))


def left_out_lines(outcome: Outcome) -> Iterator[str]:
    """Say what else has not been written of what was published."""
    left_out = {WholeClass(key) for key in outcome.left_out}
    parts = [subject for subject in outcome.held.subjects if left_out.isdisjoint(wholes_of(subject))]
    labels: dict[str, list[str]] = {}
    for subject in parts:
        match subject:
            case Labels(recipe, key):
                labels.setdefault(key, []).append(recipe)
    for key, recipes in sorted(labels.items()):
        yield f"No labels in {key}, since a question about them is open: {', '.join(sorted(recipes))}."
    dates = sorted(f"{one.class_key} on {one.on:%Y-%m-%d %H:%M}" for one in parts if isinstance(one, OneDate))
    homes = sorted(f"{one.recipe}, {one.size} ({one.class_key})" for one in parts if isinstance(one, HomeSheet))
    pages = sorted(one.key for one in parts if isinstance(one, TextPage))
    for what, left in (("Dates", dates), ("Take-home sheets", homes), ("Pages", pages)):
        if left:
            yield f"{what} left out, since a stop is about them: {'; '.join(left)}."
    if outcome.held.holds(ShoppingList()):
        yield "No shopping list, since a stop is about it."
