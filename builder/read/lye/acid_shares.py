"""What the strength of an acid says of the parts that its label names: the share of the acid, and with it that of its water.

Decided: the strength of an acid is the share of its part of the label name where it is the only part beside water. Why: limits and order
then rest on one figure; among several parts nothing is guessed.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.declaration import WHOLE, Range
from builder.read.text.text_error import TextError
from builder.words.fold import fold

FINDS = (FindingKind("label-rest-unnamed", STOP, "The card names an acid on the label, and not what it is dissolved in."),)

_WATER = "aqua"
# An assay of so much leaves nothing that has to be named (common practice, no source).
_NEARLY_ALL = Fraction(95, 100)


def acid_share(inci: Sequence[str], stated: Mapping[int, Range], purity: Range) -> dict[int, Range]:
    """Return the share of the acid by the number of its part, where nothing is stated and it is the only part beside water.

    Errors: a solution of which the acid alone is named. Raises TextError.
    """
    low, high = (min(end / 100, WHOLE) for end in purity)
    acids = [number for number, name in enumerate(inci) if fold(name) != _WATER]
    if len(acids) != 1 or stated:
        return {}
    # A name such as that of vinegar means the whole of what is sold.
    if len(inci) == 1 and "acid" in fold(inci[0]) and high < _NEARLY_ALL:
        raise TextError(
            "label-rest-unnamed",
            "The label names the acid alone, and by its purity this is a solution: what it is dissolved in has to be declared too.",
            f"Name both, the heavier one first, for example `inci: [Aqua, {inci[0]}]` and `plain: [water, ...]`; or, of crystals that hold "
            f"their water, write `shares: {{{inci[0]}: 100 %}}`.",
            at=("label name", "inci"),
        )
    return {acids[0]: (low, high)} if len(inci) > 1 else {}
