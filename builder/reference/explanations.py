"""A finding explained: what it means, what it holds back, how it is shown, and, where that is short, the same place when it is sound."""

from dataclasses import dataclass
from functools import cache

from builder.finding_kinds import finding_kinds
from builder.library import CONTENT
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP, ComesAs, FindingKind

EXAMPLES = CONTENT / "reference" / "findings.txt"
SHOWN, SOUND, BEGINS = "shown", "sound", "= "
_HELD = "It is a stop: what it is about is held back until it is mended."
_TOLD = "It is a caution: nothing is held back, and it is printed where it belongs."
_EITHER = "It is a stop or a caution, by how much can happen."
_WORDS: dict[ComesAs, tuple[str, str]] = {
    STOP: (_HELD, "It cannot be accepted."),
    ACCEPTABLE_STOP: (_HELD, "A reason under `accepts:` lifts it."),
    STOP | ACCEPTABLE_STOP: (_HELD, "In the milder case a reason under `accepts:` lifts it."),
    CAUTION: (_TOLD, "A reason under `accepts:` answers it."),
    STOP | CAUTION: (_EITHER, "A reason under `accepts:` answers the caution; the stop cannot be accepted."),
    ACCEPTABLE_STOP | CAUTION: (_EITHER, "A reason under `accepts:` answers either."),
}


@dataclass(frozen=True)
class Explanation:
    """A kind of finding; an example as `stillroom check` prints it, and what stands there when it is sound (empty where that is long)."""

    kind: FindingKind
    shown: str
    sound: str

    @property
    def holds_back(self) -> str:
        """Return in words what the finding does."""
        return _WORDS[self.kind.comes_as][0]

    @property
    def may_be_accepted(self) -> str:
        """Tell whether it can be accepted."""
        return _WORDS[self.kind.comes_as][1]


def explain(name: str) -> Explanation | None:
    """Explain a finding by its name; None where no finding has it."""
    kind = finding_kinds().get(name)
    if kind is None:
        return None
    example = _examples().get(name, {})
    return Explanation(kind, example.get(SHOWN, ""), example.get(SOUND, ""))


def finding_names() -> tuple[str, ...]:
    """Return the names of all findings."""
    return tuple(finding_kinds())


@cache
def _examples() -> dict[str, dict[str, str]]:
    """Read the examples: after a line `= NAME shown` or `= NAME sound` stands what is shown, or what is sound."""
    found: dict[str, dict[str, str]] = {}
    for block in f"\n{EXAMPLES.read_text(encoding='utf-8')}".split(f"\n{BEGINS}")[1:]:
        head, _, text = block.partition("\n")
        name, _, which = head.partition(" ")
        found.setdefault(name, {})[which] = text.strip("\n")
    return found
