"""The take-home sheet: one recipe at one home size, complete enough to make it alone, as a page and as a PDF."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.dates import plain_date
from builder.compose.document_kind import Composed
from builder.compose.dose.dose_words import view_choice
from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for, hazards_of_recipe
from builder.compose.formula.heat_words import heat_lines
from builder.compose.formula.ph_words import ph_words
from builder.compose.frames import frame, with_data
from builder.compose.label.label_words import ingredient_text, net_contents, variant_name
from builder.compose.lye.lye_words import home_lye
from builder.compose.machines.structured import how_to_data
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import HEAD_MARK, Look, mark
from builder.compose.recipe.ingredient_tables import COLUMN_NAMES, weighing_table
from builder.compose.recipe.portion_words import emergency_lines, fills
from builder.compose.recipe.wording import capacity, duration, listed, reading, sentence, within
from builder.compose.roster.allergens import allergens_of, allergens_open_in
from builder.compose.scopes import AtHome
from builder.compose.supplies.supply_words import home_cost
from builder.compose.teaching.lesson_flow import FlowSource, compose_flow
from builder.compose.teaching.mentions import home_amount
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.staff_words import days_later
from builder.compose.teaching.tool_words import tool_words
from builder.compose.views.take_home import ListedVariant, ScaleSet, TakeHomeView
from builder.model.dates.studio_class import StudioClass
from builder.model.hazard import Hazard
from builder.model.label.region import Region
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part, Where, Who
from builder.rules.part_recipe import recipe_about
from builder.words.say import say, say_count

MOST_LISTS = 6


def copies_of_take_home(_: Edition, plan: ClassPlan) -> Iterator[str]:
    """Say how many to print of the sheet of each recipe that has one."""
    for made in (made for made in plan.made if made.home):
        sizes = listed([home.size.written for home in made.home], "or")
        yield say_count(
            "Take-home sheet, {recipe}: {count}\u00a0copy ({sizes})",
            "Take-home sheet, {recipe}: {count}\u00a0copies ({sizes})",
            plan.students,
            recipe=within(made.batch.recipe.name),
            sizes=sizes,
        )


def home_parts(studio_class: StudioClass, recipe: str) -> tuple[Part, ...]:
    """Give the parts of the lesson that are done at home for one recipe."""
    parts = (part for part in studio_class.lesson.parts if part.where is not Where.CLASS_ONLY)
    return tuple(part for part in parts if recipe_about(part, studio_class.recipe_keys) == recipe)


def compose_take_home(edition: Edition, at: AtHome, here: Address) -> Composed:
    """Make the take-home sheet of one recipe and home size."""
    studio_class, home = at.plan.studio_class, at.home
    studio, sheet = edition.studio, home.sheet
    title = f"{sheet.recipe.name}, {home.size.written}"
    sources = [FlowSource(part, sheet, days_later(part)) for part in home_parts(studio_class, sheet.recipe.key)]
    writer = writer_of(edition, here, addresses.class_folder(studio_class.key), at_home=True)
    described = say("How to make {recipe} at home: {size}", recipe=sheet.recipe.name, size=home.size.written)
    view = TakeHomeView(
        frame=frame(edition, here, title, described),
        pdf=edition.pdf_of(here),
        class_title=studio_class.title,
        recipe=sheet.recipe.name,
        identity=say(sheet.product.identity),
        size=home.size.written,
        about=sheet.recipe.about,
        fills=fills(studio, sheet),
        scales=_scales(sheet),
        tools=tuple(tool_words(tool, partial(home_amount, studio, sheet)) for tool in sheet.recipe.tools),
        table=weighing_table(sheet),
        choices=tuple(view_choice(dose, with_drops=False) for dose in sheet.own.doses),
        lye=home_lye(sheet),
        heat=heat_lines(sheet),
        flow=compose_flow(studio, sources, writer, (sheet,)),
        time=_time([source.part for source in sources]),
        storage=sheet.recipe.storage,
        keeps=sheet.recipe.keeps,
        ph=ph_words(sheet, at_home=True),
        cost=_cost(studio, studio_class, sheet),
        directions=sheet.recipe.directions,
        label_lists=_label_lists(sheet, studio.labelling.region),
        label_open=_label_open(sheet),
        label_rest=len(sheet.own.variants) > MOST_LISTS,
        label_allergens=_label_allergens(sheet),
        label_note=say(studio.labelling.region.says("soap")) if sheet.is_true_soap else "",
        label_cautions=sheet.recipe.label_cautions,
        net_contents=net_contents(sheet, sheet.own, studio.region),
        allergens=allergens_of(studio, [sheet]),
        allergens_open=allergens_open_in(studio, [sheet]),
        free_from=listed(sheet.recipe.free_from),
        first_aid=_first_aid(studio, sheet),
        emergency=emergency_lines(studio.profile.emergency),
        printed=plain_date(edition.today, edition.locale),
        mark_html=mark(portrait_of(studio, sheet), HEAD_MARK, Look.TINTED),
    )
    return Composed(title, _with_instructions(edition, at, view, here))


def _with_instructions(edition: Edition, at: AtHome, view: TakeHomeView, here: Address) -> TakeHomeView:
    """Add for search engines what a page that is for everybody shows."""
    if here.is_paper or not at.plan.studio_class.sheets_are_public:
        return view
    return replace(view, frame=with_data(view.frame, how_to_data(edition, view, here)))


def _time(parts: list[Part]) -> str:
    """Say how long the work takes, and apart from it how long one waits."""
    waiting = sum(part.minutes for part in parts if part.who is Who.WAITING)
    working = sum(part.minutes for part in parts) - waiting
    if not waiting:
        return say("Work: about {time}.", time=duration(working))
    return say("Work: about {time}. Waiting: {waiting}.", time=duration(working), waiting=duration(waiting))


def _cost(studio: Studio, studio_class: StudioClass, batch: WorkedBatch) -> str:
    """Say what the batch costs where the studio asks for it, and never on a sheet that goes to the web site."""
    return home_cost(studio, batch) if studio.profile.costs_on_sheets and not studio_class.sheets_are_public else ""


def _first_aid(studio: Studio, batch: WorkedBatch) -> tuple[str, ...]:
    """Give what to do after an accident with lye, which a caustic recipe prints once more at its end, where it is found at a glance."""
    hazards = [hazard for hazard in hazards_of_recipe(studio, batch) if hazard == Hazard.CAUSTIC]
    return tuple(line for text in cautions_for(studio, hazards) for line in text.if_it_happens)


def _scales(batch: WorkedBatch) -> tuple[ScaleSet, ...]:
    found = []
    for column in batch.columns:
        scales = sorted({w.scale for w in column.weighed}, key=lambda scale: (-scale.division.grams, scale.name))
        words = tuple(f"{sentence(say(scale.name))}: {reading(scale)}, {capacity(scale)}" for scale in scales)
        found.append(ScaleSet(say(COLUMN_NAMES[column.unit]), words))
    return tuple(found)


def _label_lists(batch: WorkedBatch, region: Region) -> tuple[ListedVariant, ...]:
    """Give the list of each variant that is proven.

    Where there are many, that of the plainest, to which the student adds what was chosen.
    """
    variants = tuple(variant for variant in batch.own.variants if variant.ingredients.is_proven)
    if len(variants) > MOST_LISTS:
        variants = (min(variants, key=lambda variant: sum(option is not None for _, option in variant.chosen)),)
    return tuple(ListedVariant(sentence(variant_name(variant)), ingredient_text(variant.ingredients, region)) for variant in variants)


def _label_allergens(batch: WorkedBatch) -> str:
    """Name the fragrance allergens that scents without a statement are known to hold; empty where all is stated."""
    names = {name for variant in batch.own.variants for held in variant.ingredients.may_hold for name, _ in held.allergens}
    unstated = {name for variant in batch.own.variants for name in variant.ingredients.without_statement}
    if not unstated:
        return ""
    scents = listed(sorted(map(within, unstated)))
    who = say("Which fragrance allergens a label has to name, only the suppliers of {scents} can say.", scents=scents)
    if not names:
        return who
    held = listed(sorted(names))
    ask = say("Of such oils it is published that they can hold {allergens}: that is what to ask for, and no statement.", allergens=held)
    return f"{who} {ask}"


def _label_open(batch: WorkedBatch) -> str:
    """Say what is in a product whose list is not proven for every choice, by name alone; empty where it is."""
    if all(variant.ingredients.is_proven for variant in batch.own.variants):
        return ""
    names = {entry.plain for variant in batch.own.variants for entry in variant.ingredients.entries}
    names |= {name for variant in batch.own.variants for name in variant.ingredients.nameless}
    return listed(sorted((within(name) for name in names), key=str.casefold))
