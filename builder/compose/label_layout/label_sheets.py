"""Which sheets the labels of a class are tried on: the one that is asked for, or those that sit on the container before others."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.model.label.label_sheet import LabelSheet
from builder.model.recipe.container import Container
from builder.model.recipe.recipe import Fill
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.rules.label.label_places import bands_of, fronts_for, labels_for, lid_of
from builder.rules.label.label_surface import could_sit, sits
from builder.rules.label.usual_outside import with_usual_outside
from builder.words.fold import fold


@dataclass(frozen=True)
class Wished:
    """What counts for a class: its own wishes before those of the studio. `counts` are the numbers of labels that one text may take."""

    sheet: str
    counts: tuple[int, ...]
    to_colour: bool
    tags: bool
    design: str = ""
    spare: int = 0


def wished(studio: Studio, plan: ClassPlan) -> Wished:
    """Return what a class asks of its labels. Tags come with labels to colour in, unless that is said otherwise."""
    own, ours = plan.studio_class.labels, studio.profile.labels
    to_colour = own.to_colour if own.to_colour is not None else ours.to_colour
    tags = own.tags if own.tags is not None else ours.tags
    panels = own.panels or ours.panels
    return Wished(
        sheet=own.sheet or ours.sheet or "",
        counts=(panels,) if panels else (1, 2),
        to_colour=bool(to_colour),
        tags=bool(to_colour) if tags is None else tags,
        design=own.design or ours.design or "",
        spare=own.spare if own.spare is not None else ours.spare or 0,
    )


def sheet_is_known(studio: Studio, plan: ClassPlan) -> bool:
    """Tell whether the sheet that a class asks for has been described; it has where it asks for none."""
    name = wished(studio, plan).sheet
    return not name or fold(name) in studio.label_sheets


@dataclass(frozen=True)
class SheetUse:
    """What one text is tried on: so many labels of a sheet, or a front of one and a back of another."""

    sheet: LabelSheet
    count: int
    back: LabelSheet | None = None


def uses_to_try(studio: Studio, plan: ClassPlan, fill: Fill) -> tuple[list[SheetUse], ...]:
    """Return what is tried in turn: the sheet that is asked for, or labels of the container's own size and those of the studio's paper that
    sit on it; a front on the container with its back on a tag; tags; labels that sit on an unusually large container of its kind; and last
    those that sit on none.

    Each comes with how many labels of it a container has: as many as is asked for, or one before two.
    """
    wishes = wished(studio, plan)
    if wishes.sheet:
        sheet = studio.label_sheets.get(fold(wishes.sheet))
        asked_for = _counted([sheet] if sheet else [], wishes)
        sitting = [one for one in asked_for[1:] if label_sits(studio, fill, one.sheet, one.count) is not False]
        return ([*asked_for[:1], *sitting],)
    known = _counted(known_sheets(studio), wishes)
    found = studio.container(fill.container) if fill.units == 1 else None
    if found is None:
        return (known,)
    container = with_usual_outside(found, studio.constants)
    larger = [one for one in known if sits(container, one.sheet, one.count) is False]
    sitting = [*_own_size(studio, container, wishes), *(one for one in known if one not in larger)]
    with_tags = _front_with_tag(studio, container) if 2 in wishes.counts else ()
    too_large = [one for one in larger if label_sits(studio, fill, one.sheet, one.count) is False]
    on_large_ones = [one for one in larger if one not in too_large]
    return sitting, [*with_tags], _counted(tag_sheets(studio), wishes) if larger else [], on_large_ones, too_large


def _counted(sheets: Sequence[LabelSheet], wishes: Wished) -> list[SheetUse]:
    return [SheetUse(sheet, count) for sheet in sheets for count in wishes.counts]


def _own_size(studio: Studio, container: Container, wishes: Wished) -> Iterator[SheetUse]:
    """Yield labels of the container's own size; a lid bears the front where the back goes around the side."""
    paper = studio.profile.paper
    yield from (SheetUse(sheet, count) for sheet, count in labels_for(container, paper) if count in wishes.counts)
    lid = lid_of(container, paper)
    if lid is not None and 2 in wishes.counts:
        yield from (SheetUse(lid, 1, back) for back in bands_of(container, paper))


def _front_with_tag(studio: Studio, container: Container) -> Iterator[SheetUse]:
    """Yield fronts of the container's own size, each with its back on a tag."""
    yield from (SheetUse(front, 1, tag) for front in fronts_for(container, studio.profile.paper) for tag in tag_sheets(studio))


def label_sits(studio: Studio, fill: Fill, sheet: LabelSheet, labels: int) -> bool | None:
    """Tell whether so many labels of one container sit on it.

    None for a package, and where it is not measured but for labels that no container of its capacity has a place for.
    """
    container = studio.container(fill.container)
    if container is None or fill.units != 1:
        return None
    found = sits(container, sheet, labels)
    return False if found is None and not could_sit(container, sheet, labels, studio.constants) else found


def known_sheets(studio: Studio) -> list[LabelSheet]:
    """Return the rectangular sheets of the studio's paper, the studio's own first."""
    return [one for one in _of_our_paper(studio) if not one.is_round and one.hole is None]


def tag_sheets(studio: Studio) -> list[LabelSheet]:
    """Return the sheets of tags of the studio's paper, the studio's own first."""
    return [one for one in _of_our_paper(studio) if one.hole is not None]


def _of_our_paper(studio: Studio) -> list[LabelSheet]:
    sheets = [one for one in studio.label_sheets.values() if one.paper == studio.profile.paper]
    return sorted(sheets, key=lambda one: not one.place.file.startswith("shelf/"))
