"""Parts of a lesson to the flow of one document: text, lettered steps, and in each part its cautions, before the step they belong to.

Decided: a part says a caution whole, though an earlier part has said it: each part lies at another place of the bench, and "as above"
sends wet hands through the pages. Steps are counted anew in each part, which has its letter.

Decided: what is weighed cold has no caution of heat; that stands before the first step that speaks of heat. Why: a box beside the cold
scale is one that is skipped beside the hot pot.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import Enum, auto
from functools import cached_property

from builder.compose.dates.time_words import STAFF_WORDS, who_does
from builder.compose.formula.first_aid import aid_sentences, in_sentences
from builder.compose.formula.hazards import cautions_for, hazards_of_recipe, said, signal_word
from builder.compose.formula.page_head import AT_HOME, IN_CLASS, IN_LARGE_PRINT, NOTHING, at_the_head
from builder.compose.recipe.portion_words import numbers_to_call
from builder.compose.recipe.wording import duration, short_duration
from builder.compose.teaching.mentions import ingredients_named
from builder.compose.teaching.pieces import TextWriter
from builder.compose.views.caution import Call, CautionView
from builder.compose.views.lesson import AidAtFoot, FlowBlock, FlowPart, LessonFlow, ProseView, StepRun
from builder.model.hazard import Hazard
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.caution import CautionText, Signal
from builder.model.teaching.lesson import Block, CautionHere, Mention, Part, Piece, Prose, Step, Steps, Who, sentences_in
from builder.model.teaching.prose import Sentence
from builder.rules.hands.alcohol import vapour_said
from builder.rules.hands.gear import strongest
from builder.rules.hands.told import handled_mentions
from builder.rules.hands.written import writes_down
from builder.rules.hazard import HEAT, cold_parts, hazards_of, heats, heats_fat, is_of_heat
from builder.rules.over_heat import puts_over_heat
from builder.words.say import message, say

OF_LYE = (Hazard.CAUSTIC, Hazard.RAW_SOAP)
# A line to write on, at the end of a step that has something written down.
WRITE_HERE = ' <span class="write-here"></span>'
# The last line of many cautions; each part of a document says it once.
RULES_FIRST = message("Local rules and the supplier's safety data sheet come first.")


class Foot(Enum):
    """Whose first aid stands at the foot of each page: in its cautions it is said in brief, and on paper but once.

    `LYE` is for a sheet that says all of the first aid for lye on a page before; of any other caution, what the foot tells of lye is not
    said on paper once more. `DANGERS` is for what has the gravest signal word, whose first box has it as well.
    """

    EMPTY = auto()
    LYE = auto()
    DANGERS = auto()

    def bears(self, text: CautionText) -> bool:
        """Tell whether the first aid of a caution stands there."""
        match self:
            case Foot.LYE:
                return text.hazard in OF_LYE
            case Foot.DANGERS:
                return text.signal is Signal.DANGER
        return False


@dataclass(frozen=True)
class FlowSource:
    """A part with the batch that it speaks of.

    `clock` is its time in words, `note` says for which pot it is, `letter` is its letter, `weighed` what is weighed in it; each empty where
    there is none. `met` are hazards that it brings beyond those of its amounts and placed cautions (`reckon/teaching/met_at_home.py`).
    """

    part: Part
    batch: WorkedBatch
    clock: str = ""
    note: str = ""
    letter: str = ""
    met: tuple[str, ...] = ()
    weighed: tuple[str, ...] = ()


def compose_flow(
    studio: Studio,
    sources: Sequence[FlowSource],
    writer: TextWriter,
    batches: Iterable[WorkedBatch] = (),
    *,
    short_again: bool = False,
    foot: Foot = Foot.EMPTY,
    whole: Sequence[FlowSource] = (),
    at_head: int = AT_HOME,
) -> LessonFlow:
    """Lay out some parts. Hazards of `batches` (and of the parts' own batches) that no step names are spoken of before the first step.

    With `short_again` a caution that an earlier part has said whole is said in a breath in a later one: hazard, gear and first aid, still.
    `whole` are all parts of the class, where others do some of them: what is weighed before anybody heats it is cold, and nothing is said
    of heat, or of what a step of theirs names, that is in no hands but theirs. `at_head` is how many letters the head of a page holds onto
    which a part runs.
    """
    flow = _Flow(studio, writer, short_again, foot, IN_CLASS if foot is Foot.DANGERS else at_head)
    all_batches = list({id(batch): batch for batch in (*batches, *(source.batch for source in sources))}.values())
    cold, warming = set[int](), set[int]()
    for batch in all_batches:
        of_batch = [one for one in whole or sources if one.batch is batch]
        ahead, later = ([one for one in of_batch if (one.part.who is Who.AHEAD) is early] for early in (True, False))
        warmed_by_itself = _lye_alone(studio, (*ahead, *later))
        for stretch in (ahead, later):
            mine = [one.part for one in stretch if id(one.part) not in warmed_by_itself]
            still = cold_parts(mine)
            cold.update(map(id, still))
            warming.update(map(id, mine[len(still) : len(still) + 1]))
    parts = tuple(flow.part(one, is_cold=id(one.part) in cold, warms=id(one.part) in warming) for one in sources)
    hazards = [one for batch in all_batches for one in hazards_of_recipe(studio, batch) if not whole or one not in HEAT]
    of_others = _Flow(studio, writer)
    for one in (other for other in whole if not any(other is mine for mine in sources)):
        of_others.part(one, is_cold=id(one.part) in cold, warms=id(one.part) in warming)
    left = [text for text in cautions_for(studio, hazards) if text.key not in flow.shown | of_others.shown]
    before = tuple(flow.view(text) for text in left)
    at_foot = first_aid_of(text for text in flow.texts.values() if foot.bears(text))
    gear = strongest(piece for text in flow.texts.values() for piece in text.gear)
    return LessonFlow(before, parts, flow.calls, at_foot, first_aid_of(flow.texts.values()), gear)


def _lye_alone(studio: Studio, sources: Sequence[FlowSource]) -> frozenset[int]:
    """Return the parts whose heat is that of lye in water alone: they name it, and nothing that burns is named or heated before."""
    found = set[int]()
    for one in sources:
        mentions = [mention for step in one.part.steps for mention in handled_mentions(step)]
        hazards = set(_hazards_named(studio, mentions, one.batch))
        if hazards & set(HEAT) or (heats(one.part) if Hazard.CAUSTIC not in hazards else heats_fat(one.part)):
            break
        if Hazard.CAUSTIC in hazards:
            found.add(id(one.part))
    return frozenset(found)


def _hazards_named(studio: Studio, pieces: Iterable[Piece], batch: WorkedBatch) -> Iterator[str]:
    named = (ingredients_named(studio, batch, piece.name) for piece in pieces if isinstance(piece, Mention))
    return (hazard for cards in named for card, phase in cards for hazard in hazards_of(studio, card, phase, batch))


def view_caution(text: CautionText, *, in_brief: bool = False, again: bool = False) -> CautionView:
    """Return a caution as a document shows it. That local rules come first, a document says once for all the cautions of a part."""
    happens = (text.in_brief,) if in_brief and text.in_brief else _first_aid(text)
    what, avoid = (text.again, ()) if again and text.again else (text.what, text.avoid)
    return CautionView(text.signal, signal_word(text), text.name, what, avoid, happens)


def first_aid_of(texts: Iterable[CautionText]) -> tuple[AidAtFoot, ...]:
    """Return what to do after an accident with any of these; a sentence that several of them share is said once, for them together."""
    of: dict[str, list[str]] = {}
    for text in texts:
        for sentence in aid_sentences(_aid_in_brief(text)):
            of.setdefault(sentence, []).append(text.name)
    together: dict[tuple[str, ...], list[str]] = {}
    for sentence, names in of.items():
        together.setdefault(tuple(names), []).append(sentence)
    return tuple(AidAtFoot(names, " ".join(sentences)) for names, sentences in together.items() if any(sentences))


def _first_aid(text: CautionText) -> tuple[str, ...]:
    first = say(RULES_FIRST)
    return tuple(line for line in text.if_it_happens if line != first)


def _aid_in_brief(text: CautionText) -> str:
    return text.in_brief or " ".join(_first_aid(text))


def calls_of(studio: Studio) -> tuple[Call, ...]:
    """Return the numbers to call."""
    return tuple(Call(whose, number) for whose, number in numbers_to_call(studio.profile.emergency))


def _at_once(studio: Studio, source: FlowSource) -> Iterable[str]:
    """Return what a part meets from its first step on; scent that stands covered is met where the part places its caution, if it does."""
    placed = {studio.cautions[block.name.text].hazard for block in source.part.blocks if isinstance(block, CautionHere)}
    return (one for one in source.met if one != Hazard.NEAT_ESSENTIAL_OIL or one not in placed)


@dataclass
class _Flow:
    """The run of one document: which cautions it and the part at hand have shown, which that part shows at steps, how many it has."""

    studio: Studio
    writer: TextWriter
    short_again: bool = False
    foot: Foot = Foot.EMPTY
    at_head: int = AT_HOME
    texts: dict[str, CautionText] = field(default_factory=dict)
    shown: set[str] = field(default_factory=set)
    in_part: set[str] = field(default_factory=set)
    at_steps: set[str] = field(default_factory=set)
    steps: int = 0
    letter: str = ""
    is_cold: bool = False
    is_warm: bool = True
    held: tuple[CautionText, ...] = ()

    @property
    def calls(self) -> tuple[Call, ...]:
        return calls_of(self.studio)

    def part(self, source: FlowSource, *, is_cold: bool, warms: bool) -> FlowPart:
        self.in_part, self.steps, self.letter, self.is_cold = set(), 0, source.letter, is_cold
        self.is_warm, self.held = not (warms and any(map(is_of_heat, sentences_in(source.part.blocks)))), ()
        named = (text for step in source.part.steps for text in self._named(handled_mentions(step), source.batch))
        self.at_steps = {text.key for text in named}
        blocks: list[FlowBlock] = [*self._show(cautions_for(self.studio, _at_once(self.studio, source)))]
        blocks += [made for block in source.part.blocks for made in self._block(block, source.batch)]
        part = source.part
        shown = FlowPart(
            title=part.title,
            who=str(part.who),
            who_in_words=say(STAFF_WORDS[part.who]),
            minutes=duration(part.minutes),
            clock=source.clock,
            blocks=tuple(blocks),
            note=source.note,
            letter=source.letter,
            calls=self.calls,
            by_the_clock=who_does(part, STAFF_WORDS),
            weighed=source.weighed,
            length=short_duration(part.minutes),
        )
        goes_on = say("{part} goes on.", part=f"{source.letter} {part.title}".strip())
        return replace(shown, goes_on=at_the_head(goes_on, shown.warns, self.at_head, self._dangers_in_short)) if blocks else shown

    @property
    def _dangers_in_short(self) -> Mapping[str, str]:
        """Return what is said again of each danger told so far, for a head that has room for it."""
        if self.at_head != IN_LARGE_PRINT:
            return NOTHING
        return {text.name: text.again for text in self.texts.values() if text.again and text.signal is Signal.DANGER}

    def _block(self, block: Block, batch: WorkedBatch) -> Iterable[FlowBlock]:
        match block:
            case Prose(pieces):
                named = (text for text in self._named(pieces, batch) if text.key not in self.at_steps)
                said_here = sentences_in((block,))
                yield from self._show((*self._once_warm(named, said_here), *self._flares(said_here)))
                yield ProseView(self.writer.fill(pieces, batch))
            case Steps(steps):
                yield from self._steps(steps, batch)
            case CautionHere(name):
                yield from self._show([said(self.studio.cautions[name.text])])

    def _steps(self, steps: Sequence[Step], batch: WorkedBatch) -> Iterable[FlowBlock]:
        run: list[str] = []
        for step in steps:
            texts = self._once_warm(self._named(handled_mentions(step), batch), step.sentences)
            cautions = self._show((*texts, *self._scalds(texts, step.sentences), *self._flares(step.sentences)))
            if cautions and run:
                yield self._numbered(run)
                run = []
            yield from cautions
            run.append(self.writer.fill(step.pieces, batch) + (WRITE_HERE if writes_down(step) else ""))
        yield self._numbered(run)

    def _numbered(self, run: Sequence[str]) -> StepRun:
        first = self.steps + 1
        self.steps += len(run)
        return StepRun(first, tuple(run), self.letter)

    def _named(self, pieces: Iterable[Piece], batch: WorkedBatch) -> tuple[CautionText, ...]:
        hazards = _hazards_named(self.studio, pieces, batch)
        return cautions_for(self.studio, (one for one in hazards if not (self.is_cold and one in HEAT)))

    def _scalds(self, texts: Iterable[CautionText], said: Sequence[Sentence]) -> tuple[CautionText, ...]:
        """Return the caution of what scalds where words put something over heat, and none of heat has been said in the part."""
        told = {text.hazard for text in texts} | {text.hazard for text in self.studio.cautions.values() if text.key in self.in_part}
        if told & set(HEAT) or not puts_over_heat(said, self.studio.flame_words):
            return ()
        return cautions_for(self.studio, [Hazard.HOT])

    def _flares(self, said: Sequence[Sentence]) -> tuple[CautionText, ...]:
        """Return the caution of vapour where words have alcohol sprayed, poured or wiped with."""
        return cautions_for(self.studio, vapour_said(said, self.studio.flame_words))

    def _once_warm(self, texts: Iterable[CautionText], said: Sequence[Sentence]) -> tuple[CautionText, ...]:
        """Keep back what burns, of amounts that are weighed cold, until the part speaks of heat; then tell it."""
        if self.is_warm:
            return tuple(texts)
        named = tuple(texts)
        if any(map(is_of_heat, said)):
            self.is_warm = True
            return (*self.held, *named)
        self.held += tuple(text for text in named if text.hazard in HEAT)
        return tuple(text for text in named if text.hazard not in HEAT)

    def _show(self, texts: Iterable[CautionText]) -> list[CautionView]:
        here = list({text.key: text for text in texts if text.key not in self.in_part}.values())
        said = [self._said(text) for text in here]
        self.in_part |= {text.key for text in here}
        self.shown |= self.in_part
        return said

    def _said(self, text: CautionText) -> CautionView:
        return self.view(text, again=self.short_again and text.key in self.shown)

    def view(self, text: CautionText, *, again: bool = False) -> CautionView:
        """Return a caution as this document shows it, with what stands at its foot as well."""
        at_foot, is_told = self.foot.bears(text), text.key in self.texts
        self.texts[text.key] = text
        shown = view_caution(text, in_brief=again or at_foot, again=again)
        if self.foot is Foot.LYE:
            return replace(shown, if_it_happens=in_sentences(shown.if_it_happens), at_foot=self._of_lye)
        if at_foot:
            return replace(shown, at_foot=shown.if_it_happens if is_told else ())
        return replace(shown, in_few_words=f"{text.again} {_aid_in_brief(text)}") if text.again and self.foot is Foot.DANGERS else shown

    @cached_property
    def _of_lye(self) -> tuple[str, ...]:
        """Return what our own caution says in brief of first aid for lye, which the foot tells: what a studio adds stands in its box."""
        of_lye = (text for text in self.studio.cautions.values() if text.hazard == Hazard.CAUSTIC)
        return in_sentences(said(text.in_place_of or text).in_brief for text in of_lye)
