"""Which sheets the labels of a class are tried on: the one that is asked for, or those that sit on the container before others."""

from collections.abc import Sequence
from dataclasses import dataclass

from builder.model.label.label_sheet import LabelSheet
from builder.model.recipe.recipe import Fill
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.label_surface import sits
from builder.words.fold import fold


@dataclass(frozen=True)
class Wished:
    """What counts for a class: its own wishes before those of the studio."""

    sheet: str
    panels: int
    to_colour: bool
    tags: bool


def wished(studio: Studio, plan: ClassPlan) -> Wished:
    """Give what a class asks of its labels. Tags come with labels to colour in, unless that is said otherwise."""
    own, ours = plan.studio_class.labels, studio.profile.labels
    to_colour = own.to_colour if own.to_colour is not None else ours.to_colour
    tags = own.tags if own.tags is not None else ours.tags
    return Wished(own.sheet or ours.sheet or "", own.panels or ours.panels or 1, bool(to_colour), bool(to_colour) if tags is None else tags)


def stock_is_known(studio: Studio, plan: ClassPlan) -> bool:
    """Say whether the sheet that a class asks for has been described; it has where it asks for none."""
    name = wished(studio, plan).sheet
    return not name or fold(name) in studio.label_sheets


def stocks_to_try(studio: Studio, plan: ClassPlan, fill: Fill) -> tuple[Sequence[LabelSheet], Sequence[LabelSheet]]:
    """Give the sheet that is asked for, or those of the studio's paper in turn, and after them the second best.

    These are tags that hang on the container, then labels that are known not to sit on it.
    """
    wishes = wished(studio, plan)
    if wishes.sheet:
        stock = studio.label_sheets.get(fold(wishes.sheet))
        return [stock] if stock else [], []
    known = known_stocks(studio)
    too_large = [stock for stock in known if label_sits(studio, fill, stock, wishes, wishes.panels) is False]
    return [one for one in known if one not in too_large], [*(tag_stocks(studio) if too_large else ()), *too_large]


def label_sits(studio: Studio, fill: Fill, stock: LabelSheet, wishes: Wished, panels: int) -> bool | None:
    """Say whether the labels of one container sit on it, one to colour in among them; None where it is not measured, or for a package."""
    container = studio.container(fill.container)
    return sits(container, stock, panels + wishes.to_colour) if container and fill.units == 1 else None


def known_stocks(studio: Studio) -> list[LabelSheet]:
    """Give the rectangular sheets of the studio's paper, the studio's own first."""
    return [one for one in _of_our_paper(studio) if not one.is_round and one.hole is None]


def tag_stocks(studio: Studio) -> list[LabelSheet]:
    """Give the sheets of tags of the studio's paper, the studio's own first."""
    return [one for one in _of_our_paper(studio) if one.hole is not None]


def _of_our_paper(studio: Studio) -> list[LabelSheet]:
    stocks = [one for one in studio.label_sheets.values() if one.paper == studio.profile.paper]
    return sorted(stocks, key=lambda one: not one.place.file.startswith("shelf/"))
