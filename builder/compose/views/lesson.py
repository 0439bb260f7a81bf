"""What `parts/steps.html` and `parts/flow.html` show."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile

from builder.compose.views.caution import Call, CautionView

# How many letters of first aid a foot of each height holds beside the numbers to call, in type of 10.5 pt.
FEET = {"low": 240, "middle": 380}


@dataclass(frozen=True)
class ProseView:
    """A block of text that is not a step."""

    html: str
    kind: str = "prose"


@dataclass(frozen=True)
class StepRun:
    """Steps that follow one another without a caution between them; `start` is the number of the first, `letter` that of their part."""

    start: int
    html: tuple[str, ...]
    letter: str = ""
    kind: str = "steps"

    @property
    def steps(self) -> tuple[tuple[str, str], ...]:
        """Return each step with its name: `B5`, or `5` in a part without a letter."""
        return tuple((f"{self.letter}{number}", html) for number, html in enumerate(self.html, start=self.start))


FlowBlock = ProseView | StepRun | CautionView


@dataclass(frozen=True)
class Under:
    """Cautions that stand together, and all that they hold for: within a part up to its last step, or parts that follow one another."""

    cautions: tuple[CautionView, ...]
    blocks: tuple["ProseView | StepRun | FlowPart | Under", ...]
    kind: str = "under"


@dataclass(frozen=True)
class FlowPart:
    """A part of the lesson: who does it, as our key and in words, how long it takes, when (empty where it has no time), and its blocks.

    `by_the_clock` says who does it, and whether it fills the wait of another. `note` says for which pot its amounts are, where that needs
    saying, `weighed` what is weighed in it. `letter` is empty for what is done in class alone. `calls` are the numbers to
    call, for where it shows a caution. `goes_on` names it and its cautions at the head of a page onto which it runs. `length` is
    `minutes` in few letters. `opens_lye` is true of the first part at home in which lye is weighed.
    """

    title: str
    who: str
    who_in_words: str
    minutes: str
    clock: str
    blocks: tuple[FlowBlock, ...]
    note: str = ""
    letter: str = ""
    calls: tuple[Call, ...] = ()
    by_the_clock: str = ""
    weighed: tuple[str, ...] = ()
    goes_on: str = ""
    length: str = ""
    opens_lye: bool = False
    kind: str = "part"

    @property
    def warns(self) -> tuple[tuple[str, str], ...]:
        """Return the cautions that stand in it, each once, as its signal word and what it is of."""
        return tuple(dict.fromkeys((block.word, block.name) for block in self.blocks if isinstance(block, CautionView)))

    @property
    def beneath(self) -> tuple[ProseView | StepRun | Under, ...]:
        """Return the blocks, the steps that follow cautions beneath them; what follows the last step is beneath none."""
        last = max((place for place, block in enumerate(self.blocks) if isinstance(block, StepRun)), default=-1)
        return (*_beneath(self.blocks[: last + 1]), *_beneath(self.blocks[last + 1 :]))


def _beneath(blocks: Sequence[FlowBlock]) -> Iterator[ProseView | StepRun | Under]:
    for place, block in enumerate(blocks):
        if isinstance(block, CautionView):
            here = tuple(one for one in takewhile(lambda one: isinstance(one, CautionView), blocks[place:]) if isinstance(one, CautionView))
            yield Under(here, tuple(_beneath(blocks[place + len(here) :])))
            return
        yield block


@dataclass(frozen=True)
class AidAtFoot:
    """What to do after an accident with each of what is named, for the foot of a page."""

    names: tuple[str, ...]
    what: str


@dataclass(frozen=True)
class LessonFlow:
    """The parts of one document, the cautions that come before all of them, the numbers to call, and first aid.

    That at the foot of its pages is of dangers alone, `first_aid` of all its cautions, and `gear` what all of them ask people to put on.
    """

    before: tuple[CautionView, ...]
    parts: tuple[FlowPart, ...]
    calls: tuple[Call, ...] = ()
    at_foot: tuple[AidAtFoot, ...] = ()
    first_aid: tuple[AidAtFoot, ...] = ()
    gear: tuple[str, ...] = ()

    @property
    def foot(self) -> str:
        """Return how high the foot has to be for its first aid: a name of `layouts/styles/teacher.css`."""
        letters = sum(len(name) + 2 for aid in self.at_foot for name in aid.names) + sum(len(aid.what) for aid in self.at_foot)
        return next((name for name, most in FEET.items() if letters <= most), "high")
