"""A studio is spoilt in one to five ways: the text of its files, and what its files are."""

import random
from pathlib import Path
from random import Random

from tests.fuzz import vocabulary as say
from tests.fuzz.bases import Files, choose
from tests.fuzz.text_changes import change_bytes, change_drawing, change_prose, change_style, change_table, change_template
from tests.fuzz.yaml_changes import change_yaml

LAYOUTS = Path(__file__).parent.parent.parent / "layouts"
LAID_OUT_BY = sorted(path.relative_to(LAYOUTS).as_posix() for path in LAYOUTS.rglob("*") if path.suffix in (".html", ".css"))
_CHANGES = {".yaml": change_yaml, ".csv": change_table, ".html": change_template, ".css": change_style, ".svg": change_drawing}
LINK, FOLDER = b"\0link ", b"\0folder"
_LINKS = ("..", ".", "/etc/passwd", "/dev/zero", "nowhere", "../studio.yaml", "../../other/secret.yaml", "/")
_OWN = b"\ndocuments: {packing list: {like: check list, template: sheets/checklist.html, on: paper, seen by: staff}}\n"
_PASSAGES = {
    "shelf/passages/one.md": b"---\nreviewed: 2026-10-01\n---\n\n{passage: two}\n",
    "shelf/passages/two.md": b"---\nreviewed: 2026-10-01\n---\n\n{passage: one}\n",
}


def spoilt(seed: int, *, small: bool = False) -> tuple[Files, list[str]]:
    """Return the studio of a seed, and what was done to it in a few words."""
    chance = random.Random(seed)
    files, done = choose(chance, small=small), []
    for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 5))):
        name = chance.choice(sorted(files))
        how = chance.choices((change_text, _bytes, _file, _layout, _more), (20, 2, 2, 2, 1))[0]
        done.append(f"{how.__name__.strip('_')} {name}")
        how(files, name, chance)
        if not files:
            break
    return files, done


def change_text(files: dict[str, bytes], name: str, chance: Random) -> None:
    """Change the text of one file, by what kind of text it is."""
    try:
        text = files[name].decode("utf-8")
    except UnicodeDecodeError:
        return
    files[name] = _CHANGES.get(Path(name).suffix, change_prose)(text, chance).encode("utf-8", "surrogatepass")


def _bytes(files: dict[str, bytes], name: str, chance: Random) -> None:
    files[name] = change_bytes(files[name], chance)


def _file(files: dict[str, bytes], name: str, chance: Random) -> None:
    """Take a file away, rename it, copy it, or put something else in its place."""
    kind, path = chance.randrange(6), Path(name)
    other = str(path.with_name(chance.choice(say.NAMES) + path.suffix))
    if kind == 0:
        del files[name]
    elif kind == 1:
        files[other] = files.pop(name)
    elif kind == 2:
        files[other] = files[name]
    elif kind == 3:
        files[name] = FOLDER
    elif kind == 4:
        files[name] = LINK + chance.choice(_LINKS).encode()
    else:
        files[chance.choice(sorted(files))] = files[name]


def _layout(files: dict[str, bytes], _: str, chance: Random) -> None:
    """Add one of our templates or styles as the studio's own, or a style that adds to ours, and change it."""
    name = chance.choice((*LAID_OUT_BY, "styles/own.css", "styles/own-paper.css"))
    files[f"layouts/{name}"] = (LAYOUTS / name).read_bytes() if name in LAID_OUT_BY else b"p { margin: 0 }\n"
    change_text(files, f"layouts/{name}", chance)


def _more(files: dict[str, bytes], _: str, chance: Random) -> None:
    """Add what leads in circles, or what few studios have."""
    kind = chance.randrange(4)
    if kind == 0:
        files.update(_PASSAGES)
        lesson = next((name for name in sorted(files) if name.endswith("lesson.md")), None)
        if lesson:
            files[lesson] += b"\n{passage: one}\n"
    elif kind == 1 and "studio.yaml" in files:
        files["studio.yaml"] += _OWN
    elif kind == 2:
        files[
            f"{chance.choice(('recipes', 'classes', 'pages', 'shelf', 'classes/x', 'layouts', '.hidden'))}/{chance.choice(say.NAMES)}.md"
        ] = b"x"
    else:
        files["output/site/dates.json"] = chance.choice((b"", b"[]", b"{", b'{"a": [1]}', b"null", b"[[[[[", b'{"classes": {"x": 5}}'))


def lay_out(files: Files, folder: Path) -> None:
    """Write a studio to a folder; what cannot be there for the file system's own reasons is left out."""
    folder.mkdir()
    for name, data in files.items():
        path = folder / name
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            if data.startswith(LINK):
                path.symlink_to(data.removeprefix(LINK).decode())
            elif data == FOLDER:
                path.mkdir()
            else:
                path.write_bytes(data)
        except OSError:
            continue
