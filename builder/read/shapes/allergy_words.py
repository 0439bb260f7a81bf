"""The shape of a row of `content/allergy_words.yaml`."""

from typing import Annotated

from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.roster.allergy import AllergyWords, Says
from builder.read.makes import Makes
from builder.read.shapes.fields import AllergenFamilies, OneOrMore, SourceField, Text, Texts, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import member_of


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
