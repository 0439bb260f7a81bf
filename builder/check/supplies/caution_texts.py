"""A caution on the studio's shelf that says less than the one of ours that it is in place of.

Decided: whatever stands in one of ours has to stand in it word for word, and more may. First aid that is gone, a weaker signal word and
another hazard stop; what can happen and how to avoid it, said otherwise, is a caution. Why: nobody here can judge whether other words say
the same, and a sheet without them is read by somebody with lye in the eye.
"""

import re
from collections.abc import Iterator

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.studio import Studio
from builder.model.teaching.caution import CautionText
from builder.words.fold import fold
from builder.words.spelling import american

_END = re.compile(r"(?<=[.!?])\s+")


@rule_on(
    STUDIO,
    FindingKind(
        "caution-weakened", STOP, "A caution of the studio leaves out first aid of ours, or has a weaker signal word or another hazard."
    ),
    FindingKind("caution-says-less", CAUTION, "A caution of the studio leaves out what ours says of a danger or of how to avoid it."),
)
def find_weakened_cautions(studio: Studio) -> Iterator[Finding]:
    """Compare each caution of the studio with the one of ours that it is in place of."""
    for own in studio.cautions.values():
        if own.in_place_of is not None:
            yield from _compared(own, own.in_place_of)


def _compared(own: CautionText, ours: CautionText) -> Iterator[Finding]:
    if own.signal.rank > ours.signal.rank:
        wrong = f'The caution "{ours.name}" has here the signal word "{own.signal}", which is weaker than its own, "{ours.signal}".'
        yield stop("caution-weakened", own.at("signal"), wrong, f"Write `signal: {ours.signal}`, or leave the line out.")
    if fold(own.hazard) != fold(ours.hazard):
        wrong = f'The caution "{ours.name}" would no longer come to the sheets of what brings the hazard "{ours.hazard}".'
        remedy = f"Leave the line out. A caution for another hazard is a file of another name than {ours.key}.yaml."
        yield stop("caution-weakened", own.at("hazard"), wrong, remedy)
    for key, said, before in (
        ("if it happens", own.if_it_happens, ours.if_it_happens),
        ("in brief", (own.in_brief,), (ours.in_brief,)),
    ):
        if gone := _gone(said, before):
            wrong = f'The caution "{ours.name}" leaves out here what to do when it has happened: {gone}'
            remedy = f"Put that in again word for word; your own may stand beside it. If you leave out `{key}:`, ours holds."
            yield stop("caution-weakened", own.at(key), wrong, remedy)
    for key, said, before in (
        ("what", (own.what,), (ours.what,)),
        ("avoid", own.avoid, ours.avoid),
        ("gear", own.gear, ours.gear),
        ("again", (own.again,), (ours.again,)),
    ):
        if gone := _gone(said, before):
            wrong = f'The caution "{ours.name}" leaves out here: {gone}'
            remedy = "Put that in again; your own may stand beside it. If yours says the same, accept this in studio.yaml with the reason."
            yield caution("caution-says-less", own.at(key), wrong, remedy)


def _gone(said: tuple[str, ...], before: tuple[str, ...]) -> str:
    """Return the sentences of a text that do not stand in another, in whichever spelling; empty where all do."""
    now = _plain(" ".join(said))
    return " ".join(f'"{one}"' for text in before for one in _END.split(text) if one and _plain(one) not in now)


def _plain(text: str) -> str:
    return " ".join(fold(american(text)).split())
