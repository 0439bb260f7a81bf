"""What was published, what was left out, and what was found."""

from collections.abc import Iterator
from pathlib import Path, PurePath

from builder.model.document import Folder
from builder.model.subject import HomeSheet, Labels, OneDate, ShoppingList, TextPage, WholeClass, wholes_of
from builder.pipeline import Outcome
from builder.terminal.findings import tally


def written_lines(outcome: Outcome, output: Path) -> Iterator[str]:
    """Return in words what was written where."""
    pressed = outcome.pressed
    if pressed is None:
        yield "Nothing was written: a stop has to be mended first. `--only-sound` writes what no stop is about."
        return
    for folder, what in ((Folder.SITE, "to upload"), (Folder.PRINT, "for the studio only")):
        count = sum(where is folder for where, _ in pressed.written)
        yield f"Wrote {count} files to {output / folder.value}/ ({what})."
    packs = sorted(place for where, place in pressed.written if where is Folder.PRINT and PurePath(place).name == "pack.pdf")
    yield f"Open {output / Folder.SITE.value / 'index.html'} in a browser." + (
        f" All that a date prints is in one file, such as {output / Folder.PRINT.value / packs[0]}." if packs else ""
    )
    if pressed.kept:
        yield f"{pressed.kept} sheets are as they were, and were not pressed again."


def unchanged_lines(outcome: Outcome, output: Path) -> Iterator[str]:
    """Yield the same where the publication is known to be as it was."""
    if outcome.pressed is None:
        yield from written_lines(outcome, output)
    else:
        yield f"Nothing has changed: the publication in {output}/ is as it was."


def told_lines(outcome: Outcome) -> Iterator[str]:
    """Return in words what was left out of a publication, and what was found."""
    pressed = outcome.pressed
    if pressed:
        if outcome.left_out:
            yield f"Left out, since a stop is about them: {', '.join(sorted(outcome.left_out))}."
        yield from left_out_lines(outcome)
        if pressed.pdf_missing:
            yield pressed.pdf_missing
        yield from pressed.warnings
    yield tally(outcome.findings)


def left_out_lines(outcome: Outcome) -> Iterator[str]:
    """Return in words what else has not been written of what was published."""
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
