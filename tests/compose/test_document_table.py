"""The table of documents is the only one: what layouts/README.md says of documents comes from it, and nobody sees who should not.

To write the table in layouts/README.md anew: `python -m tests.compose.test_document_table`.
"""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from builder.compose.document_kind import DocumentKind, Lies, Readers
from builder.compose.document_table import DOCUMENTS, copies_to_print
from builder.compose.edition import Edition
from builder.compose.frames import SCREEN_STYLES
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.document import Folder
from builder.model.roster.roster import Guest
from tests.compose.conftest import TODAY
from tests.making import sure

PAGE = LAYOUTS / "README.md"
TABLE = re.compile(r"(?<=\n\n)\| document \|.*?(?=\n\n)", re.DOTALL)


def rows() -> Iterator[str]:
    yield "| document | one for each | view | template | styles, in order | who may see it |"
    yield "|---|---|---|---|---|---|"
    for kind in DOCUMENTS:
        if kind.template:
            styles = SCREEN_STYLES if kind.template.startswith("pages/") else kind.all_styles
            names = ", ".join(style.removesuffix(".css") for style in styles)
            seen_by = kind.readers.value + (", or everybody where the class says so" if kind.public_path else "")
            yield f"| {kind.name} | {kind.scope.name} | {kind.view.__name__} | `{kind.template}` | {names} | {seen_by} |"


def test_the_page_on_layouts_has_the_table() -> None:
    assert sure(TABLE.search(PAGE.read_text(encoding="utf-8")))[0] == "\n".join(rows())


def test_names_and_paths_are_told_apart() -> None:
    assert len({kind.name for kind in DOCUMENTS}) == len(DOCUMENTS)
    assert len({(kind.readers.folder, kind.path) for kind in DOCUMENTS}) == len(DOCUMENTS)


@pytest.mark.parametrize("kind", [kind for kind in DOCUMENTS if kind.template], ids=lambda kind: kind.name)
def test_a_template_takes_the_view_of_its_row_and_its_styles_are_there(kind: DocumentKind[Any]) -> None:
    first = (LAYOUTS / sure(kind.template)).read_text(encoding="utf-8").split("\n")[0]
    assert first == "{# Takes: " + kind.view.__name__ + " #}"
    assert all((LAYOUTS / "styles" / name).exists() for name in kind.all_styles)
    assert kind.path.endswith(".html" if sure(kind.template).startswith("pages/") else ".pdf")


def test_only_the_staff_see_who_comes(edition: Edition) -> None:
    """Whatever a composer is given, names of people are in no plan but that of a row that says so."""
    comes, waits = (Guest(name, None, "", {}) for name in ("Somebody Who Comes", "Somebody Who Waits"))
    listed = tuple(replace(sheet, guests=(comes,), waiting=(waits,)) for sheet in edition.plans)
    made = compose_documents(*editions(edition.studio, listed, (), (LAYOUTS,), TODAY))
    with_names = {document.path for document in made.documents if "Somebody Who" in document.html}
    (row,) = [kind for kind in DOCUMENTS if kind.readers is Readers.STAFF_WITH_NAMES]
    assert with_names == {row.place(sheet).path for sheet in listed}
    assert row.readers.folder is Folder.PRINT


def test_what_is_printed_for_a_date_is_on_its_check_list(edition: Edition) -> None:
    """A sheet of a date that no line of the check list counts would not be printed; the check list itself is what is read, the pack
    is all of them, and some are looked up without paper."""
    for kind in DOCUMENTS:
        if "{date}" in kind.path and kind.name not in ("check list", "pack to print"):
            made = [kind.make(edition, subject) for subject in kind.scope.all(edition)]
            copies = [one for sheet in edition.plans for one in kind.copies(edition, sheet)]
            assert any(made) <= any(one.line or one.lies is Lies.LOOKED_UP for one in copies), kind.name
    lines = [re.split("[:,]", line)[0] for line in copies_to_print(edition, edition.plans[0])]
    cards, sheets = ["Bench cards", "Steps at the bench", "Batch cards"], ["Take-home sheet"] * 2
    ahead = ["Teacher's sheet", "Assistants' sheet"]
    assert lines == [
        *ahead,
        *cards,
        "Scent and colour",
        *sheets,
        "Labels",
        "Labels",
        "Write by hand on each label",
    ]


if __name__ == "__main__":
    PAGE.write_text(TABLE.sub("\n".join(rows()).replace("\\", r"\\"), PAGE.read_text(encoding="utf-8")), encoding="utf-8")
