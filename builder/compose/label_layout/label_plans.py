"""The labels of each product of a class date on the sheet that is asked for, or on the first that lets everything stand."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from builder.compose.label.label_texts import LabelText, earlier_of, label_text
from builder.compose.label.package_words import package_contents
from builder.compose.label_front.designs import DESIGNS, USUAL, Design
from builder.compose.label_layout.composed import lay_out_composed
from builder.compose.label_layout.label_heights import height_rules, rules_of, smaller_rules
from builder.compose.label_layout.label_layout import LaidOut, lay_out
from builder.compose.label_layout.label_lines import Setter, hyphenating_setter_of, setter_of
from builder.compose.label_layout.label_sheets import (
    SheetUse,
    known_sheets,
    label_sits,
    sheet_is_known,
    tag_sheets,
    uses_to_try,
    wished,
)
from builder.compose.label_layout.rules import LabelRules
from builder.compose.label_layout.spare import spare_labels
from builder.compose.recipe.portion_words import container_name, written_name
from builder.compose.recipe.wording import shortest
from builder.model.label.label_fit import LabelFit, OverContainer, Start
from builder.model.label.type_height import LabelStatement
from builder.model.recipe.filling import Filling
from builder.model.recipe.quantity import Length
from builder.model.recipe.recipe import Recipe
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.seen_from import seen_from
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.jar import Jar
from builder.rules.untranslated import is_translated

NOT_MEASURED = "it is not measured, and no container of its capacity has one"


@dataclass(frozen=True)
class LabelPlan:
    """The labels of one kind of container: which text each jar gets, and how the texts are laid out (None where they do not fit)."""

    made: MadeProduct
    filling: Filling
    texts: tuple[LabelText, ...]
    laid_out: LaidOut | None
    jars: tuple[Jar, ...] = ()

    @property
    def name(self) -> str:
        """Name the product, with its container where that is not the recipe's own."""
        batch = self.made.batch
        return batch.recipe.name if self.filling is batch.own else f"{batch.recipe.name}, {self.filling.fill.container.text}"


def label_fits(studio: Studio, plans: Iterable[ClassPlan]) -> list[LabelFit]:
    """Return for each product of each class whether its labels fit, and where the first sheet of each date begins.

    Nothing is said of a class that asks for a sheet which nobody has described; that is a finding of its own.
    """
    fits = []
    for plan in (one for one in plans if sheet_is_known(studio, one)):
        begun = plan.date is None
        for planned in labels_planned(studio, plan):
            fit = _fit(studio, plan, planned)
            if not begun and plan.date and planned.laid_out:
                sheet, begun = planned.laid_out.sheet, True
                fit = replace(fit, starts=Start(plan.date.first_label, sheet.name, sheet.positions, plan.date.at("first label")))
            fits.append(fit)
    return fits


def labels_planned(studio: Studio, plan: ClassPlan) -> tuple[LabelPlan, ...]:
    """Return the labels of one date, planned once for all that ask for them."""
    return _planned(seen_from(studio, plan.studio_class), plan)


@remembered(128)
def _planned(seen: Studio, plan: ClassPlan) -> tuple[LabelPlan, ...]:
    return tuple(plan_labels(seen, plan))


def plan_labels(studio: Studio, plan: ClassPlan) -> Iterator[LabelPlan]:
    """Plan the labels of one date; a kind of container that is not filled has none, and so has a recipe that lacks a language of
    its region, and a studio whose region cannot be read, or has no heights of type."""
    if not studio.knows_type_heights:
        return
    wishes = wished(studio, plan)
    for made in plan.made:
        if not is_translated(made.batch.recipe, studio):
            continue
        for containers in made.containers:
            filling = containers.filling
            jars = (*containers.jars, *spare_labels(containers.jars, wishes.spare))
            texts = tuple(text_of(studio, plan, made.batch, jar) for jar in jars)
            if texts:
                designs = (design_of(studio, plan, made.batch.recipe, jar) for jar in jars)
                dressed = tuple(zip(texts, designs, strict=True))
                laid = lay_out_dressed(studio, plan, made.batch, filling, dressed, to_fill_in=wishes.to_colour)
                yield LabelPlan(made, filling, texts, laid, jars)


def lay_out_dressed(
    studio: Studio,
    plan: ClassPlan,
    batch: WorkedBatch,
    filling: Filling,
    dressed: Sequence[tuple[LabelText, Design]],
    *,
    to_fill_in: bool,
) -> LaidOut | None:
    """Lay out labels of one kind of container, each in its design; None where they do not fit in any way that its date allows.

    The first way is taken in which every front has its mark, else the first with a composed front, else the first in which all stands. What
    is known not to sit on the container, the last of the ways, is tried where nothing stands on anything else. Words are broken only where
    nothing is composed, or nothing stands, without.
    """
    *sitting, too_large = _ways(studio, plan, batch, filling)
    texts, setter = [text for text, _ in dressed], setter_of(studio.typefaces)
    setters = (setter, hyphenating_setter_of(setter.faces))
    for tried in (sitting, [too_large]):
        composed = (_composed(dressed, tried, one, to_fill_in=to_fill_in) for one in setters)
        each = [(use, rules) for way in tried for use, rules in way if use.back is None]
        packed = (lay_out(texts, use.sheet, use.count, rules, one) for one in setters for use, rules in each)
        if laid := next((one for one in chain(composed, packed) if one), None):
            return laid
    return None


def design_of(studio: Studio, plan: ClassPlan, recipe: Recipe, jar: Jar) -> Design:
    """Return the design of one label: what its guest has chosen, else that of the recipe, of the class, of the studio."""
    name = jar.design or recipe.label_design or wished(studio, plan).design
    return DESIGNS.get(name, USUAL)


Way = tuple[SheetUse, LabelRules]


def _composed(
    dressed: Sequence[tuple[LabelText, Design]], ways: Sequence[Sequence[Way]], setter: Setter, *, to_fill_in: bool
) -> LaidOut | None:
    for tried in ways:
        bare = None
        for use, rules in tried:
            laid = lay_out_composed(dressed, use, rules, setter, to_fill_in=to_fill_in)
            if laid and all(one.drawing.is_marked for label in laid.labels for one in label if one.drawing):
                return laid
            bare = bare or laid
        if bare:
            return bare
    return None


def _ways(studio: Studio, plan: ClassPlan, batch: WorkedBatch, filling: Filling) -> tuple[list[Way], ...]:
    """Return what is tried in turn: the best sheets, and on a small pack these with a smaller ingredient list; then the others."""
    best, *others = uses_to_try(studio, plan, filling.fill)
    rules = rules_of(studio, batch, filling)
    on_it = [use for use in best if use.sheet.hole is None and label_sits(studio, filling.fill, use.sheet, use.count)]
    smaller = [(use, one) for one in smaller_rules(studio, batch, filling) for use in on_it]
    return [*((use, rules) for use in best), *smaller], *([(use, rules) for use in one] for one in others)


def text_of(studio: Studio, plan: ClassPlan, batch: WorkedBatch, jar: Jar) -> LabelText:
    """Write the label of one container, or of a package of several."""
    earlier = earlier_of(plan, batch.product)
    if earlier and earlier.weighed:
        jar = replace(jar, filling=replace(jar.filling, cured=earlier.weighed))
    text = label_text(studio, plan, batch, jar)
    if jar.own_name:
        text = replace(text, name=jar.own_name, other_names=(), locales=(studio.speaks.locale,), names_somebody=True)
    if jar.units == 1:
        return text
    container, languages = written_name(studio, jar.filling.fill), studio.label_languages
    return replace(text, net=package_contents(batch, jar.filling, studio.region, jar.units, container, languages))


def _fit(studio: Studio, plan: ClassPlan, planned: LabelPlan) -> LabelFit:
    wishes, own = wished(studio, plan), plan.studio_class.labels
    batch, filling = planned.made.batch, planned.filling
    would_do: tuple[str, ...] = ()
    on_two: tuple[str, ...] = ()
    if planned.laid_out is None:
        setter, rules = setter_of(studio.typefaces), rules_of(studio, batch, filling)
        would_do, on_two = (
            tuple(sheet.name for sheet in known_sheets(studio) if lay_out(planned.texts, sheet, panels, rules, setter)) for panels in (1, 2)
        )
    heights = [
        f"{what} {shortest(max(rule.height.millimetres for rule in rows), 2)} mm"
        for what, rows in (
            ("text", height_rules(studio, batch, filling, LabelStatement.TEXT)),
            ("net contents", height_rules(studio, batch, filling, LabelStatement.NET_CONTENTS)),
        )
        if rows
    ]
    place = (own.place if own.sheet else studio.profile.labels.place) if wishes.sheet else batch.recipe.place
    return LabelFit(
        name=planned.name,
        recipe=batch.recipe.key,
        class_key=plan.studio_class.key,
        asked_for=wishes.sheet,
        fits=planned.laid_out is not None,
        # What a package has to say of its contents is too long for any design.
        is_composed=bool(filling.fill.units > 1 or (planned.laid_out and planned.laid_out.is_composed)),
        has_fields=not wishes.to_colour or not planned.laid_out or planned.laid_out.has_fields,
        on=planned.laid_out.sheet.name if planned.laid_out else "",
        would_do=would_do,
        on_two=on_two,
        least=", ".join(heights),
        place=place,
        over=_over_container(studio, plan, planned),
        with_little_room=_little_room(studio),
    )


def _little_room(studio: Studio) -> str:
    """Return in words what the region lets stand elsewhere than on the label; empty where nothing is known of it."""
    rule = studio.labelling.region.rules.get("with little room")
    return f"On a container that is too small {rule.says} ({rule.source.title}, {rule.at})." if rule else ""


def _over_container(studio: Studio, plan: ClassPlan, planned: LabelPlan) -> OverContainer | None:
    """Return in words how labels are larger than the container; None where they sit, or where that is not known."""
    wishes, fill, laid = wished(studio, plan), planned.filling.fill, planned.laid_out
    container = studio.container(fill.container)
    labels = laid.labels_each(to_colour=wishes.to_colour) if laid else 0
    if container is None or laid is None or label_sits(studio, fill, laid.sheet, labels) is not False:
        return None
    setter, rules, sheet = setter_of(studio.typefaces), rules_of(studio, planned.made.batch, planned.filling), laid.sheet
    sitting = [one for one in known_sheets(studio) if label_sits(studio, fill, one, labels)]
    would_do, tags = (
        tuple(one.name for one in sheets if lay_out(planned.texts, one, laid.count, rules, setter))
        for sheets in (sitting, tag_sheets(studio))
    )
    on_two = (one for one in known_sheets(studio) if label_sits(studio, fill, one, 2 + wishes.to_colour))
    fit_on_two = tuple(one.name for one in (*on_two, *tag_sheets(studio)) if lay_out(planned.texts, one, 2, rules, setter))
    return OverContainer(
        container=container_name(studio, fill),
        sheet=sheet.name,
        label=f"{_mm(sheet.width)} wide and {_mm(sheet.height)} high",
        labels=labels,
        places=", ".join(f"{what} {_mm(length)}" for what, length in container.outside.measured) or NOT_MEASURED,
        would_do=would_do,
        tags=tags,
        on_two=fit_on_two if laid.count == 1 else (),
    )


def _mm(length: Length) -> str:
    return f"{shortest(length.millimetres, 1)} mm"
