"""The labels of each product of a class date on the sheet that is asked for, or on the first that lets everything stand."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from builder.compose.batch_codes import jars_of
from builder.compose.label_layout import LaidOut, Rules, lay_out
from builder.compose.label_lines import Setter
from builder.compose.label_texts import LabelText, label_text
from builder.compose.wording import shortest
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.label_fit import LabelFit
from builder.model.label_stock import LabelStock
from builder.model.panel import panel_of
from builder.model.place import fold
from builder.model.studio import Studio
from builder.model.type_height import HeightRule, Statement, rules_for
from builder.model.untranslated import is_translated

# A panel of which nothing is known: 25 square inches, at which the second of the classes of heights ends.
UNKNOWN_PANEL = Fraction(25) * Fraction("25.4") ** 2
SMALL_PANEL = Fraction(5) * Fraction("25.4") ** 2


@dataclass(frozen=True)
class LabelPlan:
    """The labels of one kind of container: which text each jar gets, and how the texts are laid out (None where they do not fit)."""

    made: MadeSheet
    filled: BatchSheet
    texts: tuple[LabelText, ...]
    laid_out: LaidOut | None

    @property
    def name(self) -> str:
        """Name the product, with its container where that is not the recipe's own."""
        recipe = self.filled.recipe
        return recipe.name if self.filled is self.made.batch else f"{recipe.name}, {recipe.fill.container.text}"

    @property
    def key(self) -> str:
        """Name it for a file."""
        recipe = self.filled.recipe
        return recipe.key if self.filled is self.made.batch else f"{recipe.key} {recipe.fill.container.text}"


def label_fits(studio: Studio, sheets: Iterable[ClassSheet]) -> list[LabelFit]:
    """Say for each product of each class whether its labels fit."""
    return [_fit(studio, sheet, plan) for sheet in sheets for plan in plan_labels(studio, sheet)]


def plan_labels(studio: Studio, sheet: ClassSheet) -> Iterator[LabelPlan]:
    """Plan the labels of one date; a kind of container that is not filled has none, and so has a recipe that lacks a language of
    its region, and a studio whose region cannot be read."""
    if all(rule.region != studio.profile.region for rule in studio.type_heights):
        return
    setter = Setter(studio.typefaces)
    panels = wished(studio, sheet).panels
    for made in sheet.made:
        if not is_translated(made.batch.recipe, studio):
            continue
        for number, (filled, _) in enumerate(made.fillings):
            pots = jars_of(sheet, made, number)
            variants = filled.variants
            texts = tuple(label_text(studio, sheet, made, filled, variants[at % len(variants)], pot) for at, pot in enumerate(pots))
            if texts:
                rules = rules_of(studio, filled)
                laid = (lay_out(texts, stock, panels, rules, setter) for stock in _stocks(studio, sheet))
                yield LabelPlan(made, filled, texts, next((one for one in laid if one), None))


@dataclass(frozen=True)
class Wished:
    """What counts for a class: its own wishes before those of the studio."""

    sheet: str
    panels: int
    to_colour: bool


def wished(studio: Studio, sheet: ClassSheet) -> Wished:
    """Give what a class asks of its labels."""
    own, ours = sheet.studio_class.labels, studio.profile.labels
    return Wished(own.sheet or ours.sheet or "", own.panels or ours.panels or 1, bool(_first(own.to_colour, ours.to_colour)))


def rules_of(studio: Studio, filled: BatchSheet) -> Rules:
    """Give what the law of the region asks of the labels of one kind of container."""
    constants = studio.constants
    area = panel_area(studio, filled)
    net = max((_points(rule, studio, "bold", "Net 0") for rule in height_rules(studio, filled, Statement.NET_CONTENTS)), default=0)
    text = max(_points(rule, studio, "regular", "text") for rule in height_rules(studio, filled, Statement.TEXT))
    bottom = float(constants["part of the panel that holds net contents"].typical) / 100
    return Rules(
        text=text,
        net=max(net, text),
        net_part=bottom if studio.profile.region == "US" and area > SMALL_PANEL else None,
        clear_above=float(constants["clear space above and below net contents"].typical),
        clear_beside=float(constants["clear space beside net contents"].typical),
        inset=float(constants["edge of a label without text"].typical),
    )


def panel_area(studio: Studio, filled: BatchSheet) -> Fraction:
    """Give the area of the principal display panel in mm2."""
    container = studio.container(filled.recipe.fill.container)
    panel = panel_of(container, studio.constants) if container else None
    return panel.area if panel else UNKNOWN_PANEL


def height_rules(studio: Studio, filled: BatchSheet, statement: Statement) -> tuple[HeightRule, ...]:
    """Give the rows of the table of heights that hold for one statement."""
    contents = _contents(filled, studio.profile.region)
    return rules_for(studio.type_heights, studio.profile.region, statement, panel_area(studio, filled), contents)


def _contents(filled: BatchSheet, region: str) -> Fraction:
    """Give the contents in grams, or in millilitres where they are declared by volume."""
    density = filled.recipe.density
    if filled.product.by_volume(region) and density is not None:
        return filled.portions.fill.grams / density.density.grams_per_millilitre
    return filled.portions.fill.grams


def _points(rule: HeightRule, studio: Studio, face: str, text: str) -> float:
    """Give the least size in points, rounded up to a hundredth."""
    exact = studio.typefaces[face].size_for(text, float(rule.height.millimetres), rule.measured_on)
    return -(-exact * 100 // 1) / 100


def _stocks(studio: Studio, sheet: ClassSheet) -> list[LabelStock]:
    """Give the sheet that is asked for, or those of the studio's paper that are tried in turn."""
    asked_for = wished(studio, sheet).sheet
    if asked_for:
        stock = studio.label_stocks.get(fold(asked_for))
        return [stock] if stock else []
    return known_stocks(studio)


def known_stocks(studio: Studio) -> list[LabelStock]:
    """Give the rectangular sheets of the studio's paper, the studio's own first."""
    stocks = [one for one in studio.label_stocks.values() if one.paper == studio.profile.paper and not one.is_round and one.hole is None]
    return sorted(stocks, key=lambda one: not one.place.file.startswith("shelf/"))


def _fit(studio: Studio, sheet: ClassSheet, plan: LabelPlan) -> LabelFit:
    asked_for, own = wished(studio, sheet).sheet, sheet.studio_class.labels
    recipe = plan.filled.recipe
    would_do: tuple[str, ...] = ()
    on_two: tuple[str, ...] = ()
    if plan.laid_out is None:
        setter, rules = Setter(studio.typefaces), rules_of(studio, plan.filled)
        would_do, on_two = (
            tuple(stock.name for stock in known_stocks(studio) if lay_out(plan.texts, stock, panels, rules, setter)) for panels in (1, 2)
        )
    heights = [
        f"{what} {shortest(max(rule.height.millimetres for rule in rows), 2)} mm"
        for what, rows in (
            ("text", height_rules(studio, plan.filled, Statement.TEXT)),
            ("net contents", height_rules(studio, plan.filled, Statement.NET_CONTENTS)),
        )
        if rows
    ]
    place = (own.place if own.sheet else studio.profile.labels.place) if asked_for else recipe.place
    return LabelFit(plan.name, sheet.studio_class.key, asked_for, plan.laid_out is not None, would_do, on_two, ", ".join(heights), place)


def _first(*values: bool | None) -> bool | None:
    return next((value for value in values if value is not None), None)
