"""Bench cards and step sheets, to be read at arm's length with wet hands.

Each group gets a card with its share, two to a page where they fit; groups that get the same share get one card, of which copies are
printed. The steps are the same for every group, so that they are a sheet of their own, to be printed once for each group. Both show only
what students do.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.documents.card_copies import SharedCard, heading, on_the_check_list, on_the_page, people, shared, two_to_a_page
from builder.compose.dose.dose_words import view_choices
from builder.compose.edition import Edition
from builder.compose.formula.hazards import cautions_for, hazards_of_choices, hazards_of_recipe
from builder.compose.frames import frame
from builder.compose.recipe.ingredient_tables import one_at_a_time
from builder.compose.recipe.portion_words import container_name, containers_of, emergency_lines, left_over
from builder.compose.recipe.wording import grams, listed, sentence, weighed
from builder.compose.supplies.supply_words import strokes_and_weight
from builder.compose.teaching.class_plans import flow_source, when
from builder.compose.teaching.lesson_flow import Foot, compose_flow
from builder.compose.teaching.pieces import writer_of
from builder.compose.teaching.supervision_words import in_groups
from builder.compose.teaching.weighing_words import at_the_bench, solution_at_the_bench
from builder.compose.views.bench_cards import BenchAmount, BenchCard, BenchCardsView, BenchPhase, BenchProduct, BenchStepsView, CardPage
from builder.model.dates.studio_class import BatchFor, Format
from builder.model.recipe.column import Weighed
from builder.model.recipe.filling import Filling
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.caution import Signal
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.pot_for import PotFor
from builder.model.teaching.weighing_plan import FoundAs, WeighingPlan
from builder.words.say import message, say, say_count

# The phase under which a solution stands that staff make.
LYE = message("lye")
WHOSE_FOR_ALL = message("One batch is made for all. You weigh this part of it, once, for everybody. You fill your own.")
WHOSE = {
    BatchFor.CLASS: message("One batch is made for all. You fill your own."),
    BatchFor.GROUP: message("One batch for your group."),
    BatchFor.STUDENT: message("One batch for each of you."),
}


def _has_benches(plan: ClassPlan) -> bool:
    """Tell whether anybody works at a bench: not where nobody comes, nor in a demonstration."""
    return bool(plan.groups) and plan.format is not Format.DEMO


def copies_of_cards(edition: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how often to print which card."""
    if _has_benches(plan):
        cards = _cards(edition.studio, plan)
        copies = tuple(number for number, _ in two_to_a_page(cards))
        yield ToPrint(on_the_check_list(cards, in_groups=in_groups(plan)), say("Bench cards"), copies, apart=True)


def copies_of_steps(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how often to print the steps."""
    if _has_benches(plan):
        count = _copies_of_steps(plan)
        line = say_count("Steps at the bench: {count}\u00a0copy", "Steps at the bench: {count}\u00a0copies", count)
        yield ToPrint(line, say("Steps at the bench"), (count,))


def _copies_of_steps(plan: ClassPlan) -> int:
    """Return how many are printed: one for each group, one between two neighbours who work alone; with lye nobody reads over a shoulder."""
    if in_groups(plan) or any(made.batch.product.made_with_lye for made in plan.made):
        return plan.groups
    return -(-plan.groups // 2)


def compose_bench_cards(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the bench cards of one date."""
    if not _has_benches(plan):
        return None
    title = say("Bench cards: {class_title}", class_title=plan.studio_class.title)
    pages = tuple(
        CardPage(on_the_page(copies), tuple(_view_card(plan, card) for card in cards))
        for copies, cards in two_to_a_page(_cards(edition.studio, plan))
    )
    view = BenchCardsView(frame(edition, here, title, title), title, when(edition, plan), _numbers(edition), pages)
    return Composed(view)


def _view_card(plan: ClassPlan, card: SharedCard) -> BenchCard:
    if _to_tick(card.products):
        told = say("Tick what is weighed; on the line, who weighed it.")
    else:
        told = say("One lies between two places.") if card.between_two and len(card.groups) > 1 else ""
    return BenchCard(heading(card, plan.groups, in_groups=in_groups(plan)), people(card), told, card.products)


def compose_bench_steps(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the step sheet of one date."""
    if not _has_benches(plan):
        return None
    title = say("Steps at the bench: {class_title}", class_title=plan.studio_class.title)
    whole = [flow_source(plan, timed) for timed in plan.timeline]
    sources = [one for one in whole if one.part.by_hand]
    writer = writer_of(edition, here, addresses.class_folder(plan.studio_class.key))
    flow = compose_flow(edition.studio, sources, writer, short_again=True, foot=Foot.DANGERS, whole=whole)
    count = _copies_of_steps(plan)
    if count == plan.groups:
        copies = say_count(
            "The same for every group: print {count}\u00a0copy.", "The same for every group: print {count}\u00a0copies.", count
        )
    else:
        copies = say_count(
            "One lies between two places: print {count}\u00a0copy.", "One lies between two places: print {count}\u00a0copies.", count
        )
    return Composed(BenchStepsView(frame(edition, here, title, title), title, when(edition, plan), copies, flow))


def _cards(studio: Studio, plan: ClassPlan) -> tuple[SharedCard, ...]:
    """Return the cards, one for all the groups to which it says the same; the last group may be smaller, and takes less of its batch."""
    sizes = [plan.studio_class.group_size if in_groups(plan) else 1] * (plan.groups - 1) + [plan.last_group]
    cards = [
        SharedCard((number,), size, tuple(_product(studio, plan, made, number) for made in plan.made))
        for number, size in enumerate(sizes, start=1)
    ]
    alone = not in_groups(plan)
    return shared([replace(card, between_two=alone and not _to_tick(card.products)) for card in cards])


def _to_tick(products: Iterable[BenchProduct]) -> bool:
    """Tell whether anything is weighed at a bench, and so ticked on its card."""
    return any(product.phases for product in products)


def _numbers(edition: Edition) -> tuple[str, ...]:
    return emergency_lines(edition.studio.profile.emergency)


def _product(studio: Studio, plan: ClassPlan, made: MadeProduct, group: int) -> BenchProduct:
    batch, batch_for = made.batch, made.make.batch_for
    own = [one for one in batch.fillings if one.each_student]
    many = listed([containers_of(studio, one.fill, one.each_student) for one in own])
    phases = _phases(batch, plan.weighing, made.batches[0].purpose, group)
    whose = say(WHOSE_FOR_ALL if phases and batch_for is BatchFor.CLASS else WHOSE[batch_for])
    return BenchProduct(
        name=batch.recipe.name,
        whose=f"{whose} {say('Each of you fills {containers}.', containers=many)}",
        dangers=_dangers(studio, hazards_of_recipe(studio, batch) if phases else hazards_of_choices(studio, batch)),
        fills=tuple(line for one in own for line in _fills(studio, one)),
        phases=phases,
        left_over=left_over(studio, plan, made) if group == plan.groups else "",
        choices=tuple(replace(choice, at_most=sentence(choice.at_most)) for choice in view_choices(studio, own)),
    )


def _dangers(studio: Studio, hazards: tuple[str, ...]) -> str:
    """Name what can maim at this bench; what to do about it stands on the steps."""
    return " ".join(f"{sentence(text.name)}." for text in cautions_for(studio, hazards) if text.signal is Signal.DANGER)


def _fills(studio: Studio, filling: Filling) -> list[BenchAmount]:
    """Return what the scale reads: in the cup where something sticks to one, then in the container."""
    read, name = filling.read, container_name(studio, filling.fill)
    cup = [BenchAmount(grams(read.poured), say("in your cup (for the {container})", container=name))] if read.poured != read.fill else []
    return [*cup, BenchAmount(grams(read.fill), say("in each ({container})", container=name))]


def _phases(batch: WorkedBatch, plan: WeighingPlan, purpose: PotFor, group: int) -> tuple[BenchPhase, ...]:
    """Return what goes into the pot of a group; of the pot of the class what this group alone weighs for all."""
    mine = [task for task in plan.of(batch.recipe.name, purpose) if purpose is not PotFor.CLASS or task.group == group]
    amounts = [
        (task.weighed.line.phase, BenchAmount(weighed(task.weighed, "g"), at_the_bench(task, _name(task.weighed, batch))))
        for task in mine
        if task.found_as is not FoundAs.DISSOLVED
    ]
    if any(task.found_as is FoundAs.DISSOLVED for task in mine):
        lye = (one for one in plan.solutions_of(batch.recipe.name) if any(bottles.purpose == purpose for bottles in one.bottles))
        amounts += [(LYE, BenchAmount(grams(one.solution), solution_at_the_bench(one))) for one in lye]
    names = dict.fromkeys(name for name, _ in amounts)
    by_phase = {name: tuple(amount for phase, amount in amounts if phase == name) for name in names}
    return tuple(
        BenchPhase(sentence(say(name)), here, one_at_a_time(batch, name) if len(here) > 1 else "") for name, here in by_phase.items()
    )


def _name(w: Weighed, batch: WorkedBatch) -> str:
    """Name an ingredient, with the strokes of its pump where it has one."""
    strokes = next((one for one in batch.strokes if one.ingredient == w.line.ingredient.name), None)
    name = say(w.line.name)
    return say("{name}: {strokes}; the scale decides", name=name, strokes=strokes_and_weight(strokes)) if strokes else name
