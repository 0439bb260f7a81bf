"""The shapes of `supervision.yaml`, of `format_advice.yaml`, and of the teaching policy in `studio.yaml`."""

from typing import Annotated

from builder.model.dates.studio_class import Format, Goal
from builder.model.drawing import Drawing, ToolDrawing
from builder.model.hazard import Hazard
from builder.model.teaching.supervision import Band, Basis, OwnNumbers, WatchRule
from builder.model.teaching.teaching import FormatAdvice
from builder.read.makes import Makes, becomes, carried
from builder.read.shapes.fields import NOT_EMPTY, SourceField, Stops, Text, Texts, Whole, WholeAboveZero, YesOrNo, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.library import CitationShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.values.values import member_of
from builder.words.fold import fold


class DrawingShape(Shape, Makes[Drawing]):
    """One entry of `drawings.yaml`."""

    caption: Text = needed("caption", "Light trace")
    """What stands beneath the drawing."""
    alt: Text = needed("alt", "Soap batter runs from a spatula and leaves a faint line on the surface.")
    """What it shows, for those who do not see it."""
    fits: Texts = maybe("fits", (), "[stop at a light trace]")
    """Words of steps that it fits. All words of an entry stand in one sentence, in any order."""

    @becomes("fits")
    def _sets_of_words(self, _: PlacedData) -> tuple[frozenset[str], ...]:
        return tuple(frozenset(fold(words).split()) for words in self.fits)


class ToolDrawingShape(Shape, Makes[ToolDrawing]):
    """One entry of `tools.yaml`."""

    names: Text = needed("names", "hand blender, stick blender")
    """What one of it is called, between commas: a tool of a list is shown by the first name in its words."""


class BandShape(Shape, Makes[Band]):
    """How many students one adult watches from an age on."""

    from_age: Whole = needed("from age", "13")
    """The age from which on the number holds."""
    students: WholeAboveZero = needed("students", "8")
    """The most students of that age to one adult."""


Hazards = tuple[Annotated[Hazard, reads(member_of(Hazard))], ...]


class PolicyShape(Shape, Makes[OwnNumbers]):
    """What a studio sets instead of a rule's own numbers."""

    youngest: Whole | None = maybe("youngest", example="18")
    """The least age for that work."""
    group_of: WholeAboveZero | None = maybe("group of", example="2")
    """The most students in one group."""
    to_one: WholeAboveZero | None = maybe("students to a supervisor", example="4")
    """The most students to one adult."""
    most: WholeAboveZero | None = maybe("most students", example="10")
    """The most students in the room."""


class BasisShape(CitationShape, Makes[Basis]):
    """Where a statement was read."""


class WatchRuleShape(Shape, Makes[WatchRule]):
    """One row of `supervision.yaml`."""

    hazards: Hazards = needed("hazards", "[hot fat]")
    """The hazards of a part for which it holds. Without any, for all work of the hands."""
    stops: Stops = needed("if broken", "caution")
    """Whether a class that breaks it is stopped or cautioned."""
    stops_minors: Stops = maybe("if broken with minors", False)
    """The same for a class that is open to people under 18."""
    youngest: Whole | None = maybe("youngest")
    """The least age for that work."""
    group_of: WholeAboveZero | None = maybe("group of")
    """The most students in one group."""
    bands: tuple[BandShape, ...] = maybe("students to a supervisor", ())
    """How many students one adult watches, by age."""
    most: WholeAboveZero | None = maybe("most students")
    """The most students in the room."""
    two_adults: YesOrNo = maybe("two adults with minors", False)
    """Whether two adults have to be there where a minor takes part."""
    wear: Texts = maybe("wear", ())
    """What students wear."""
    watchers_wear: Texts = maybe("watchers wear", ())
    """What those who only watch wear."""
    kit: Texts = maybe("kit", ())
    """What has to stand ready."""
    ahead: Text = maybe("ahead", "")
    """What staff do ahead, in words."""
    ahead_below: Whole | None = maybe("weighed ahead below")
    """The age below which staff weigh it ahead."""
    poured_below: Whole | None = maybe("poured by adults below")
    """The age below which an adult pours what is hot, and fills from it."""
    floor: PolicyShape | None = maybe("never laxer than")
    """The laxest numbers that a studio may set in its place."""
    basis: Annotated[tuple[BasisShape, ...], NOT_EMPTY] = needed("from", "[{source: a-source, at: page 112, known: read}]")
    """Where the rule was read."""

    @becomes("bands")
    def _by_age(self, placed: PlacedData) -> tuple[Band, ...]:
        return tuple(sorted(carried(self.bands, placed), key=lambda band: band.from_age))


class WhenShape(Shape):
    """To which classes a piece of advice applies."""

    hazards: Hazards = maybe("hazards", ())
    """It applies to classes with one of these hazards."""
    ready_mixed_in_pairs: YesOrNo | None = maybe("ready mixed in pairs")
    """It applies where lye is ready-mixed and groups are of two at most, or where that is not so."""
    ready_made_base: YesOrNo | None = maybe("ready made base")
    """It applies where each student finishes a ready-made base, or where that is not so."""
    single_portions: YesOrNo | None = maybe("single portions")
    """It applies where each student has a batch, or where that is not so."""
    goal: Annotated[Goal, reads(member_of(Goal))] | None = maybe("goal")
    """It applies to classes with this goal."""


class FormatAdviceShape(Shape, Makes[FormatAdvice]):
    """One row of `format_advice.yaml`."""

    when: WhenShape = needed("when", "{goal: fun}")
    """To which classes it applies; all of it has to hold."""
    suits: Annotated[tuple[Annotated[Format, reads(member_of(Format))], ...], NOT_EMPTY] = needed("suits", "[hands-on]")
    """The formats that suit such a class."""
    because: Text = needed("because", "the reason in a sentence")
    """The reason."""
    source: SourceField = needed("source", "common-practice")
    """The short name of the work, or `common-practice`."""
    at: Text = needed("at", "page 112")
    """Where in it this stands."""
    known: KnownField = needed("known", "read")
    """How it is known."""
