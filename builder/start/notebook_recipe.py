"""The lines of a notebook, each with the card that is meant, become the text of a recipe file; what no notebook says is usual for the kind.

Decided: percentages with lye among them are written as weights for 1 kg of oils, which are as many tens of grams. Why: a lye in percent can
only be kept as it stands beside weights.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Product
from builder.read.notebook.amounts import PERCENT
from builder.read.notebook.notebook import Entry, Notebook
from builder.read.text.file_names import plain_name
from builder.start.files import Files, Workshop
from builder.start.marks import scalar
from builder.start.starters import RECIPE, text_of
from builder.words.fold import fold
from builder.words.plain_number import plain_number
from builder.words.within import within

_PLAIN_WATER = "water"
# What a recipe has from its starter: the rest is the notebook's, or about what is in the starter alone.
_USUAL = ("fills", "density", "tools", "keeps", "storage", "directions", "label cautions")
_OF_ONE_KILOGRAM = 10
# What goes in when all else is mixed, and no longer hot: common practice, no source.
_AT_LAST = (
    *(IngredientKind.PRESERVATIVE, IngredientKind.FRAGRANCE, IngredientKind.ESSENTIAL_OIL),
    *(IngredientKind.COLOURANT, IngredientKind.ANTIOXIDANT, IngredientKind.FLAVOUR),
)


@dataclass(frozen=True)
class MeantLine:
    """One line of a notebook with the card of the ingredient that it means."""

    entry: Entry
    card: Ingredient


@dataclass(frozen=True)
class NotebookRecipe:
    """What becomes of a notebook: its lines by what they are to a recipe."""

    product: Product
    notebook: Notebook
    alkalis: tuple[MeantLine, ...]
    waters: tuple[MeantLine, ...]
    others: tuple[MeantLine, ...]

    @property
    def in_percent(self) -> bool:
        """Tell whether the file has percentages: those of a notebook without a weight of lye."""
        return self.notebook.in_percent and not self.alkalis

    @property
    def problems(self) -> tuple[str, ...]:
        """Return what no file can be written for."""
        return tuple(self._problems())

    def _problems(self) -> Iterator[str]:
        if self.alkalis and not self.waters:
            yield 'lye without water: add a line "water" with what the lye is dissolved in, as it stands in your notebook'
        seen: dict[tuple[str, str], int] = {}
        for line in (*self.others, *self.alkalis):
            key = (line.entry.heading, line.card.key)
            if key in seen:
                yield f"lines {seen[key]} and {line.entry.line}: {line.card.name} stands twice: make one line of the two"
            seen.setdefault(key, line.entry.line)
        if not self.others:
            yield "nothing but lye and water stands in the table"


def sorted_out(lines: Sequence[MeantLine], notebook: Notebook, product: Product) -> NotebookRecipe:
    """Tell the lye and its water from what else stands in a notebook."""

    def is_alkali(line: MeantLine) -> bool:
        return product.made_with_lye and line.card.counts_as is CountsAs.ALKALI

    def is_water(line: MeantLine) -> bool:
        return product.made_with_lye and fold(line.card.name) == _PLAIN_WATER

    rest = tuple(line for line in lines if not is_alkali(line) and not is_water(line))
    return NotebookRecipe(product, notebook, tuple(filter(is_alkali, lines)), tuple(filter(is_water, lines)), rest)


def usual_superfat(product: Product) -> str:
    """Return the superfat with which a soap of this kind begins here, as the starter writes it."""
    found = re.search(r"^  superfat: (\S+ %)", text_of(plain_name(product.name), RECIPE), re.MULTILINE)
    assert found is not None
    return found[1]


def notebook_file(name: str, recipe: NotebookRecipe, shop: Workshop, file: str, code: str = "") -> Files:
    """Return the recipe file: the lines of the notebook, then what is usual for the kind."""
    blocks = _blocks(shop.filled(text_of(plain_name(recipe.product.name), RECIPE), {"name": scalar(name)}))
    usual = "".join(_own_cautions(blocks[key]) if key == "label cautions" else blocks[key] for key in _USUAL if key in blocks)
    parts = [
        f"# The lines of {' '.join(file.split())}, as they stand there.",
        f"name: {scalar(name)}",
        f"product: {recipe.product.name}",
        *([f"code: {code}"] if code else []),
        f"amounts: {_amounts_as(recipe)}",
        "phases:",
        *_phases(recipe),
        *(_lye(recipe, blocks) if recipe.product.made_with_lye else ()),
        "# From here on, what is usual for this kind of product: put in your own.",
    ]
    return {f"recipes/{plain_name(name)}.yaml": "\n".join(parts) + "\n" + usual}


def _amounts_as(recipe: NotebookRecipe) -> str:
    if not recipe.in_percent:
        return "weights"
    return "percent of oils" if recipe.product.made_with_lye else "percent of total"


def _phases(recipe: NotebookRecipe) -> Iterator[str]:
    phases: dict[str, list[MeantLine]] = {}
    for line in recipe.others:
        phases.setdefault(line.entry.heading or _phase_of(line, recipe), []).append(line)
    for name, lines in phases.items():
        yield f"  - name: {scalar(name)}"
        yield "    ingredients:"
        yield from (f"      {scalar(within(line.card.name))}: {_amount(line, recipe)}" for line in lines)


def _phase_of(line: MeantLine, recipe: NotebookRecipe) -> str:
    if not recipe.product.made_with_lye:
        return "to finish" if line.card.kind in _AT_LAST and not _all_at_last(recipe) else "all of it"
    return "oils" if line.card.counts_as.is_oil else "additions"


def _all_at_last(recipe: NotebookRecipe) -> bool:
    return all(line.card.kind in _AT_LAST for line in recipe.others)


def _amount(line: MeantLine, recipe: NotebookRecipe) -> str:
    amount = line.entry.amount
    if amount.unit == PERCENT and not recipe.in_percent:
        return f"{plain_number(amount.value * _OF_ONE_KILOGRAM)} g"
    return amount.text


def _lye(recipe: NotebookRecipe, blocks: Mapping[str, str]) -> Iterator[str]:
    if not recipe.alkalis:
        yield from _lye_without_weight(recipe, blocks)
        return
    yield "lye:"
    if len(recipe.alkalis) == 1:
        yield f"  alkali: {within(recipe.alkalis[0].card.name)}"
        yield f"  weigh: {_amount(recipe.alkalis[0], recipe)}             # as it stands in the notebook; the superfat is the answer"
    else:
        weighed = ", ".join(f"{within(line.card.name)}: {_amount(line, recipe)}" for line in recipe.alkalis)
        yield f"  weigh: {{{weighed}}}             # as they stand in the notebook; the superfat is the answer"
    yield f"  water: {_water(recipe)}"


def _lye_without_weight(recipe: NotebookRecipe, blocks: Mapping[str, str]) -> Iterator[str]:
    for line in blocks["lye"].rstrip("\n").split("\n"):
        key = line.strip().partition(":")[0]
        if key == "superfat" and recipe.notebook.superfat is not None:
            yield f"  superfat: {plain_number(recipe.notebook.superfat)} %"
        elif key == "water" and recipe.waters:
            yield f"  water: {f'{{percent of oils: {_water(recipe)}}}' if recipe.in_percent else _water(recipe)}"
        else:
            yield line


def _water(recipe: NotebookRecipe) -> str:
    if len(recipe.waters) == 1:
        return _amount(recipe.waters[0], recipe)
    whole: Fraction = sum((line.entry.amount.value for line in recipe.waters), Fraction(0))
    if recipe.notebook.in_percent:
        return f"{plain_number(whole)} %" if recipe.in_percent else f"{plain_number(whole * _OF_ONE_KILOGRAM)} g"
    return f"{plain_number(whole)} g"


def _blocks(text: str) -> dict[str, str]:
    """Part a recipe file by its keys, without comments that stand in lines of their own."""
    found: dict[str, str] = {}
    key = ""
    for line in text.splitlines(keepends=True):
        if line.startswith("#"):
            continue
        if line[:1].isalpha():
            key = line.partition(":")[0]
        found[key] = found.get(key, "") + line
    return found


def _own_cautions(block: str) -> str:
    """Leave out what is in the starter's recipe: what is in this one the studio has to say."""
    head, *items = block.splitlines()
    kept = [re.sub(r"\s*\bContains\b[^.]*\.", "", item) for item in items]
    said = [item for item in kept if item.strip(" -")]
    return "\n".join([head, *said]) + "\n" if said else "label cautions: []\n"
