"""What can be named in a file, as tables: kinds of product, containers, ingredients, sheets of labels, cautions, passages and the like."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import islice

from builder.finding_kinds import finding_kinds
from builder.list_names import ListName
from builder.model.drawing import Drawing
from builder.model.recipe.container import Container
from builder.model.recipe.quantity import Length
from builder.model.studio import Studio
from builder.model.teaching.lesson import Step, drawings_in, sentences_in
from builder.read.drawn_on import DrawnOn
from builder.reference.figures import value_of
from builder.reference.layouts import layout_rows, token_rows
from builder.reference.terms import terms
from builder.words.fold import fold
from builder.words.plain_number import plain_number

MOST_PLACES = 4  # So many steps that a drawing would fit are named.
_WORD = re.compile(r"[^\W_]+")
Rows = Iterable[tuple[str, ...]]


@dataclass(frozen=True)
class Listing:
    """A table: its headings and its rows, the name first."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Shown:
    """What lists are made of: what texts draw on, and the studio, where there is one."""

    drawn_on: DrawnOn
    studio: Studio | None = None


def list_of(what: ListName, shown: Shown, like: str = "") -> Listing:
    """Make a list; `like` keeps the rows with these words in them."""
    headings, rows = LISTINGS[what]
    words = fold(like).split()
    kept = (row for row in rows(shown) if all(word in fold(" ".join(row)) for word in words))
    return Listing(headings, tuple(kept))


def _kinds(shown: Shown) -> Iterator[tuple[str, ...]]:
    for name, kind in shown.drawn_on.library.products.items():
        yield name, kind.contact.value, "yes" if kind.made_with_lye else "no", kind.declared_by.value


def _containers(shown: Shown) -> Iterator[tuple[str, ...]]:
    for one in shown.drawn_on.library.containers.values():
        yield one.name, _holds(one), one.shape.value, f"{plain_number(one.fill_weight.grams, 4)} g" if one.fill_weight else ""


def _holds(one: Container) -> str:
    if one.inside:
        return f"{plain_number(one.inside.volume.millilitres, 4)} mL"
    return f"{plain_number(one.capacity.millilitres, 4)} mL" if one.capacity else "by weight"


def _ingredients(shown: Shown) -> Iterator[tuple[str, ...]]:
    cards = {card.name: card for card in shown.drawn_on.library.ingredients.values()}
    for name, card in sorted(cards.items(), key=lambda item: item[0].casefold()):
        yield name, card.kind, ", ".join(card.also_called)


def _oils(shown: Shown) -> Iterator[tuple[str, ...]]:
    yield from ((name,) for name in sorted(shown.drawn_on.known.oils.values()))


def _sheets(shown: Shown) -> Iterator[tuple[str, ...]]:
    for one in shown.drawn_on.library.label_sheets.values():
        size = f"{_length(one.width)} round" if one.is_round else f"{_length(one.width)} x {_length(one.height)}"
        yield one.name, one.paper, f"{one.columns} x {one.rows}", size


def _length(length: Length) -> str:
    return f"{plain_number(length.millimetres, 4)} mm"


def _cautions(shown: Shown) -> Iterator[tuple[str, ...]]:
    for key, one in sorted(shown.drawn_on.library.cautions.items()):
        yield f"{{caution: {key}}}", one.what


def _passages(shown: Shown) -> Iterator[tuple[str, ...]]:
    for key, blocks in sorted(shown.drawn_on.passages.items()):
        yield f"{{passage: {key}}}", next((" ".join(one.words.split()) for one in sentences_in(blocks)), "")


def _recipes(shown: Shown) -> Iterator[tuple[str, ...]]:
    for key, recipe in sorted(shown.studio.recipes.items()) if shown.studio else ():
        yield key, recipe.name, recipe.product


def _classes(shown: Shown) -> Iterator[tuple[str, ...]]:
    for key, a_class in sorted(shown.studio.classes.items()) if shown.studio else ():
        yield key, a_class.title, ", ".join(f"{date.on:%Y-%m-%d}" for date in a_class.dates)


def _findings(_: Shown) -> Iterator[tuple[str, ...]]:
    for kind in finding_kinds().values():
        yield kind.name, " or ".join(["stop"] * kind.stops + ["caution"] * kind.cautions), kind.means


def _drawings(shown: Shown) -> Iterator[tuple[str, ...]]:
    for drawing in shown.drawn_on.library.drawings.values():
        places = _fitting(drawing, shown.studio) if shown.studio else []
        more = f" and {len(places) - MOST_PLACES} more" if len(places) > MOST_PLACES else ""
        yield f"{{drawing: {drawing.name}}}", drawing.caption, ", ".join(places[:MOST_PLACES]) + more


def _fitting(drawing: Drawing, studio: Studio) -> list[str]:
    """Return the place of the first step that a drawing fits by its words, in each part of a lesson that does not show it yet."""
    found = []
    for part in (part for one in studio.classes.values() for part in one.lesson.parts):
        if any(hole.name.key == fold(drawing.name) for hole in drawings_in(part.blocks)):
            continue
        fitting = (step for step in part.steps if _fits(drawing, step))
        found += [f"{step.place.file}:{step.place.line}" for step in islice(fitting, 1)]
    return found


def _fits(drawing: Drawing, step: Step) -> bool:
    said = [frozenset(_WORD.findall(fold(sentence.words))) for sentence in step.sentences]
    return any(fits <= words for fits in drawing.fits for words in said)


def _terms(_: Shown) -> Iterator[tuple[str, ...]]:
    yield from ((term.name, ", ".join(term.also_called)) for term in terms())


def _figures(shown: Shown) -> Iterator[tuple[str, ...]]:
    for name, figure in sorted(shown.drawn_on.library.constants.items()):
        yield name, value_of(figure), figure.known.value


LISTINGS: Mapping[ListName, tuple[tuple[str, ...], Callable[[Shown], Rows]]] = {
    ListName.KINDS: (("kind of product", "goes", "lye", "contents by"), _kinds),
    ListName.CONTAINERS: (("container", "holds", "shape", "usually filled with"), _containers),
    ListName.INGREDIENTS: (("ingredient", "kind", "also called"), _ingredients),
    ListName.OILS: (("essential oil, for `oil:` of a card",), _oils),
    ListName.SHEETS: (("label sheet", "paper", "labels", "each"), _sheets),
    ListName.CAUTIONS: (("in a lesson", "what"), _cautions),
    ListName.PASSAGES: (("in a lesson", "begins"), _passages),
    ListName.DRAWINGS: (("in a lesson", "shows", "would fit at"), _drawings),
    ListName.RECIPES: (("recipe", "name", "kind"), _recipes),
    ListName.CLASSES: (("class", "title", "dates"), _classes),
    ListName.FINDINGS: (("finding", "is a", "means"), _findings),
    ListName.TERMS: (("word", "also called"), _terms),
    ListName.LAYOUTS: (("template or style", "blocks", "lays out, or takes"), lambda _: layout_rows()),
    ListName.TOKENS: (("token", "by day", "by night"), lambda _: token_rows()),
    ListName.FIGURES: (("figure", "value", "known"), _figures),
}
