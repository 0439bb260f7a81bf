"""What `parts/steps.html` and `parts/flow.html` show."""

from dataclasses import dataclass

from builder.compose.views.caution import Call, CautionView


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
class FlowPart:
    """A part of the lesson: who does it, as our key and in words, how long it takes, when (empty where it has no time), and its blocks.

    `note` says for which pot its amounts are, where that needs saying. `letter` is empty for what is done in class alone.
    `calls` are the numbers to call, where it shows a caution.
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
    has_cautions: bool = False


@dataclass(frozen=True)
class LessonFlow:
    """The parts of one document, the cautions that come before all of them, and the numbers to call."""

    before: tuple[CautionView, ...]
    parts: tuple[FlowPart, ...]
    calls: tuple[Call, ...] = ()
