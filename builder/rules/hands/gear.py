"""What people put on: which of two pieces does what the other does, and which pieces a list of tools names already.

Decided: gear that a caution asks for is listed without being asked for. Why: a list of tools that somebody writes forgets what a sheet then
tells to put on.
"""

import re
from collections.abc import Iterable, Sequence

# A piece, and those of its kind that do all that it does, and more (common practice, no source).
STRONGER = {"goggles": ("chemical splash goggles",), "nitrile gloves": ("lye-resistant gloves",)}


def kind_of(piece: str) -> str:
    """Return what a piece of gear is, without what it is made of or made for: `goggles` of `chemical splash goggles`."""
    return piece.split()[-1]


def is_gear(tool: str, kinds: Iterable[str]) -> bool:
    """Tell whether a tool is a piece of gear of some kinds: `oven mitts` are mitts."""
    return not set(kinds).isdisjoint(re.findall(r"\w+", tool))


def strongest(pieces: Iterable[str]) -> tuple[str, ...]:
    """Return each piece once, without those for which a stronger one is among them."""
    once = tuple(dict.fromkeys(pieces))
    return tuple(piece for piece in once if not any(stronger in once for stronger in STRONGER.get(piece, ())))


def tools_with_gear(tools: Sequence[str], gear: Iterable[str]) -> tuple[str, ...]:
    """Return the gear that no tool names, then the tools, without the weaker piece where a stronger one is needed."""
    needed = strongest(gear)
    kept = tuple(tool for tool in tools if not any(stronger in needed for stronger in STRONGER.get(tool, ())))
    return (*(piece for piece in needed if not any(is_gear(tool, [kind_of(piece)]) for tool in kept)), *kept)
