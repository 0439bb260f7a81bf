"""Batch cards: one for each pot, with its code and its amounts, and blanks for what is measured while it is made; half a page at the most,
and as many on a page as fit it.

The amounts are those of the table of weighings (`for_staff/weighings.py`), so that no card can say another.
"""

from collections.abc import Iterable, Iterator

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, ToPrint
from builder.compose.edition import Edition
from builder.compose.for_staff.weighings import view_pot
from builder.compose.frames import frame
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.supervision_words import group_word, people_of
from builder.compose.views.bench_cards import BatchCard, BatchCardsView
from builder.compose.views.for_staff import PotView
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.jar import Pot
from builder.rules.pot_words import POT_WORDS
from builder.words.say import say, say_count

ON_A_PAGE = 2  # at the least


def copies_of_batch_cards(_: Edition, plan: ClassPlan) -> Iterator[ToPrint]:
    """Yield how many there are: a card for each pot."""
    cards = sum(len(made.pots) for made in plan.made)
    if cards:
        line = say_count("Batch cards: {count}\u00a0card, for one pot", "Batch cards: {count}\u00a0cards, one for each pot", cards)
        yield ToPrint(line, say("Batch cards"), apart=True)


def compose_batch_cards(edition: Edition, plan: ClassPlan, here: Address) -> Composed | None:
    """Make the batch cards of one date; none where nothing is made."""
    cards = tuple(card for made in plan.made for card in _cards(plan, made))
    if not cards:
        return None
    title = say("Batch cards: {class_title}", class_title=plan.studio_class.title)
    beside = 2 if len(cards) > ON_A_PAGE else 1
    rows = tuple(cards[at : at + beside] for at in range(0, len(cards), beside))
    most = -(-len(cards) // ON_A_PAGE)
    return Composed(BatchCardsView(frame(edition, here, title, title), title, when(edition, plan), rows, most, side_by_side=beside > 1))


def _cards(plan: ClassPlan, made: MadeProduct) -> Iterable[BatchCard]:
    weighed = {planned.purpose: view_pot(plan, planned) for planned in made.batches}
    for pot in made.pots:
        amounts = weighed[pot.purpose]
        lines = tuple(row for group in amounts.groups for row in group.rows)
        blanks = tuple(_blanks(amounts, with_lye=made.batch.product.made_with_lye))
        yield BatchCard(made.batch.recipe.name, _whose(plan, pot), pot.code, lines, amounts.total, blanks)


def _whose(plan: ClassPlan, pot: Pot) -> str:
    """Name a pot and count who fills from it; a pot that only the teacher fills from has no people."""
    if pot.number:
        name = say("Pot {number} of {of} ({group} {number})", number=pot.number, of=plan.groups, group=group_word(plan))
    else:
        name = say(POT_WORDS[pot.purpose].alone)
    return f"{name}, {people_of(pot.people)}" if pot.people else name


def _blanks(amounts: PotView, *, with_lye: bool) -> Iterator[str]:
    """Yield what is measured while a pot is made: a temperature where something is heated or lye is, and its times."""
    yield say("Made by")
    yield say("Begun at")
    for group in amounts.groups:
        if group.treatment or group.caustic:
            yield say("{phase}: temperature", phase=group.title)
    if with_lye:
        yield say("Mixed at")
        yield say("Trace at")
    yield say("Filled at")
    yield say("Containers filled")
