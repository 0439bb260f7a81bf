"""What `parts/steps.html` and `parts/flow.html` show."""

from dataclasses import dataclass

from builder.compose.views.caution import CautionView, ReminderView


@dataclass(frozen=True)
class ProseView:
    """A block of text that is not a step."""

    html: str
    kind: str = "prose"


@dataclass(frozen=True)
class StepRun:
    """Steps that follow one another without a caution between them; `start` is the number of the first."""

    start: int
    html: tuple[str, ...]
    kind: str = "steps"


FlowBlock = ProseView | StepRun | CautionView | ReminderView


@dataclass(frozen=True)
class FlowPart:
    """A part of the lesson: who does it, as our key and in words, how long it takes, when (empty where it has no time), and its blocks.

    `note` says for which pot its amounts are, where that needs saying.
    """

    title: str
    who: str
    who_in_words: str
    minutes: str
    clock: str
    blocks: tuple[FlowBlock, ...]
    note: str = ""


@dataclass(frozen=True)
class LessonFlow:
    """The parts of one document, and the cautions that come before all of them."""

    before: tuple[CautionView, ...]
    parts: tuple[FlowPart, ...]
