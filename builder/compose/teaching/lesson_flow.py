"""Parts of a lesson to the flow of one document: text, steps numbered in one run, and each caution once, before the step it belongs to."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from builder.compose.dates.time_words import STAFF_WORDS
from builder.compose.formula.hazards import cautions_for, hazards_of_recipe, said, signal_word
from builder.compose.recipe.wording import duration
from builder.compose.teaching.mentions import ingredients_named
from builder.compose.teaching.pieces import TextWriter
from builder.compose.views.caution import CautionView, ReminderView
from builder.compose.views.lesson import FlowBlock, FlowPart, LessonFlow, ProseView, StepRun
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.caution import CautionText
from builder.model.teaching.lesson import Block, CautionHere, Mention, Part, Piece, Prose, Step, Steps
from builder.rules.hazard import hazards_of
from builder.words.say import say


@dataclass(frozen=True)
class FlowSource:
    """A part with the batch that it speaks of, its time on the clock in words, and for which pot it is (both empty where not needed)."""

    part: Part
    sheet: WorkedBatch
    clock: str = ""
    note: str = ""


def compose_flow(
    studio: Studio, sources: Sequence[FlowSource], writer: TextWriter, sheets: Iterable[WorkedBatch] = (), *, remind: bool = False
) -> LessonFlow:
    """Lay out some parts. Hazards of `sheets` (and of the parts' own batches) that no step names are spoken of before the first step.

    With `remind` a caution that an earlier part has shown comes again as one line; without, it comes once.
    """
    flow = _Flow(studio, writer, remind)
    parts = tuple(flow.part(source) for source in sources)
    batches = list({id(sheet): sheet for sheet in (*sheets, *(source.sheet for source in sources))}.values())
    hazards = [hazard for sheet in batches for hazard in hazards_of_recipe(studio, sheet)]
    left = [text for text in cautions_for(studio, hazards) if text.key not in flow.shown]
    return LessonFlow(tuple(view_caution(text) for text in left), parts)


def view_caution(text: CautionText) -> CautionView:
    """Give a caution as a document shows it."""
    return CautionView(text.signal, signal_word(text), text.name, text.what, text.avoid, text.if_it_happens)


def _remind(text: CautionText) -> ReminderView:
    return ReminderView(text.signal, signal_word(text), text.name)


@dataclass
class _Flow:
    """The run of one document: which cautions it has shown, and how many steps it has numbered."""

    studio: Studio
    writer: TextWriter
    remind: bool = False
    shown: set[str] = field(default_factory=set)
    in_part: set[str] = field(default_factory=set)
    steps: int = 0

    def part(self, source: FlowSource) -> FlowPart:
        self.in_part = set()
        blocks = [made for block in source.part.blocks for made in self._block(block, source.sheet)]
        part, time = source.part, duration(source.part.minutes)
        return FlowPart(part.title, str(part.who), say(STAFF_WORDS[part.who]), time, source.clock, tuple(blocks), source.note)

    def _block(self, block: Block, batch: WorkedBatch) -> Iterable[FlowBlock]:
        match block:
            case Prose(pieces):
                yield from self._before(pieces, batch)
                yield ProseView(self.writer.fill(pieces, batch))
            case Steps(steps):
                yield from self._steps(steps, batch)
            case CautionHere(name):
                yield from self._show([said(self.studio.cautions[name.text])])

    def _steps(self, steps: Sequence[Step], batch: WorkedBatch) -> Iterable[FlowBlock]:
        run: list[str] = []
        for step in steps:
            cautions = self._before(step.pieces, batch)
            if cautions and run:
                yield self._numbered(run)
                run = []
            yield from cautions
            run.append(self.writer.fill(step.pieces, batch))
        yield self._numbered(run)

    def _numbered(self, run: Sequence[str]) -> StepRun:
        first = self.steps + 1
        self.steps += len(run)
        return StepRun(first, tuple(run))

    def _before(self, pieces: Iterable[Piece], batch: WorkedBatch) -> list[CautionView | ReminderView]:
        named = [ingredients_named(self.studio, batch, piece.name) for piece in pieces if isinstance(piece, Mention)]
        hazards = [hazard for cards in named for card, phase in cards for hazard in hazards_of(self.studio, card, phase, batch)]
        return self._show(cautions_for(self.studio, hazards))

    def _show(self, texts: Iterable[CautionText]) -> list[CautionView | ReminderView]:
        here = [text for text in texts if text.key not in self.in_part and (self.remind or text.key not in self.shown)]
        views = [_remind(text) if text.key in self.shown else view_caution(text) for text in here]
        self.in_part |= {text.key for text in here}
        self.shown |= self.in_part
        return views
