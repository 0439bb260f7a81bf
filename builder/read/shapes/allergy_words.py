"""The shape of a row of `content/allergy_words.yaml`."""

from typing import Annotated

from builder.model.roster.allergy import Says
from builder.read.shapes.fields import AllergenFamilies, OneOrMore, SourceField, Text, Texts, reads
from builder.read.shapes.figure import KnownField
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.values import member_of


class AllergyWordsShape(Shape):
    """Words that say one thing."""

    words: OneOrMore = needed("words", "[nut, nut allergy]")
    says: Annotated[Says | None, reads(member_of(Says))] = maybe("says", None, "no allergy")
    families: AllergenFamilies = maybe("families", (), "[tree nut]")
    kinds: Texts = maybe("kinds", ())
    but_not: Texts = maybe("but not", ())
    mind: Text = maybe("mind", "")
    source: SourceField = needed("source", "common-practice")
    at: Text = needed("at", "page 112")
    known: KnownField = needed("known", "practice")
