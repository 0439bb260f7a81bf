"""What a label says in the words of its region: the ingredient list and the net contents.

Order comes from the ingredient list. Names: INCI names; in the United States with the English in brackets, as the ingredient dictionary has
it, since a Latin name alone is not English (21 CFR 701.2 and 701.3(c), from memory): Helianthus Annuus (Sunflower) Seed Oil. What the table
of English names does not know has the card's English name first. Colours stand under the name of the region's list.

Net contents: a figure is cut, never rounded up; ounces show two decimals at most (uniform labelling regulation 27.0641), grams three digits
(16 CFR 500.19(b)). In Canada two are enough below 100 (C.R.C. c. 417 ss. 25-27, read), and few then need a decimal sign, which English and
French write differently. From one pound or pint on the ounces are also divided into larger units (15 USC 1453(a)(3)); below 4 lb and 1 gal
the ounces in all come first (21 CFR 701.13(j)). Outside the United States the metric figure stands alone.

Decided: in Canada contents below 100 g or mL have two figures, and where a decimal sign is left both forms stand. Why: two are enough
(C.R.C. c. 417 ss. 25-27), and symbols of units are alike; which sign the French wants the text that was read does not say.

Decided: net contents are never left out, though a pack below 1/4 oz or 1/8 fl oz may do without on a display card or in a labelled outer
pack (21 CFR 1.24(c), from memory). Why: the builder sees neither card nor outer pack.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor, prod

from builder.compose.recipe.wording import NBSP, fluid_ounces, in_unit, sentence, shortest_digits, within
from builder.model.label.ingredient_list import Declared, IngredientList, Variant
from builder.model.label.region import Region
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.quantity import Density, Mass
from builder.model.recipe.recipe import left_out
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.fold import fold
from builder.words.listed import listed


@dataclass(frozen=True)
class _Larger:
    """The larger units that ounces are divided into, each with its ounces; below `alone_from` the ounces in all come first."""

    units: tuple[tuple[str, int], ...]
    alone_from: int


POUNDS = _Larger((("lb", 16),), 64)
PINTS = _Larger((("gal", 128), ("qt", 32), ("pt", 16)), 128)


def ingredient_text(list_of_it: IngredientList, region: Region) -> str:
    """Return the ingredient list of a label, in order, by the names that its region wants."""
    return ", ".join(_declared(entry, region) for entry in list_of_it.entries)


def variant_name(variant: Variant) -> str:
    """Return what was chosen, in words; empty where a recipe offers no choice."""
    return ", ".join(within(option) for option in chosen_in(variant))


def names_of(variants: Sequence[Variant]) -> str:
    """Return what was chosen in several variants, in words: `lavender oil or no scent, mica`; each in full where that says more."""
    by_choice = [tuple(dict.fromkeys(options)) for options in zip(*map(chosen_in, variants), strict=True)]
    if prod(map(len, by_choice)) == len(variants):
        return ", ".join(listed(map(within, options), "or") for options in by_choice)
    return "; ".join(map(variant_name, variants))


def chosen_in(variant: Variant) -> tuple[str, ...]:
    """Return what was chosen or left out, each by its name."""
    return tuple(option if option is not None else left_out(what) for what, option in variant.chosen)


def net_contents(batch: WorkedBatch, filling: Filling, region: Region, units: int = 1) -> str:
    """Return the net contents of one container, or of several together: by volume where that is the custom and the density is known.

    Soap made with lye and sold by weight loses water as it cures: it declares the cured weight where the studio has weighed the loss, and
    otherwise leaves room for the weight of the day on which it is labelled (empty).
    """
    fill, density = filling.fill.weight * units, batch.recipe.density
    if batch.product.by_volume(region) and density is not None:
        return _by_volume(fill, density.density, region)
    if batch.product.made_with_lye:
        if filling.cured is None:
            return ""
        fill = filling.cured * units
    metric = _in_figures(fill.grams, "g", "kg", region)
    return f"Net Wt {_both(in_unit(fill, 'oz'), 'oz', POUNDS, metric)}" if region.with_ounces else metric


def _declared(entry: Declared, region: Region) -> str:
    nano = f" ({region.says('nano')})" if entry.is_nano and region.says("nano") not in ("", "none") else ""
    return f"{_name(entry, region)}{nano}"


def _name(entry: Declared, region: Region) -> str:
    name = entry.inci
    if collective := region.collective(entry.declared_as):
        return collective
    if entry.declared_as is DeclaredAs.COLOUR:
        return entry.colour_name.get(region.says("colours"), name)
    if fold(name) == "aqua":
        return region.says("water") or name
    if region.english is None or entry.is_allergen:
        return name
    if english := region.english.of(name):
        return english
    return name if entry.plain.casefold() in name.casefold() else f"{sentence(entry.plain)} ({name})"


def _by_volume(fill: Mass, density: Density, region: Region) -> str:
    millilitres = fill.grams / density.grams_per_millilitre
    metric = _in_figures(millilitres, "mL", "L", region)
    return _both(fluid_ounces(millilitres), f"fl{NBSP}oz", PINTS, metric) if region.with_ounces else metric


def _both(value: Fraction, ounce: str, larger: _Larger, metric: str) -> str:
    """Write ounces and metric; from sixteen on the ounces are also divided into larger units."""
    ounces = rest = Fraction(floor(value * 100), 100)
    parts = []
    for unit, size in larger.units:
        whole, rest = divmod(rest, size)
        parts += [f"{whole}{NBSP}{unit}"] * bool(whole)
    parts += [f"{shortest_digits(rest, 2)}{NBSP}{ounce}"] * bool(rest or not parts)
    divided = " ".join(parts)
    if 16 <= ounces < larger.alone_from:
        return f"{shortest_digits(ounces, 2)}{NBSP}{ounce} ({divided}) {metric}"
    return f"{divided} ({metric})"


def _in_figures(value: Fraction, unit: str, thousand: str, region: Region) -> str:
    """Write metric contents with three figures, or those below 100 with as many as the region says."""
    figures = int(region.says("figures below 100") or 3) if value < 100 else 3
    if value >= 1000:
        value, unit = value / 1000, thousand
    places = max(figures - len(str(floor(value))), 0) if value >= 1 else 2
    return f"{_cut(value, places)}{NBSP}{unit}"


def _cut(value: Fraction, places: int) -> str:
    return shortest_digits(Fraction(floor(value * 10**places), 10**places), places)
