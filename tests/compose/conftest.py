"""A whole small studio in text, read and worked out, for the tests of its documents."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.compose.templates import Templates
from builder.fonts.typefaces import typefaces_of_labels
from builder.library import CONTENT, LAYOUTS
from builder.model.document import Publication
from builder.read.studios import read_studio
from builder.reckon import reckon_classes

TODAY = date(2027, 1, 15)

FILES = {
    "studio.yaml": """
name: Test studio
tagline: Small classes
address: [1 Test Row, Testham]
contact: {email: teacher@test.example}
region: US
currency: USD
paper: letter
scales:
  - {name: bench scale, reads to: 0.1 g, up to: 10 kg}
scales at home:
  - {name: kitchen scale, reads to: 1 g, up to: 5 kg}
  - {name: kitchen scale, reads to: 0.05 oz, up to: 11 lb}
emergency: {number: "112", poison centre: "113"}
""",
    "pages/welcome.md": "# Come in\n\nSee [the first class](class:first) and [about us](page:about).\n",
    "pages/about.md": "# About us\n\nWe are *small* & careful.\n",
    "recipes/salts.yaml": """
name: Plain salts
product: bath salts
about: Salts for the bath.
amounts: weights
phases:
  - name: salts
    ingredients: {sea salt: 600 g, baking soda: 300 g}
  - name: warm
    heat to: 70 degC
    ingredients: {glycerin: 100 g}
choices:
  scent: {from: [lavender essential oil, no scent], at most: 1 %}
fills: {container: 4 fl oz jar, weight: 113 g}
tools: [bowl]
keeps: 6 months
storage: Keep it dry.
directions: Stir into the bath.
label cautions: [Not to be eaten.]
""",
    "recipes/bar.yaml": """
name: Plain bar
product: cold-process soap
amounts: percent of oils
phases:
  - name: oils
    ingredients: {olive oil: 100 %}
lye:
  alkali: sodium hydroxide
  purity: 100 %
  superfat: 10 %
  water: {water to lye: 2}
fills: {container: cut soap bar, weight: 100 g}
""",
    "classes/first/class.yaml": """
title: The first class
format: demo with hands-on parts
summary: Salts and a bar.
for: beginners
goal: learn to make at home
youngest: 16
length: 1 h
seats: 5
price: 48.00
staff: {teachers: 1, assistants: 1}
group size: 2
makes:
  salts: {each student: 2 containers, at home: [500 g]}
  bar: {batch: one for each group, each student: 1 container, at home: [500 g of oils]}
wear: [closed shoes]
take home: A jar and a bar.
dates:
  - {on: 2027-01-10 10:00, enrolled: 2}
  - {on: 2027-02-06 10:00, enrolled: 3}
  - {on: 2027-03-06 10:00, enrolled: 5}
""",
    "classes/first/lesson.md": """# The first class

You make *two* things.

## Get ready (ahead, 15 min, class only)

1. Put {sea salt} of sea salt on the table.

## Watch the lye (teacher, 20 min, bar)

1. Put on goggles.
2. Weigh {lye water} of cold water.
3. Weigh {sodium hydroxide} of sodium hydroxide.
4. Stir {lye} into the water.
5. Pour {portion} into each of {containers} moulds.

## Mix the salts (students, 40 min)

1. Weigh {sea salt} of sea salt and {baking soda} of baking soda.
2. Warm {glycerin} of glycerin to 70 °C.
3. Add at most {scent} of scent.
4. Fill {portion} into the jar.

## At home (students, 5 min, home only)

1. Check that the batch weighs {batch}.
""",
}


FRENCH = {
    "recipes__salts_yaml": """translations:
  French:
    name: Sels tout simples
    storage: "À garder au sec : l’humidité les durcit."
    directions: Verser dans le bain.
    label cautions: [Ne pas manger.]
""",
    "recipes__bar_yaml": "translations: {French: {name: Savon tout simple}}\n",
}


def in_region(region: str) -> dict[str, str]:
    """Return the files of the studio that change with its region."""
    changed = {"studio_yaml": FILES["studio.yaml"].replace("region: US", f"region: {region}")}
    if region == "Canada":
        changed |= {name: FILES[name.replace("__", "/").replace("_yaml", ".yaml")] + text for name, text in FRENCH.items()}
    return changed


def write_studio(folder: Path, **changed: str) -> Path:
    """Write the studio's files, some of them changed; `__` in a name stands for a slash, `_yaml` and `_md` for its ending."""
    files = FILES | {name.replace("__", "/").replace("_yaml", ".yaml").replace("_md", ".md"): text for name, text in changed.items()}
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text.lstrip("\n"), encoding="utf-8")
    return folder


def read_edition(folder: Path) -> Edition:
    """Read and work out a studio."""
    studio, findings = read_studio(folder, CONTENT)
    assert findings == []
    studio = replace(studio, typefaces=typefaces_of_labels())
    sheets = reckon_classes(studio, studio.classes.values(), on=TODAY)
    return Edition(studio, sheets, (), Templates((LAYOUTS,)), TODAY)


@pytest.fixture(scope="session")
def edition(tmp_path_factory: pytest.TempPathFactory) -> Edition:
    return read_edition(write_studio(tmp_path_factory.mktemp("studio")))


@pytest.fixture(scope="session")
def publication(edition: Edition) -> Publication:
    return compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))


@pytest.fixture(scope="session")
def document(publication: Publication) -> Callable[[str], str]:
    """Return the text of a document by its path, tags and all."""
    by_path = {f"{document.folder}/{document.path}": document.html for document in publication.documents}
    return lambda path: by_path[path].replace("\u00a0", " ")
