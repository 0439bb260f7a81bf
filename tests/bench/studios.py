"""Studios of any number of classes, with invented names: the sound classes of `tests/usual/studio`, again and again under other names.

Each copy has recipes of its own and differs in what stays in the pot and in how many come, so that nothing of one class is the same as in
the next by accident of the copying. The copies stand in the same order for every size: a smaller studio is the beginning of a larger one.
"""

import re
import shutil
from datetime import datetime, timedelta
from pathlib import Path

USUAL = Path(__file__).parent.parent / "usual" / "studio"
PATTERNS = sorted(path.name for path in (USUAL / "classes").iterdir())
_FIRST = ("amber", "brindle", "copper", "dapple", "ember", "fallow", "gilded", "hazel", "indigo", "juniper")
_SECOND = ("arch", "barn", "cove", "dell", "eyrie", "ford", "glade", "harbour", "inlet", "jetty")
_THIRD = ("acre", "bridge", "close", "drive", "end", "field", "gate", "hill", "island", "junction")
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
_MOST = len(_FIRST) * len(_SECOND) * len(_THIRD)


def write_studio(folder: Path, classes: int) -> Path:
    """Write a sound studio with so many classes (1,000 at most) into a folder that is not there yet, and give it."""
    assert 0 < classes <= _MOST, f"there are names for {_MOST} classes"
    shutil.copytree(USUAL / "shelf", folder / "shelf")
    shutil.copy(USUAL / "studio.yaml", folder / "studio.yaml")
    (folder / "recipes").mkdir()
    for number in range(classes):
        _write_class(folder, number)
    return folder


def _write_class(folder: Path, number: int) -> None:
    pattern = USUAL / "classes" / PATTERNS[number % len(PATTERNS)]
    words = _name(number)
    about, lesson = ((pattern / name).read_text(encoding="utf-8") for name in ("class.yaml", "lesson.md"))
    made = [path.stem for path in (USUAL / "recipes").glob("*.yaml") if re.search(rf"^  {path.stem}:", about, re.MULTILINE)]
    for place, recipe in enumerate(sorted(made)):
        text = (USUAL / "recipes" / f"{recipe}.yaml").read_text(encoding="utf-8")
        text = re.sub(r"^name: (\w)", lambda found: f"name: {words.capitalize()} {found[1].lower()}", text, flags=re.MULTILINE)
        text = re.sub(r"^code: .*\n", "", text, flags=re.MULTILINE) + f'code: "{_code(number * 2 + place)}"\n'
        (folder / "recipes" / f"{_key(words)}-{recipe}.yaml").write_text(text, encoding="utf-8")
        about = about.replace(f"  {recipe}:", f"  {_key(words)}-{recipe}:")
        lesson = re.sub(rf"(^## .*), {recipe}\)", rf"\1, {_key(words)}-{recipe})", lesson, flags=re.MULTILINE)
    about = re.sub(r"^title: (\w)", lambda found: f"title: {words.capitalize()}, {found[1].lower()}", about, flags=re.MULTILINE)
    about = re.sub(r"left in the pot: (\d+) g", lambda found: f"left in the pot: {int(found[1]) + number % 7} g", about)
    about = re.sub(r"(?<=enrolled: )(\d+)", lambda found: str(max(4, int(found[1]) - number // 3 % 3)), about)
    about = re.sub(r"on: ([\d-]+ [\d:]+)", lambda found: f"on: {_later(found[1], number)}", about)
    target = folder / "classes" / f"{_key(words)}-{pattern.name}"
    target.mkdir(parents=True)
    (target / "class.yaml").write_text(about, encoding="utf-8")
    (target / "lesson.md").write_text(lesson, encoding="utf-8")


def _name(number: int) -> str:
    """Return three words that no other number has, such as `amber arch acre`."""
    first, rest = number % 10, number // 10
    return f"{_FIRST[first]} {_SECOND[rest % 10]} {_THIRD[rest // 10]}"


def _key(words: str) -> str:
    return words.replace(" ", "-")


def _code(number: int) -> str:
    """Return three letters that no other number has."""
    return "".join(_LETTERS[number // len(_LETTERS) ** place % len(_LETTERS)] for place in (2, 1, 0))


def _later(written: str, number: int) -> str:
    """Return a date so many days later that classes are spread over years."""
    return (datetime.fromisoformat(written) + timedelta(days=number)).isoformat(sep=" ", timespec="minutes")
