"""The documents of a run, each made when somebody asks for it: where it lies, which class it is about, and how to make it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from builder.compose.assets import list_files
from builder.compose.document_kind import AnyKind
from builder.compose.edition import Edition
from builder.compose.publication import kinds_with_editions
from builder.model.document import CopiedFile, Document, Folder


@dataclass(frozen=True)
class Entry:
    """One document that can be made: its kind, its path below the output (`site/...`, `print/...`), and what it is about.

    `class_key`, `page_key` and `recipe_key` are empty where it is about no class, no page of text or no one recipe. `make` gives None where
    there is nothing to show.
    """

    kind: str
    path: str
    title: str
    class_key: str
    page_key: str
    make: Callable[[], Document | None]
    recipe_key: str = ""


@dataclass(frozen=True)
class OnDemand:
    """Every document of a run by its path below the output, in the order of the table of documents, and the files beside them."""

    entries: dict[str, Entry]
    files: dict[str, CopiedFile]


def documents_on_demand(edition: Edition, by_name: Edition) -> OnDemand:
    """List every document of a run without making it; the arguments are what `editions` gives."""
    kinds = kinds_with_editions(edition, by_name)
    entries = {entry.path: entry for kind, seen in kinds for entry in _entries(kind, seen)}
    placed = [Document(Folder(path.split("/")[0]), path, "") for path in entries]
    files = {f"{one.folder}/{one.path}": one for one in list_files(edition, placed)}
    return OnDemand(entries, files)


def _entries(kind: AnyKind, edition: Edition) -> Iterator[Entry]:
    for subject in kind.scope.all(edition):
        here, names = kind.place(subject), kind.scope.names(subject)
        yield Entry(
            kind=kind.name,
            path=f"{here.folder}/{here.path}",
            title=kind.scope.title(subject),
            class_key=names.get("class", ""),
            page_key=names.get("page", ""),
            make=partial(kind.make, edition, subject),
            recipe_key=names.get("recipe", ""),
        )
