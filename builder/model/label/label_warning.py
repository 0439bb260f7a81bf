"""A warning that a label must or should bear: for which products, whose rule it is, and its words."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.hazard import Hazard
from builder.model.place import NOWHERE, Place
from builder.model.recipe.figure import Known, Source
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.words.fold import fold


class Because(StrEnum):
    """Whose rule a warning is."""

    LAW = "law"
    GUIDANCE = "guidance"
    PRACTICE = "practice"


@dataclass(frozen=True)
class WarningRule:
    """One row of the table of label warnings. An empty tuple, or an empty text, narrows nothing.

    It holds for a product of these regions, kinds, and places of contact, that has an ingredient of one of these kinds, names (folded) or
    hazards. `made_with_lye` false leaves out soap made with lye. A text that says one of `unless_said` already says it.
    """

    regions: tuple[str, ...]
    products: tuple[str, ...]
    contact: tuple[str, ...]
    kinds: tuple[IngredientKind, ...]
    names: tuple[str, ...]
    hazards: tuple[Hazard, ...]
    made_with_lye: bool
    wording: str
    unless_said: tuple[str, ...]
    because: Because
    source: Source
    at: str
    known: Known
    place: Place = field(default=NOWHERE, compare=False)

    def is_said_in(self, texts: Iterable[str]) -> bool:
        """Tell whether the recipe's own words already warn of it. Wording that a law prescribes is only said by itself."""
        said = fold(" ".join(texts))
        if self.because is Because.LAW:
            return fold(self.wording) in said
        return any(word in said for word in self.unless_said)
