"""The shapes of `supervision.yaml`, of `format_advice.yaml`, and of the teaching policy in `studio.yaml`."""

from typing import Annotated

from builder.model.dates.studio_class import Format
from builder.read.shapes.fields import NOT_EMPTY, SourceField, Text, Texts, Whole, WholeAboveZero, YesOrNo, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.library import CitationShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import member_of, word_of


class BandShape(Shape):
    """How many students one adult watches from an age on."""

    from_age: Whole = needed("from age", "13")
    students: WholeAboveZero = needed("students", "8")


class PolicyShape(Shape):
    """What a studio sets instead of a rule's own numbers."""

    youngest: Whole | None = maybe("youngest", example="18")
    group_of: WholeAboveZero | None = maybe("group of", example="2")
    to_one: WholeAboveZero | None = maybe("students to a supervisor", example="4")
    most: WholeAboveZero | None = maybe("most students", example="10")


class WatchRuleShape(Shape):
    """One row of `supervision.yaml`."""

    hazards: Texts = needed("hazards", "[hot fat]")
    if_broken: Annotated[str, reads(word_of("stop", "caution"))] = needed("if broken", "caution")
    if_broken_with_minors: Annotated[str, reads(word_of("stop", "caution"))] = maybe("if broken with minors", "caution")
    youngest: Whole | None = maybe("youngest")
    group_of: WholeAboveZero | None = maybe("group of")
    bands: tuple[BandShape, ...] = maybe("students to a supervisor", ())
    most: WholeAboveZero | None = maybe("most students")
    two_adults: YesOrNo = maybe("two adults with minors", False)
    wear: Texts = maybe("wear", ())
    watchers_wear: Texts = maybe("watchers wear", ())
    kit: Texts = maybe("kit", ())
    ahead: Text = maybe("ahead", "")
    ahead_below: Whole | None = maybe("weighed ahead below")
    floor: PolicyShape | None = maybe("never laxer than")
    basis: Annotated[tuple[CitationShape, ...], NOT_EMPTY] = needed("from", "[{source: a-source, at: page 112, known: read}]")


class WhenShape(Shape):
    """To which classes a piece of advice applies."""

    hazards: Texts = maybe("hazards", ())
    ready_mixed_in_pairs: YesOrNo | None = maybe("ready mixed in pairs")
    ready_made_base: YesOrNo | None = maybe("ready made base")
    single_portions: YesOrNo | None = maybe("single portions")
    goal: Text | None = maybe("goal")


class FormatAdviceShape(Shape):
    """One row of `format_advice.yaml`."""

    when: WhenShape = needed("when", "{goal: fun}")
    suits: Annotated[tuple[Annotated[Format, reads(member_of(Format))], ...], NOT_EMPTY] = needed("suits", "[hands-on]")
    because: Text = needed("because", "the reason in a sentence")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "page 112")
    known: KnownField = needed("known", "read")
