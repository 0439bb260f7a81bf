"""A danger that the words of a step can bring, as a row of `content/tables/unsafe_steps.yaml` tells it."""

from dataclasses import dataclass

from builder.model.recipe.figure import Known, Source
from builder.model.recipe.product import Condition
from builder.model.teaching.word_pattern import WordPattern


@dataclass(frozen=True)
class UnsafeStep:
    """One danger, the patterns that find it, and what the studio reads of it.

    `stops_in` sets the weight for some regions. `near`: one of these stands in the sentence, in the one before it or in the title of the
    part. `part_lacks`: none of these stands in the part. `only`: what holds of the recipe. `younger_than` is the age below which the class
    is open, `from_age` one below which nobody is let in. `unless` in the same sentence turns it off. `told`: also in a sentence that orders
    nothing. `says_no_itself`: about something missing.
    """

    key: str
    stops: bool
    stops_in: dict[str, bool]
    says: tuple[WordPattern, ...]
    in_tools: tuple[WordPattern, ...]
    near: tuple[WordPattern, ...]
    part_lacks: tuple[WordPattern, ...]
    only: frozenset[Condition]
    younger_than: int | None
    from_age: int | None
    unless: tuple[WordPattern, ...]
    told: bool
    says_no_itself: bool
    why: str
    instead: str
    source: Source
    at: str
    known: Known

    def stops_where(self, region: str) -> bool:
        """Tell whether it stops in a region."""
        return self.stops_in.get(region, self.stops)
