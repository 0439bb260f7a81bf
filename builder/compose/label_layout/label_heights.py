"""How high the type of a label has to be, from the rows of its region and from what is known of its container.

Decided: the smaller ingredient list of small packs (21 CFR 701.3(p)) is taken only where the container has been measured and nothing else
sits on it, and is as little smaller as does. Why: larger type is lawful too, and the rule is known from fragments; warnings keep their
height.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from builder.compose.label_layout.rules import LabelRules
from builder.model.label.region import Region
from builder.model.label.type_height import HeightRule, LabelStatement, rules_for
from builder.model.recipe.figure import Figure
from builder.model.recipe.filling import Filling
from builder.model.recipe.recipe import Fill
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.rules.label.label_surface import surface_of
from builder.rules.label.panel import panel_of
from builder.units import millimetres_in

# The heights of the ingredient list of a small pack to other text that are tried: as little smaller as does.
SMALLER = (0.85, 0.7, 0.6)


def rules_of(studio: Studio, batch: WorkedBatch, filling: Filling) -> LabelRules:
    """Return what the law of the region asks of the labels of one kind of container."""
    constants = studio.constants
    area, small = panel_area(studio, filling.fill), _area(constants["largest panel whose net contents stand anywhere"])
    net = max(
        (_points(rule, studio, "bold", "Net 0") for rule in height_rules(studio, batch, filling, LabelStatement.NET_CONTENTS)), default=0
    )
    text = max(_points(rule, studio, "regular", "text") for rule in height_rules(studio, batch, filling, LabelStatement.TEXT))
    bottom = float(constants["part of the panel that holds net contents"].typical) / 100
    return LabelRules(
        text=text,
        net=max(net, text),
        net_part=bottom if "net contents stand" in studio.region.rules and area > small else None,
        clear_above=float(constants["clear space above and below net contents"].typical),
        clear_beside=float(constants["clear space beside net contents"].typical),
        inset=float(constants["edge of a label without text"].typical),
    )


def panel_area(studio: Studio, fill: Fill) -> Fraction:
    """Return the area of the principal display panel in mm2; a package shows at most the panels of all its units side by side."""
    container = studio.container(fill.container)
    panel = panel_of(container, studio.constants) if container else None
    if panel is None:
        return _area(studio.constants["panel of which nothing is known"])
    return panel.area * fill.units


def _area(square_inches: Figure) -> Fraction:
    """Return an area in mm2."""
    return square_inches.typical * millimetres_in("in") ** 2


def height_rules(studio: Studio, batch: WorkedBatch, filling: Filling, statement: LabelStatement) -> tuple[HeightRule, ...]:
    """Return the rows of the table of heights that hold for one statement."""
    contents = _contents(batch, filling.fill, studio.region)
    return rules_for(studio.type_heights, studio.profile.region, statement, panel_area(studio, filling.fill), contents)


def _contents(batch: WorkedBatch, fill: Fill, region: Region) -> Fraction:
    """Return the contents of a container or package in grams, or in millilitres where they are declared by volume."""
    density, all_units = batch.recipe.density, fill.weight * fill.units
    if batch.product.by_volume(region) and density is not None:
        return all_units.grams / density.density.grams_per_millilitre
    return all_units.grams


def _points(rule: HeightRule, studio: Studio, face: str, text: str) -> float:
    """Return the least size in points, rounded up to a hundredth."""
    exact = studio.typefaces[face].size_for(text, float(rule.height.millimetres), rule.measured_on)
    return -(-exact * 100 // 1) / 100


def smaller_rules(studio: Studio, batch: WorkedBatch, filling: Filling) -> Iterator[LabelRules]:
    """Yield rules with ever smaller type for the ingredient list, down to what the region allows on a pack with so little room."""
    container = studio.container(filling.fill.container)
    surface = surface_of(container) if container and filling.fill.units == 1 else None
    if surface is None:
        return
    rows = rules_for(studio.type_heights, studio.profile.region, LabelStatement.SMALL_PACK, surface, Fraction(0))
    if rows:
        ordinary = rules_of(studio, batch, filling)
        least = max(_points(row, studio, "regular", "text") for row in rows) / ordinary.text
        yield from (replace(ordinary, ingredients=part) for part in (*(part for part in SMALLER if part > least), least))
