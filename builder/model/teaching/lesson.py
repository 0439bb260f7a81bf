"""A lesson: parts with who does them and for how long, made of text with holes for worked-out amounts."""

from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.place import NOWHERE, Name, Place
from builder.model.teaching.prose import Sentence


class Who(StrEnum):
    """Who does a part of the lesson."""

    AHEAD = "ahead"
    TEACHER = "teacher"
    STUDENTS = "students"
    TOGETHER = "together"
    WAITING = "waiting"
    AFTER = "after"


class Where(StrEnum):
    """Where a part is done."""

    EVERYWHERE = "everywhere"
    CLASS_ONLY = "class only"
    HOME_ONLY = "home only"


@dataclass(frozen=True)
class Mention:
    """A hole in the text: a name in braces, to be filled with the amount for the document at hand."""

    name: Name


@dataclass(frozen=True)
class PictureHole:
    """A hole for a picture that lies beside the text; `alt` says what it shows, `title` is what a pointer brings up."""

    file: Name
    alt: str
    title: str = ""


class LinkTo(StrEnum):
    """What a text can lead to."""

    PAGE = "page"
    CLASS = "class"


@dataclass(frozen=True)
class LinkHole:
    """A hole for the address of another page (`page:NAME`) or class (`class:NAME`)."""

    kind: LinkTo
    target: Name


@dataclass(frozen=True)
class DrawingHole:
    """A hole for a drawing of the project, by its name."""

    name: Name


# Finished HTML, and the holes in it. Joining the pieces in order, holes filled, gives well-formed HTML.
Piece = str | Mention | PictureHole | LinkHole | DrawingHole


@dataclass(frozen=True)
class Prose:
    """A block of text that is not a step: a paragraph, a list of points, a table, a subheading; its sentences are what it says."""

    pieces: tuple[Piece, ...]
    place: Place = field(default=NOWHERE, compare=False)
    sentences: tuple[Sentence, ...] = field(default=(), compare=False)


@dataclass(frozen=True)
class Step:
    """One step of an ordered list; its pieces are the inside of a list item, its sentences what it says."""

    pieces: tuple[Piece, ...]
    place: Place = field(default=NOWHERE, compare=False)
    sentences: tuple[Sentence, ...] = field(default=(), compare=False)

    @property
    def mentions(self) -> tuple[Mention, ...]:
        """Return the amounts that the step names."""
        return tuple(piece for piece in self.pieces if isinstance(piece, Mention))

    def sentence_of(self, mention: Mention) -> int:
        """Return the number of the sentence that names one of its amounts, counted from 0: the first that does not end before it."""
        named = mention.name.place
        ends = (sentence.place(len(sentence.words) - 1, len(sentence.words)) for sentence in self.sentences)
        not_before = (number for number, end in enumerate(ends) if (end.line, end.column) >= (named.line, named.column))
        return next(not_before, max(0, len(self.sentences) - 1))


@dataclass(frozen=True)
class Steps:
    """A run of steps."""

    steps: tuple[Step, ...]


@dataclass(frozen=True)
class CautionHere:
    """A place at which the lesson asks for a caution."""

    name: Name


Block = Prose | Steps | CautionHere


def mentions_in(blocks: tuple[Block, ...]) -> tuple[Mention, ...]:
    """Return every amount that some blocks name, in order."""
    found: list[Mention] = []
    for block in blocks:
        if isinstance(block, Prose):
            found += [piece for piece in block.pieces if isinstance(piece, Mention)]
        elif isinstance(block, Steps):
            for step in block.steps:
                found += step.mentions
    return tuple(found)


def drawings_in(blocks: tuple[Block, ...]) -> tuple[DrawingHole, ...]:
    """Return every drawing that some blocks call for, in order."""
    runs = (run for block in blocks for run in ([block] if isinstance(block, Prose) else block.steps if isinstance(block, Steps) else ()))
    return tuple(piece for run in runs for piece in run.pieces if isinstance(piece, DrawingHole))


def sentences_in(blocks: tuple[Block, ...]) -> tuple[Sentence, ...]:
    """Return everything that some blocks say, in order."""
    found: list[Sentence] = []
    for block in blocks:
        if isinstance(block, Steps):
            for step in block.steps:
                found += step.sentences
        elif isinstance(block, Prose):
            found += block.sentences
    return tuple(found)


@dataclass(frozen=True)
class Part:
    """A part of a lesson. `recipe` is the key of the recipe it is about, None for the first that the class makes.

    `days_before` counts for what is done ahead and `days_later` for what staff do after the class: 0 on the day itself. `in_the_wait`: it
    is done while the wait before it lasts. `cooled`: what was hot in the parts before it has cooled or been put away when it begins.
    `no_raw_soap`: students meet no soap in it that still holds lye, though the recipe is made with lye. `group` is the number of the one
    group that does it for all, where one does.
    """

    title: str
    who: Who
    minutes: int
    blocks: tuple[Block, ...]
    where: Where = Where.EVERYWHERE
    recipe: Name | None = None
    place: Place = field(default=NOWHERE, compare=False)
    days_before: int = 0
    in_the_wait: bool = False
    days_later: int = 0
    cooled: bool = False
    no_raw_soap: bool = False
    group: int | None = None
    title_says: tuple[Sentence, ...] = field(default=(), compare=False)

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """Return what it says, its heading first."""
        return (*self.title_says, *sentences_in(self.blocks))

    @property
    def steps(self) -> tuple[Step, ...]:
        """Return its steps, in order."""
        return tuple(step for block in self.blocks if isinstance(block, Steps) for step in block.steps)

    @property
    def by_hand(self) -> bool:
        """Tell whether students work with their own hands in it."""
        return self.who in (Who.STUDENTS, Who.TOGETHER)

    @property
    def in_class_time(self) -> bool:
        """Tell whether its minutes count towards the length of the class."""
        return self.who not in (Who.AHEAD, Who.AFTER) and self.where is not Where.HOME_ONLY

    @property
    def mentions(self) -> tuple[Mention, ...]:
        """Return every amount that the part names, in order."""
        return mentions_in(self.blocks)


@dataclass(frozen=True)
class Lesson:
    """A lesson: its introduction for the public, and its parts in the order of doing."""

    title: str
    introduction: tuple[Block, ...]
    parts: tuple[Part, ...]
    place: Place = field(default=NOWHERE, compare=False)
    title_says: tuple[Sentence, ...] = field(default=(), compare=False)


@dataclass(frozen=True)
class Page:
    """A page of the site: a title and text."""

    key: str
    title: str
    blocks: tuple[Block, ...]
    place: Place = field(default=NOWHERE, compare=False)
    title_says: tuple[Sentence, ...] = field(default=(), compare=False)
