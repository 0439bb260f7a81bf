"""`stillroom editor`: the schemas of a studio's files, and the line that leads to them at the head of each file."""

import argparse
from pathlib import Path

from builder.press.new_files import replace_bytes, replace_text
from builder.reference.schemas import FOLDER, editor_files, head_of, marked
from builder.refusals import CommandError
from builder.tasks.drafts import studio_in
from builder.tasks.place import STUDIO_FILE, studio_folder
from builder.terminal.consoles import open_console, say


def write_for_editors(options: argparse.Namespace) -> int:
    """Write the schemas, and with `--mark` the line at the head of each file that has none. Raises CommandError."""
    folder = studio_folder(options.studio)
    if not (folder / STUDIO_FILE).is_file():
        raise CommandError(f"{folder} is no studio: it has no {STUDIO_FILE}")
    _write(folder)
    console = open_console()
    say(console, f"Wrote what an editor needs to {folder / FOLDER}/. Run this again once you have added cards, containers or recipes.")
    if not options.mark:
        say(
            console,
            f"`--mark` puts the line that leads to it at the head of each file; recipes begin with: {head_of('recipes/x.yaml').strip()}",
        )
        return 0
    for name in sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*.yaml")):
        text = (folder / name).read_bytes().decode("utf-8", errors="surrogateescape")
        new = marked({name: text.removeprefix("\ufeff")})[name] if head_of(name) else text
        if new != text and not text.startswith("\ufeff"):
            replace_bytes(folder / name, new.encode("utf-8", errors="surrogateescape"))
            say(console, f"  {folder / name}")
    return 0


def refresh(folder: Path) -> None:
    """Write the schemas of a studio anew where it has them."""
    if (folder / FOLDER).is_dir():
        _write(folder)


def _write(folder: Path) -> None:
    (folder / FOLDER).mkdir(exist_ok=True)
    for name, text in editor_files(studio_in(folder)).items():
        replace_text(folder / name, text)
