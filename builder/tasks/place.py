"""Which studio a command is about: the one that is named, or the one in whose folder it is typed."""

from pathlib import Path

from builder.refusals import CommandError

STUDIO_FILE = "studio.yaml"


def studio_around(start: Path) -> Path | None:
    """Return the folder with `studio.yaml` that a folder is, or lies in; None where there is none."""
    return next((folder for folder in (start, *start.parents) if (folder / STUDIO_FILE).is_file()), None)


def studio_folder(named: Path | None) -> Path:
    """Return the folder of the studio that is named, or around where the command is typed. Raises CommandError where there is none."""
    if named is not None:
        if not named.is_dir():
            raise CommandError(f"there is no folder {named}")
        return named
    around = studio_around(Path.cwd())
    if around is None:
        raise CommandError(
            f"this folder is in no studio: name the folder that holds {STUDIO_FILE}, or go into it; `stillroom start FOLDER` begins one"
        )
    return _shortly(around)


def studio_and_name(first: str | None, second: str | None) -> tuple[Path, str | None]:
    """Return the studio and the name of what is meant in it. Both may be left out: the studio inside of one, the name of an only one.

    One word alone is a studio where it is the folder of one, and a name where the command is typed inside a studio.
    """
    if second is not None or first is None:
        return studio_folder(Path(first) if first is not None else None), second
    around = studio_around(Path.cwd())
    if (Path(first) / STUDIO_FILE).is_file() or around is None or ("/" in first and Path(first).is_dir()):
        return studio_folder(Path(first)), None
    return _shortly(around), first


def recipes_in(folder: Path) -> list[str]:
    """Return the names of the recipes that lie in a studio, read or not."""
    return sorted(path.stem for path in (folder / "recipes").glob("*.yaml") if not path.name.startswith("."))


def classes_in(folder: Path) -> list[str]:
    """Return the names of the classes that lie in a studio, read or not."""
    return sorted(path.name for path in (folder / "classes").glob("*") if path.is_dir() and not path.name.startswith("."))


def _shortly(folder: Path) -> Path:
    here = Path.cwd()
    return folder.relative_to(here) if folder == here else folder
