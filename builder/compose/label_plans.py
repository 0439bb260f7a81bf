"""The labels of each product of a class date on the sheet that is asked for, or on the first that lets everything stand."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate

from builder.compose.batch_codes import jars_of
from builder.compose.label_layout import LaidOut, Rules, lay_out
from builder.compose.label_lines import Setter
from builder.compose.label_stocks import known_stocks, label_sits, stocks_to_try, tag_stocks, wished
from builder.compose.label_texts import LabelText, label_text
from builder.compose.package_words import package_contents
from builder.compose.portion_words import container_name
from builder.compose.wording import shortest
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, Finish, MadeSheet
from builder.model.label_fit import LabelFit, OverContainer
from builder.model.panel import panel_of
from builder.model.quantity import Length
from builder.model.studio import Studio
from builder.model.type_height import HeightRule, Statement, rules_for

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
    """Plan the labels of one date; a kind of container that is not filled has none, and so has a studio whose region cannot be read."""
    if all(rule.region != studio.profile.region for rule in studio.type_heights):
        return
    setter = Setter(studio.typefaces)
    panels = wished(studio, sheet).panels
    for made in sheet.made:
        for number, (filled, _) in enumerate(made.fillings):
            pots = jars_of(sheet, made, number)
            finishes = made.finishes[number]
            firsts = accumulate((one.units for one in finishes), initial=0)
            texts = tuple(_text(studio, sheet, made, filled, one, pots[at]) for one, at in zip(finishes, firsts, strict=False))
            if texts:
                rules = rules_of(studio, filled)
                laid = (lay_out(texts, stock, panels, rules, setter) for stock in stocks_to_try(studio, sheet, filled))
                yield LabelPlan(made, filled, texts, next((one for one in laid if one), None))


def _text(studio: Studio, sheet: ClassSheet, made: MadeSheet, filled: BatchSheet, finish: Finish, pot: str) -> LabelText:
    """Write the label of one container, or of a package of several."""
    text = label_text(studio, sheet, made, filled, finish.variant, pot)
    if finish.units == 1:
        return text
    return replace(text, net=package_contents(filled, studio.profile.region, finish.units, container_name(studio, filled)))


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
    """Give the area of the principal display panel in mm2; a package shows at most the panels of all its units side by side."""
    container = studio.container(filled.recipe.fill.container)
    panel = panel_of(container, studio.constants) if container else None
    return panel.area * filled.recipe.fill.units if panel else UNKNOWN_PANEL


def height_rules(studio: Studio, filled: BatchSheet, statement: Statement) -> tuple[HeightRule, ...]:
    """Give the rows of the table of heights that hold for one statement."""
    contents = _contents(filled, studio.profile.region)
    return rules_for(studio.type_heights, studio.profile.region, statement, panel_area(studio, filled), contents)


def _contents(filled: BatchSheet, region: str) -> Fraction:
    """Give the contents of a container or package in grams, or in millilitres where they are declared by volume."""
    density, all_units = filled.recipe.density, filled.portions.fill * filled.recipe.fill.units
    if filled.product.by_volume(region) and density is not None:
        return all_units.grams / density.density.grams_per_millilitre
    return all_units.grams


def _points(rule: HeightRule, studio: Studio, face: str, text: str) -> float:
    """Give the least size in points, rounded up to a hundredth."""
    exact = studio.typefaces[face].size_for(text, float(rule.height.millimetres), rule.measured_on)
    return -(-exact * 100 // 1) / 100


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
    return LabelFit(
        name=plan.name,
        class_key=sheet.studio_class.key,
        asked_for=asked_for,
        fits=plan.laid_out is not None,
        would_do=would_do,
        on_two=on_two,
        least=", ".join(heights),
        place=place,
        over=_over_container(studio, sheet, plan),
    )


def _over_container(studio: Studio, sheet: ClassSheet, plan: LabelPlan) -> OverContainer | None:
    """Say how labels are larger than the container; None where they sit, or where that is not known."""
    wishes, filled = wished(studio, sheet), plan.filled
    container = studio.container(filled.recipe.fill.container)
    if container is None or plan.laid_out is None or label_sits(studio, filled, plan.laid_out.stock, wishes, wishes.panels) is not False:
        return None
    setter, rules, stock = Setter(studio.typefaces), rules_of(studio, filled), plan.laid_out.stock
    sitting = [one for one in known_stocks(studio) if label_sits(studio, filled, one, wishes, wishes.panels)]
    would_do, tags = (
        tuple(one.name for one in stocks if lay_out(plan.texts, one, wishes.panels, rules, setter))
        for stocks in (sitting, tag_stocks(studio))
    )
    return OverContainer(
        container=container_name(studio, filled),
        sheet=stock.name,
        label=f"{_mm(stock.width)} wide and {_mm(stock.height)} high",
        labels=wishes.panels + wishes.to_colour,
        places=", ".join(f"{what} {_mm(length)}" for what, length in container.outside.measured),
        would_do=would_do,
        tags=tags,
    )


def _mm(length: Length) -> str:
    return f"{shortest(length.millimetres, 1)} mm"
