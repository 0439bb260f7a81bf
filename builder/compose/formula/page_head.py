"""What stands at the head of a page onto which a part of a lesson runs: its name, and the cautions that hold on."""

from collections.abc import Iterable, Sequence

from builder.compose.formula.hazards import DANGER
from builder.words.say import say, say_count

# So many letters fit into the head of every sheet, in large print too: more would be cut off by the edge of the paper.
_HEAD = 160


def at_the_head(goes_on: str, warns: Sequence[tuple[str, str]]) -> str:
    """Say which part goes on, with its cautions, each signal word once. Of what does not fit the number is told; dangers come first."""
    dangers = [one for one in warns if one[0] == say(DANGER)]
    by_weight = [*dangers, *(one for one in warns if one not in dangers)]
    for named in range(len(warns), 0, -1):
        told = [one for one in warns if one in by_weight[:named]]
        left = len(warns) - named
        more = (
            say_count("{count} more caution stands at its beginning.", "{count} more cautions stand at its beginning.", left)
            if left
            else ""
        )
        line = " ".join((goes_on, *_warnings(told), *([more] if more else ())))
        if len(line) <= _HEAD:
            return line
    return goes_on


def _warnings(warns: Iterable[tuple[str, str]]) -> Iterable[str]:
    """Name the cautions of a part, each signal word once."""
    names: dict[str, list[str]] = {}
    for word, name in warns:
        names.setdefault(word, []).append(f"{name}.")
    return (" ".join((word, *named)) for word, named in names.items())
