"""The words of the trade and of this program, each told in a sentence or two, from `content/terms.yaml`."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from builder.library import CONTENT
from builder.read.text.text_files import TextFolder
from builder.read.yaml.placed_yaml import read_yaml_file
from builder.words.fold import fold


@dataclass(frozen=True)
class Term:
    """A word, what it means, and other words for the same; `on_sheets` explains a word of the trade in few words where it first stands."""

    name: str
    means: str
    also_called: tuple[str, ...]
    on_sheets: str = ""


@cache
def terms() -> tuple[Term, ...]:
    """Return all words in their order."""
    placed = read_yaml_file(TextFolder(CONTENT, [], "content/"), "terms.yaml")
    assert placed and isinstance(placed.data, dict)
    told: Mapping[str, Mapping[str, str]] = placed.data  # type: ignore[assignment]
    return tuple(Term(name, one["means"], tuple(one.get("also called", ())), one.get("on sheets", "")) for name, one in told.items())


def find_term(name: str) -> Term | None:
    """Find a word by its name, or by another word for it; None where there is none."""
    wanted = fold(name)
    return next((term for term in terms() if wanted in (term.name, *term.also_called)), None)
