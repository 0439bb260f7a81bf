"""Which parts of a lesson come before anything is hot: a caution about heat belongs where the heat is.

Decided: only what stands before the first part that speaks of heat in any way counts as cold. Once something has been warm, or where no
part says so, the caution stays with every amount of what is heated: too often is the safe side.
"""

import re
from collections.abc import Sequence

from builder.model.teaching.lesson import Part

_OF_HEAT = re.compile(
    r"\b(?:warm|heat|hot|melt|boil|simmer|scald|cook|steam|stove|burner|microwave|oven|bain|double boiler|water bath|flame|mitts?)\w*|°",
    re.IGNORECASE,
)


def speaks_of_heat(part: Part) -> bool:
    """Say whether any sentence of a part, or its heading, speaks of heat."""
    return any(_OF_HEAT.search(sentence.words) for sentence in part.sentences)


def cold_parts(parts: Sequence[Part]) -> tuple[Part, ...]:
    """Give the parts that come before the first that speaks of heat; none where no part does."""
    first = next((place for place, part in enumerate(parts) if speaks_of_heat(part)), 0)
    return tuple(parts[:first])
