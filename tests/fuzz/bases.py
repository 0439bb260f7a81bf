"""Small studios to spoil: one class of the example or of the usual studio with all that it needs, or the studio of a finding."""

import random
from functools import cache
from pathlib import Path

import yaml

from tests.published import EXAMPLE
from tests.test_findings import CASES, FINDINGS
from tests.test_usual import STUDIO as USUAL

SOUND = FINDINGS / "_sound"
Files = dict[str, bytes]
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@cache
def read(folder: Path) -> Files:
    """Return every file of a folder by its name."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


@cache
def classes_of(folder: Path) -> dict[str, list[str]]:
    """Return the recipes that each class of a studio makes."""
    made = {path.parent.name: yaml.load(path.read_bytes(), LOADER)["makes"] for path in sorted(folder.glob("classes/*/class.yaml"))}
    return {key: list(makes) for key, makes in made.items()}


def choose(chance: random.Random, *, small: bool = False) -> Files:
    """Choose a studio; a small one takes a twentieth of a second to check."""
    if small:
        return _one_class(SOUND, chance)
    kind = chance.random()
    if kind < 0.3:
        return dict(read(SOUND))
    if kind < 0.6:
        own = {name: data for name, data in read(chance.choice(CASES)).items() if name not in ("expected.txt", "gone.txt")}
        return {**read(SOUND), **own}
    return _one_class(EXAMPLE if kind < 0.8 else USUAL, chance)


def _one_class(folder: Path, chance: random.Random) -> Files:
    files, classes = read(folder), classes_of(folder)
    key = chance.choice(list(classes))
    wanted = (f"classes/{key}/", *(f"recipes/{name}.yaml" for name in classes[key]), "studio.yaml", "inventory.yaml", "shelf/")
    pages = chance.sample([name for name in files if name.startswith("pages/")], 1) if folder is EXAMPLE else []
    return {name: data for name, data in files.items() if name.startswith(wanted) or name in pages}


@cache
def words() -> tuple[str, ...]:
    """Return every key and every text that the example and the usual studio hold, to be put where they do not belong."""
    found: set[str] = set()
    for folder in (EXAMPLE, USUAL):
        for name, data in read(folder).items():
            if name.endswith(".yaml"):
                found.update(node.value for node in scalars(yaml.compose(data, LOADER)))
    return tuple(sorted(found))


def scalars(node: yaml.Node | None) -> list[yaml.ScalarNode]:
    """Return every text of a YAML tree, keys too."""
    found, left, met = [], [node] if node else [], set()
    while left:
        one = left.pop()
        if id(one) in met:
            continue
        met.add(id(one))
        if isinstance(one, yaml.ScalarNode):
            found.append(one)
        elif isinstance(one, yaml.MappingNode):
            left += [part for pair in one.value for part in pair]
        else:
            left += one.value
    return found
