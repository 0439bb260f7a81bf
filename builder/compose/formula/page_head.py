"""What stands at the head of a page onto which a part of a lesson runs: its name, and the cautions that hold on."""

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from builder.compose.formula.hazards import DANGER
from builder.words.say import say, say_count

# So many letters fit: in three lines of the large print, and in two of the sheets for staff and bench. More would come nearer to the edge
# of the paper than printers reach. On the take-home sheet the cautions themselves stand there.
AT_HOME, IN_LARGE_PRINT, IN_CLASS = 0, 200, 160
NOTHING: Mapping[str, str] = MappingProxyType({})


def at_the_head(goes_on: str, warns: Sequence[tuple[str, str]], most: int, in_short: Mapping[str, str] = NOTHING) -> str:
    """Return in words which part goes on, with its cautions, each signal word once; beyond `most` letters counted, dangers last.

    Where letters are left, what `in_short` says of the danger of a name stands behind it.
    """
    line = _named_at_the_head(goes_on, warns, most)
    for name, words in in_short.items():
        longer = line.replace(f"{name}.", f"{name}. {words}", 1)
        line = longer if len(longer) <= most else line
    return line


def _named_at_the_head(goes_on: str, warns: Sequence[tuple[str, str]], most: int) -> str:
    dangers = [one for one in warns if one[0] == say(DANGER)]
    by_weight = [*dangers, *(one for one in warns if one not in dangers)]
    for named in range(len(warns), 0, -1):
        told = [one for one in warns if one in by_weight[:named]]
        left = len(warns) - named
        more = say_count("{count} more caution belongs to it.", "{count} more cautions belong to it.", left) if left else ""
        line = " ".join((goes_on, *_warnings(told), *([more] if more else ())))
        if len(line) <= most:
            return line
    return goes_on


def _warnings(warns: Iterable[tuple[str, str]]) -> Iterable[str]:
    """Name the cautions of a part, each signal word once."""
    names: dict[str, list[str]] = {}
    for word, name in warns:
        names.setdefault(word, []).append(f"{name}.")
    return (" ".join((word, *named)) for word, named in names.items())
