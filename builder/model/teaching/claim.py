"""Words that make a medicine, a biocide or a false promise of a cosmetic, as a row of `content/tables/claims.yaml` tells them."""

from dataclasses import dataclass

from builder.model.finding import Weight
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.product import Condition
from builder.model.teaching.word_pattern import WordPattern


@dataclass(frozen=True)
class Claim:
    """One kind of claim, the patterns that find it, and what may be said instead. Regions are those of the label rules."""

    key: str
    says: tuple[WordPattern, ...]
    stops_in: frozenset[str]
    cautions_in: frozenset[str]
    near: tuple[WordPattern, ...]
    unless: tuple[WordPattern, ...]
    only: frozenset[Condition]
    says_no_itself: bool
    why: str
    instead: str
    source: Source
    at: str
    known: Known

    def weight_in(self, region: str) -> Weight | None:
        """Return its weight in a region, without a region the strictest; None where the words are fine."""
        if region in self.stops_in or (not region and self.stops_in):
            return Weight.STOP
        return Weight.CAUTION if region in self.cautions_in or (not region and self.cautions_in) else None


@dataclass(frozen=True)
class ClaimRules:
    """The claims, and the words by which a sentence speaks about claims and makes none."""

    claims: tuple[Claim, ...] = ()
    about_claims: tuple[WordPattern, ...] = ()
