"""The take-home sheet: one recipe at one home size, complete enough to make it alone, as a page and as a PDF."""

from collections.abc import Iterable
from dataclasses import replace
from functools import partial

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.dates import plain_date
from builder.compose.dates.length_words import length_words
from builder.compose.document_kind import Composed
from builder.compose.dose.dose_words import view_choice
from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for, hazards_of_recipe
from builder.compose.formula.heat_words import heat_bound
from builder.compose.formula.page_head import AT_HOME, IN_LARGE_PRINT
from builder.compose.formula.ph_words import ph_words
from builder.compose.frames import frame, with_data
from builder.compose.home.cooling import cooling_at_its_step
from builder.compose.home.first_weighed import lye_opened
from builder.compose.home.foot import foot_of_home
from builder.compose.home.home_table import home_table
from builder.compose.home.home_times import home_times
from builder.compose.home.joined import joined
from builder.compose.home.label_lists import MOST_LISTS, label_lists
from builder.compose.home.letters import letter_of, letters_of_others
from builder.compose.home.record import view_record
from builder.compose.home.size_words import size_words
from builder.compose.home.tools_drawn import view_tool
from builder.compose.home.under_one import under_one
from builder.compose.label.label_words import net_contents
from builder.compose.lye.lye_words import home_lye, home_purities
from builder.compose.machines.how_to import how_to_data
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import HEAD_MARK, Look, mark
from builder.compose.punctuation import decimals_spoken
from builder.compose.recipe.portion_words import fills
from builder.compose.recipe.wording import capacity, listed, reading, sentence, within
from builder.compose.roster.allergens import allergens_of, allergens_open_in
from builder.compose.scopes import AtHome
from builder.compose.supplies.supply_words import home_cost
from builder.compose.teaching.drawn import figure_html
from builder.compose.teaching.lesson_flow import FlowSource, calls_of, compose_flow, view_caution
from builder.compose.teaching.mentions import home_amount
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.staff_words import days_later
from builder.compose.teaching.tool_words import tool_words, tools_to_set_out
from builder.compose.views.caution import CautionView
from builder.compose.views.frame import Link
from builder.compose.views.take_home import FirstAid, ScaleSet, TakeHomeView, ToolView
from builder.model.dates.studio_class import StudioClass
from builder.model.document import Folder
from builder.model.hazard import Hazard
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.words.say import say

BENCH = "bench from above"  # The drawing of the bench before lye is opened.


def compose_take_home(edition: Edition, at: AtHome, here: Address) -> Composed:
    """Make the take-home sheet of one recipe and home size."""
    studio_class, home = at.plan.studio_class, at.home
    studio, batch = edition.studio, home.batch
    title = f"{batch.recipe.name}, {size_words(home.size)}"
    parts = tuple(one.part for one in home.parts)
    sources = [
        FlowSource(one.part, batch, days_later(one.part), letter=letter_of(studio_class, one.part), met=one.met) for one in home.parts
    ]
    writer = writer_of(edition, here, addresses.class_folder(studio_class.key), at_home=True)
    at_head = IN_LARGE_PRINT if here.is_large_print else AT_HOME
    is_set_in_pages = here.is_paper and not here.is_large_print  # In large print every part runs on wherever it comes to an end of a page.
    calls = calls_of(studio)
    foot, at_foot = foot_of_home(calls, with_lye=batch.grams.lye is not None)
    flow = joined(compose_flow(studio, sources, writer, (batch,), foot=foot, short_again=True, at_head=at_head))
    flow = lye_opened(cooling_at_its_step(flow, studio, parts, batch), studio, parts, batch)
    lists = label_lists(batch.own.variants, studio.labelling.region)
    described = say("How to make {recipe} at home: {size}", recipe=batch.recipe.name, size=size_words(home.size))
    view = TakeHomeView(
        frame=frame(edition, here, title, described),
        pdf=edition.pdf_of(here),
        large=edition.large_print_of(here),
        class_page=_class_page(studio_class, here),
        class_title=studio_class.title,
        recipe=batch.recipe.name,
        identity=say(batch.product.identity),
        size=size_words(home.size),
        about=batch.recipe.about,
        fills=fills(studio, batch),
        scales=_scales(batch),
        tools=_tools(studio, batch, flow.gear),
        table=home_table(studio, batch, parts, in_large_print=here.is_large_print),
        weighs_water=any(w.line.ingredient.kind is IngredientKind.WATER for w in batch.grams.weighed),
        choices=tuple(view_choice(dose, with_drops=False) for dose in batch.own.doses),
        lye=home_lye(batch),
        purities=home_purities(batch),
        heat=heat_bound(batch),
        flow=flow,
        letters_of_others=letters_of_others(studio, studio_class, batch.recipe.key),
        parts=under_one(flow.parts) if is_set_in_pages else flow.parts,
        runs_on=is_set_in_pages,
        times=home_times(parts, batch),
        danger=_danger(studio, batch),
        storage=batch.recipe.storage,
        keeps=length_words(batch.recipe.keeps),
        ph=ph_words(batch, at_home=True),
        cost=_cost(studio, studio_class, batch),
        directions=batch.recipe.directions,
        label_lists=lists,
        label_open=_label_open(batch),
        label_rest=studio.labelling.region.says("fragrance") if len(batch.own.variants) > MOST_LISTS and len(lists) == 1 else "",
        label_allergens=_label_allergens(batch),
        label_note=say(studio.labelling.region.says("soap")) if batch.is_true_soap else "",
        label_cautions=batch.recipe.label_cautions,
        net_contents=decimals_spoken(net_contents(batch, batch.own, studio.region)),
        allergens=allergens_of(studio, [batch]),
        allergens_open=allergens_open_in(studio, [batch]),
        free_from=listed([say(family) for family in batch.recipe.free_from]),
        first_aid=_first_aid(studio, batch),
        bench_html=figure_html(studio.drawings[BENCH]) if batch.grams.lye else "",
        calls=calls,
        at_foot=at_foot,
        record=view_record(batch),
        printed=plain_date(edition.today, edition.locale),
        mark_html=mark(portrait_of(studio, batch), HEAD_MARK, Look.TINTED),
    )
    return Composed(_with_instructions(edition, at, view, here))


def _tools(studio: Studio, batch: WorkedBatch, gear: Iterable[str]) -> tuple[ToolView, ...]:
    called = (tool_words(tool, partial(home_amount, studio, batch)) for tool in tools_to_set_out(batch.recipe.tools, gear))
    return tuple(view_tool(words, studio.tool_drawings.values()) for words in called)


def _class_page(studio_class: StudioClass, here: Address) -> Link | None:
    """Return the way back to the class from a page of the site."""
    if here.is_paper or here.folder is not Folder.SITE:
        return None
    return Link(here.link_to(addresses.class_page(studio_class.key)), studio_class.title)


def _with_instructions(edition: Edition, at: AtHome, view: TakeHomeView, here: Address) -> TakeHomeView:
    """Add for search engines what a page that is for everybody shows."""
    if here.is_paper or not at.plan.studio_class.sheets_are_public:
        return view
    return replace(view, frame=with_data(view.frame, how_to_data(edition, view, here)))


def _cost(studio: Studio, studio_class: StudioClass, batch: WorkedBatch) -> str:
    """Return in words what the batch costs where the studio asks for it, and never on a sheet that goes to the web site."""
    return home_cost(studio, batch) if studio.profile.costs_on_sheets and not studio_class.sheets_are_public else ""


def _danger(studio: Studio, batch: WorkedBatch) -> CautionView | None:
    """Return the gravest caution of all that a batch brings."""
    texts = cautions_for(studio, hazards_of_recipe(studio, batch))
    return view_caution(texts[0]) if texts else None


def _first_aid(studio: Studio, batch: WorkedBatch) -> tuple[FirstAid, ...]:
    """Return what to do after an accident with lye: one field for each way in which it harms; empty without lye."""
    hazards = [hazard for hazard in hazards_of_recipe(studio, batch) if hazard == Hazard.CAUSTIC]
    lines = [line.partition(": ") for text in cautions_for(studio, hazards) for line in text.if_it_happens]
    return tuple(FirstAid(where.rstrip(), sentence(what)) for where, _, what in lines if what)


def _scales(batch: WorkedBatch) -> tuple[ScaleSet, ...]:
    """Return each scale that is needed, the coarser first, with how it reads for each unit; those of one name together."""
    found: dict[str, dict[str, None]] = {}
    scales = {w.scale for column in batch.columns for w in column.weighed}
    for scale in sorted(scales, key=lambda scale: (-scale.division.grams, scale.name, scale.unit)):
        found.setdefault(scale.name, {})[f"{reading(scale)}, {capacity(scale)}"] = None
    return tuple(ScaleSet(sentence(say(name)), tuple(reads)) for name, reads in found.items())


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
    """Return in words what is in a product whose list is not proven for every choice, by name alone; empty where it is."""
    if all(variant.ingredients.is_proven for variant in batch.own.variants):
        return ""
    names = {entry.plain for variant in batch.own.variants for entry in variant.ingredients.entries}
    names |= {name for variant in batch.own.variants for name in variant.ingredients.nameless}
    return listed(sorted((within(name) for name in names), key=str.casefold))
