"""The shapes of the tables by which prose is judged: `word_groups.yaml`, `unsafe_steps.yaml`, `claims.yaml`."""

from typing import Annotated

from builder.read.shapes.fields import OneOrMore, SourceField, Text, Texts, WholeAboveZero, YesOrNo, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import word_of

CONDITIONS = ("lye", "no lye", "unpreserved", "fizz", "wet", "bath", "scrub", "scented", "oily", "uncured", "animal")
Kind = Annotated[str, reads(word_of("stop", "caution"))]


class UnsafeStepShape(Shape):
    """One row of `unsafe_steps.yaml`."""

    kind: Kind = needed("kind", "stop")
    kind_in: dict[str, Kind] = maybe("kind in", {}, "{EU: stop}")
    says: Texts = maybe("says", ())
    in_tools: Texts = maybe("in tools", ())
    near: Texts = maybe("near", ())
    part_lacks: Texts = maybe("part lacks", ())
    only: tuple[Annotated[str, reads(word_of(*CONDITIONS))], ...] = maybe("only", ())
    younger_than: WholeAboveZero | None = maybe("younger than")
    unless: Texts = maybe("unless", ())
    told: YesOrNo = maybe("told", False)
    says_no_itself: YesOrNo = maybe("says no itself", False)
    why: Text = needed("why", "why it is dangerous, in a sentence")
    instead: Text = needed("instead", "what to write instead")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "page 112")
    known: KnownField = needed("known", "practice")


class LyeWordsShape(Shape):
    """One row of `lye_words.yaml`."""

    in_titles: OneOrMore = needed("in titles", "[raw soap]")
    says: OneOrMore = needed("says", "[pour~ raw soap]")
    unless: Texts = maybe("unless", ())


class ClaimShape(Shape):
    """One row of `claims.yaml`."""

    says: OneOrMore = needed("says", "[sunscreen]")
    stops_in: Texts = maybe("stops in", (), "[US, EU]")
    cautions_in: Texts = maybe("cautions in", (), "[Canada]")
    near: Texts = maybe("near", ())
    unless: Texts = maybe("unless", ())
    only: tuple[Annotated[str, reads(word_of(*CONDITIONS))], ...] = maybe("only", ())
    says_no_itself: YesOrNo = maybe("says no itself", False)
    why: Text = needed("why", "why it may not be said, in a sentence")
    instead: Text = needed("instead", "what may be said")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "page 112")
    known: KnownField = needed("known", "practice")
