"""The shapes of the tables by which prose is judged: `word_groups.yaml`, `unsafe_steps.yaml`, `claims.yaml`."""

from typing import Annotated

from builder.model.finding import Weight
from builder.model.recipe.product import Condition
from builder.model.teaching.claim import Claim
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.read.makes import Makes, becomes
from builder.read.shapes.fields import OneOrMore, RegionField, SourceField, Text, Texts, WholeAboveZero, YesOrNo, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData
from builder.read.values.values import member_of

Kind = Annotated[Weight, reads(member_of(Weight))]


class UnsafeStepShape(Shape, Makes[UnsafeStep]):
    """One row of `unsafe_steps.yaml`."""

    kind: Kind = needed("kind", "stop")
    """Whether such words stop or are a caution."""
    kind_in: dict[str, Kind] = maybe("kind in", {})
    """The same for a region where it differs."""
    says: Texts = maybe("says", ())
    """The words, as patterns."""
    in_tools: Texts = maybe("in tools", ())
    """Words in lists of tools."""
    near: Texts = maybe("near", ())
    """Other words that have to stand near."""
    part_lacks: Texts = maybe("part lacks", ())
    """Words without which the part is unsafe."""
    only: tuple[Annotated[Condition, reads(member_of(Condition))], ...] = maybe("only", ())
    """The kinds of recipe for which it holds."""
    younger_than: WholeAboveZero | None = maybe("younger than")
    """It holds where people below this age come."""
    from_age: WholeAboveZero | None = maybe("from age")
    """It holds where nobody below this age comes."""
    unless: Texts = maybe("unless", ())
    """Words that make it harmless."""
    told: YesOrNo = maybe("told", False)
    """Whether it also counts where it is told and not ordered."""
    says_no_itself: YesOrNo = maybe("says no itself", False)
    """Whether the words are themselves a negation."""
    why: Text = needed("why", "why it is dangerous, in a sentence")
    """Why it is dangerous."""
    instead: Text = needed("instead", "what to write instead")
    """What to write instead."""
    source: SourceField = needed("source", "common-practice")
    """The short name of the work, or `common-practice`."""
    at: Text = needed("at", "page 112")
    """Where in it this stands."""
    known: KnownField = needed("known", "practice")
    """How it is known."""

    @becomes("only")
    def _conditions(self, _: PlacedData) -> frozenset[Condition]:
        return frozenset(self.only)

    @becomes("stops")
    def _stops(self, _: PlacedData) -> bool:
        return self.kind is Weight.STOP

    @becomes("stops_in")
    def _stops_in(self, _: PlacedData) -> dict[str, bool]:
        return {region: kind is Weight.STOP for region, kind in self.kind_in.items()}


class LyeWordsShape(Shape):
    """One row of `lye_words.yaml`."""

    in_titles: OneOrMore = needed("in titles", "[raw soap]")
    """Words in the title of a part that mean lye or raw soap."""
    says: OneOrMore = needed("says", "[pour~ raw soap]")
    """Words in a sentence that mean work with lye or raw soap."""
    unless: Texts = maybe("unless", ())
    """Words that make it harmless."""


class FlameWordsShape(Shape):
    """One row of `flame_words.yaml`."""

    says: OneOrMore = needed("says", "[open flame]")
    """Words in a sentence that speak of it."""
    unless: Texts = maybe("unless", ())
    """Words that mean something else by it."""


class ClaimShape(Shape, Makes[Claim]):
    """One row of `claims.yaml`."""

    says: OneOrMore = needed("says", "[sunscreen]")
    """The words, as patterns."""
    stops_in: tuple[RegionField, ...] = maybe("stops in", ())
    """The regions in which the law forbids them."""
    cautions_in: tuple[RegionField, ...] = maybe("cautions in", ())
    """The regions in which they are doubtful."""
    near: Texts = maybe("near", ())
    """Other words that have to stand near."""
    unless: Texts = maybe("unless", ())
    """Words that make them harmless."""
    only: tuple[Annotated[Condition, reads(member_of(Condition))], ...] = maybe("only", ())
    """The kinds of recipe for which it holds."""
    says_no_itself: YesOrNo = maybe("says no itself", False)
    """Whether the words are themselves a negation."""
    why: Text = needed("why", "why it may not be said, in a sentence")
    """Why it may not be said."""
    instead: Text = needed("instead", "what may be said")
    """What may be said."""
    source: SourceField = needed("source", "common-practice")
    """The short name of the work, or `common-practice`."""
    at: Text = needed("at", "page 112")
    """Where in it this stands."""
    known: KnownField = needed("known", "practice")
    """How it is known."""

    @becomes("only")
    def _conditions(self, _: PlacedData) -> frozenset[Condition]:
        return frozenset(self.only)

    @becomes("stops_in")
    def _stops_in(self, _: PlacedData) -> frozenset[str]:
        return frozenset(self.stops_in)

    @becomes("cautions_in")
    def _cautions_in(self, _: PlacedData) -> frozenset[str]:
        return frozenset(self.cautions_in)
