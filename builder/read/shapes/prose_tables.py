"""The shapes of the tables by which words are judged: `unsafe_steps.yaml`, `claims.yaml` and others, and `allergy_words.yaml`."""

from typing import Annotated

from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Condition
from builder.model.roster.allergy import AllergyWords, Says
from builder.model.teaching.claim import Claim
from builder.model.teaching.unsafe_step import UnsafeStep
from builder.read.makes import Makes
from builder.read.shapes.fields import (
    AllergenFamilies,
    OneOrMore,
    RegionField,
    SourceField,
    Stops,
    Text,
    Texts,
    WholeAboveZero,
    YesOrNo,
    reads,
)
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import member_of


class UnsafeStepShape(Shape, Makes[UnsafeStep]):
    """One row of `unsafe_steps.yaml`."""

    stops: Stops = needed("kind", "stop")
    """Whether such words stop or are a caution."""
    stops_in: dict[str, Stops] = maybe("kind in", {})
    """The same for a region where it differs."""
    says: Texts = maybe("says", ())
    """The words, as patterns."""
    in_tools: Texts = maybe("in tools", ())
    """Words in lists of tools."""
    near: Texts = maybe("near", ())
    """Other words that have to stand near."""
    part_lacks: Texts = maybe("part lacks", ())
    """Words without which the part is unsafe."""
    only: frozenset[Annotated[Condition, reads(member_of(Condition))]] = maybe("only", frozenset())
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
    stops_in: frozenset[RegionField] = maybe("stops in", frozenset())
    """The regions in which the law forbids them."""
    cautions_in: frozenset[RegionField] = maybe("cautions in", frozenset())
    """The regions in which they are doubtful."""
    near: Texts = maybe("near", ())
    """Other words that have to stand near."""
    unless: Texts = maybe("unless", ())
    """Words that make them harmless."""
    only: frozenset[Annotated[Condition, reads(member_of(Condition))]] = maybe("only", frozenset())
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


class AllergyWordsShape(Shape, Makes[AllergyWords]):
    """Words that say one thing."""

    words: OneOrMore = needed("words", "[nut, nut allergy]")
    """The words that people write."""
    says: Annotated[Says | None, reads(member_of(Says))] = maybe("says", None, "no allergy")
    """What they say where they name no allergen."""
    families: AllergenFamilies = maybe("families", (), "[tree nut]")
    """The families of allergens that are meant."""
    kinds: tuple[Annotated[IngredientKind, reads(member_of(IngredientKind))], ...] = maybe("kinds", (), example="[essential oil]")
    """The kinds of ingredient that are meant."""
    but_not: Texts = maybe("but not", (), example="[nutmeg]")
    """Names that hold one of the words and are not meant."""
    mind: Text = maybe("mind", "", example="Traces are not on any card.")
    """What no card can show, in a sentence for the teacher."""
    source: SourceField = needed("source", "common-practice")
    """The short name of the work, or `common-practice`."""
    at: Text = needed("at", "page 112")
    """Where in it this stands."""
    known: KnownField = needed("known", "practice")
    """How it is known."""
