"""Bench cards: for each group one card, large enough to be read at arm's length with wet hands, with their share and their steps only."""

from builder.compose import addresses
from builder.compose.class_sheets import part_sheet, when
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.lesson_flow import FlowSource, compose_flow
from builder.compose.pieces import paper_filling
from builder.compose.portion_words import container_name, view_choice
from builder.compose.views.bench_cards import BenchAmount, BenchCard, BenchCardsView, BenchPhase, BenchProduct
from builder.compose.wording import counted, grams, sentence, weighed, within
from builder.model.batch_sheet import BatchSheet
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.document import Document
from builder.model.lesson import Where, Who
from builder.model.studio import Studio
from builder.model.studio_class import BatchFor

STYLES = (*PAPER_STYLES, "bench-card.css")
WHOSE = {
    BatchFor.CLASS: "One batch is made for all. You fill your own.",
    BatchFor.GROUP: "One batch for your group.",
    BatchFor.STUDENT: "One batch for each of you.",
}


def compose_bench_cards(edition: Edition, sheet: ClassSheet) -> tuple[Document, ...]:
    """Make the bench cards of one date; none where nobody comes or students only watch."""
    parts = [timed.part for timed in sheet.timeline if timed.part.who in (Who.STUDENTS, Who.TOGETHER)]
    if not sheet.groups or not any(part.who is Who.STUDENTS for part in parts):
        return ()
    sources = [FlowSource(part, part_sheet(sheet, part)) for part in parts if part.where is not Where.HOME_ONLY]
    flow = compose_flow(edition.studio, sources, paper_filling(edition, addresses.class_folder(sheet.studio_class.key)))
    products = tuple(_product(edition.studio, made) for made in sheet.made)
    title = f"Bench cards: {sheet.studio_class.title}"
    place = "Group" if sheet.studio_class.group_size > 1 else "Place"
    cards = tuple(
        BenchCard(f"{place} {number} of {sheet.groups}", counted(_people(sheet, number), "person", "people"), products, flow)
        for number in range(1, sheet.groups + 1)
    )
    view = BenchCardsView(sheet_frame(edition, title, title), title, when(edition, sheet), cards)
    here = addresses.class_sheet(sheet, "bench-cards.pdf")
    return (Document(here.folder, here.path, title, edition.templates.render("sheets/bench-cards.html", view), STYLES),)


def _people(sheet: ClassSheet, number: int) -> int:
    return sheet.last_group if number == sheet.groups else sheet.studio_class.group_size


def _product(studio: Studio, made: MadeSheet) -> BenchProduct:
    sheet, batch_for = made.batch, made.make.batch_for
    each = f"of {within(sheet.recipe.name)} in each {container_name(studio, sheet)}"
    many = counted(made.make.each_student, "container", "containers")
    return BenchProduct(
        name=sheet.recipe.name,
        whose=f"{WHOSE[batch_for]} Each of you fills {many}.",
        fill=grams(sheet.portions.fill),
        fill_words=each,
        phases=_phases(sheet) if batch_for is not BatchFor.CLASS else (),
        choices=tuple(view_choice(dose) for dose in sheet.doses),
    )


def _phases(sheet: BatchSheet) -> tuple[BenchPhase, ...]:
    names = dict.fromkeys(w.line.phase for w in sheet.grams.weighed)
    return tuple(
        BenchPhase(
            sentence(name),
            tuple(BenchAmount(weighed(w, "g"), within(w.line.name)) for w in sheet.grams.weighed if w.line.phase == name),
        )
        for name in names
    )
