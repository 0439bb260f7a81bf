"""Every message of pages, sheets and labels, as a translator's editor wants it: `content/languages/messages.pot`.

Taken from calls of `say` and its like in the code and in our templates, and from the texts that ship and that documents show. To write it
anew: `python -m tests.messages`.
"""

import ast
from collections.abc import Iterator, Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import IO, Any

from babel.messages.catalog import Catalog
from babel.messages.extract import extract
from babel.messages.pofile import read_po, write_po
from jinja2.ext import babel_extract

from builder.library import CONTENT, LAYOUTS
from builder.model.label.language import LABEL
from builder.read.teaching.passages import messages_of
from tests.studios import sound_studio

BUILDER = Path(__file__).parent.parent / "builder"
FILE = CONTENT / "languages" / "messages.pot"
HEAD = """# Every fixed text of pages, sheets and labels, by its English. A language is a copy of this file, named after it and
# ending in .po, with the translations filled in. Written by `python -m tests.messages`; no line is changed by hand.
msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\\n"
"Language: \\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

"""
# What a sum is worked out from, and of what, is named where it is worked out, and said where it is shown.
KEYWORDS = {"say": None, "message": None, "say_in": ((1, "c"), 2), "say_count": (1, 2), "messages": (1, 2), "Given": None, "Working": (2,)}
ON_LABELS = {"said": (2,), "on_label": None}


def calls_in(
    file: IO[bytes], keywords: Mapping[str, Any], *_: object, **__: object
) -> Iterator[tuple[int, str, tuple[str | None, ...], list[str]]]:
    """Find the calls of a module that say something, also those that stand inside of a text."""
    for line, name, texts in _calls(file.read()):
        if name in keywords:
            yield line, name, texts, []


@cache
def _calls(module: bytes) -> list[tuple[int, str, tuple[str | None, ...]]]:
    """Return all calls of a module that hold a text: its line, what is called, and the texts among what it is given."""
    found = []
    for node in ast.walk(ast.parse(module)):
        if isinstance(node, ast.Call):
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            texts = tuple(one.value if isinstance(one, ast.Constant) and isinstance(one.value, str) else None for one in node.args)
            if any(texts):
                found.append((node.lineno, name, texts))
    return found


def messages() -> Catalog:
    """Return all messages as the file holds them, which is current: `test_messages.py`."""
    with FILE.open("rb") as file:
        return read_po(file)


def _gathered() -> Catalog:
    """Gather all messages."""
    catalog = Catalog(charset="utf-8")
    for file, texts, comments, context in all_found():
        catalog.add(texts, None, [(file, 0)], auto_comments=comments, context=context)
    for file, text in _texts_that_ship():
        if text:
            catalog.add(text, None, [(f"content/{file}", 0)])
    return catalog


@cache
def all_found() -> list[tuple[str, Any, list[str], str | None]]:
    """Return every message, or its forms, with the file that says it, what its translator is told, and where it is said."""
    return [
        (file, texts, comments, own or context)
        for keywords, context in ((KEYWORDS, None), (ON_LABELS, LABEL))
        for file, found in _found(keywords)
        for _, texts, comments, own in found
    ]


def _found(keywords: dict[str, Any]) -> Iterator[tuple[str, Iterator[tuple[int, Any, list[str], str | None]]]]:
    """Yield each file with what it says by calls of these names."""
    # Babel asks for more of a method than of one that it has found by name.
    ways: tuple[tuple[Path, str, Any], ...] = ((BUILDER, "*.py", calls_in), (LAYOUTS, "*.html", babel_extract))
    for folder, ending, method in ways:
        # What stands on a terminal is English.
        for path in sorted(path for path in folder.rglob(ending) if path.parent.name != "terminal"):
            with path.open("rb") as file:
                yield path.relative_to(folder.parent).as_posix(), extract(method, file, keywords, ["Translators:"], {"silent": "false"})


def _texts_that_ship() -> Iterator[tuple[str, str]]:
    """Yield the texts of `content/` that documents show, each with its file. What laws and rules are called stays as it is."""
    library, findings = sound_studio()
    assert findings == []
    for caution in library.cautions.values():
        file = f"cautions/{caution.key}.yaml"
        yield from (
            (file, text)
            for text in (
                caution.name,
                caution.what,
                *caution.avoid,
                *caution.gear,
                *caution.if_it_happens,
                *filter(None, [caution.in_brief, caution.again]),
            )
        )
    for drawing in library.drawings.values():
        yield from (("drawings.yaml", text) for text in (drawing.caption, drawing.alt))
    yield from (("tools.yaml", drawing.names) for drawing in library.tool_drawings.values())
    for rule in library.supervision.values():
        yield from (("supervision.yaml", text) for text in (rule.key, rule.ahead, *rule.wear, *rule.watchers_wear, *rule.kit))
    for advice in library.format_advice.values():
        yield from (("format_advice.yaml", text) for text in (advice.key, advice.because))
    yield from (("products.yaml", product.identity) for product in library.products.values())
    yield from (("regions.yaml", region.says("soap")) for region in library.regions.values())
    yield from (("containers.yaml", container.name) for container in library.containers.values())
    cards = {card.name: card for card in library.ingredients.values() if card.place.ships}.values()
    yield from (("ingredients", str(card.name)) for card in cards)
    # A limit without a number leaves nothing to be told of.
    limits = [one for one in library.limits if one.place.file.endswith("scent_limits.csv") or one.most is not None]
    yield from ((one.place.file.removeprefix("content/"), text) for one in limits for text in (one.ingredient, one.product_type))
    for path in sorted((CONTENT / "passages").glob("*.md")):
        yield from ((f"passages/{path.name}", line) for line in messages_of(path.read_text(encoding="utf-8")))
    families = {family for card in cards for family in card.allergens}
    yield from (("ingredients", family) for family in sorted(families))


def as_text() -> str:
    """Write all messages as one file; none is a format of the percent sign, which an editor would check."""
    file, gathered = BytesIO(), _gathered()
    for message in gathered:
        message.flags.discard("python-format")
    write_po(file, gathered, width=0, omit_header=True, sort_by_file=True, include_lineno=False)
    return HEAD + file.getvalue().decode("utf-8")


if __name__ == "__main__":
    FILE.write_text(as_text(), encoding="utf-8")
