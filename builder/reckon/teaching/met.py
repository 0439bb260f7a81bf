"""Which hazards are met in each part of a class beyond those of its amounts: ahead, in class, and after it.

In a part of the staff these are what its words say, and what an earlier part has left (`reckon/teaching/bench.py`), whoever did that
part; in one of the students' hands what has not gone since an earlier one, as people are watched for it.

Decided: lye that was mixed ahead stands marked and covered, and is no raw soap until something says that it met fat. Why: who then sets
benches or weighs oils has none before them, and a false caution costs the trust that saves somebody later.

Decided: cautions of what was left stand on the sheets of the class at each part in which it is still there. Why: the step that names
neither lye nor soap ("Blend for five seconds") is the one at which somebody takes the goggles off.

Decided: what was melted ahead is hot for a part of the class that pours, fills or has something hot in hand, as it is for students.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import groupby

from builder.model.hazard import Hazard
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import Part
from builder.model.teaching.supervision import Supervision
from builder.model.teaching.timed_part import StaffPart, TimedPart
from builder.reckon.teaching.bench import Bench
from builder.reckon.teaching.handling import batch_of
from builder.rules.clauses import is_order
from builder.rules.hazard import cold_parts, heat_left, is_of_heat
from builder.rules.pouring import pours_in

Met = dict[int, tuple[str, ...]]


def with_met(
    studio: Studio,
    made: tuple[MadeProduct, ...],
    supervision: Supervision,
    ahead: tuple[StaffPart, ...],
    timeline: tuple[TimedPart, ...],
    after: tuple[StaffPart, ...],
) -> tuple[tuple[StaffPart, ...], tuple[TimedPart, ...], tuple[StaffPart, ...]]:
    """Return the parts ahead, on the clock and after the class, each with the hazards that whoever does it meets in it.

    `supervision` says what lingers on the benches of the students.
    """
    met: Met = {}
    for one in made:
        batch = one.batch
        before, clock, later = (_of(batch, made, parts) for parts in (ahead, timeline, after))
        hot = _ahead(studio, batch, before, met)
        _in_class(studio, batch, clock, later, hot, met)
    return (
        tuple(replace(one, met=met[id(one.part)]) for one in ahead),
        tuple(replace(one, met=_by_hand(one, supervision) if one.part.by_hand else met[id(one.part)]) for one in timeline),
        tuple(replace(one, met=tuple(dict.fromkeys((*met[id(one.part)], *_left_raw(one.part, supervision))))) for one in after),
    )


def _by_hand(timed: TimedPart, supervision: Supervision) -> tuple[str, ...]:
    """Return the hazards that have not gone since an earlier part; none for what is only read."""
    if not timed.part.steps:
        return ()
    left = next((one.lingering for one in supervision.parts if one.number == timed.number), ())
    raw = (Hazard.RAW_SOAP,) if Hazard.RAW_SOAP in left else ()
    return (*raw, *heat_left(left, is_soap=bool(raw)))


def _left_raw(part: Part, supervision: Supervision) -> tuple[str, ...]:
    """Return raw soap where students have left it to the staff, and no heading says that there is none."""
    watched = [one for one in supervision.parts if one.by_hand]
    left = bool(watched) and Hazard.RAW_SOAP in watched[-1].hazards
    return (Hazard.RAW_SOAP,) if left and part.steps and not part.no_raw_soap else ()


def _of(batch: WorkedBatch, made: tuple[MadeProduct, ...], parts: Iterable[StaffPart | TimedPart]) -> list[Part]:
    return [one.part for one in parts if batch_of(made, one.part) is batch]


def _ahead(studio: Studio, batch: WorkedBatch, parts: Sequence[Part], met: Met) -> tuple[str, ...]:
    """Work through what is done ahead, each day by itself; give what is hot when the class begins."""
    bench = Bench(studio, batch, lye_stands=True)
    cold = {id(part) for part in cold_parts(parts)}
    for day, mine in groupby(parts, key=lambda part: part.days_before):
        bench = Bench(studio, batch, lye_stands=True, day=-day)
        for part in mine:
            met[id(part)] = bench.work(part, is_cold=id(part) in cold)
    return bench.hot if bench.day == 0 else ()


def _in_class(studio: Studio, batch: WorkedBatch, clock: Sequence[Part], later: Sequence[Part], hot: tuple[str, ...], met: Met) -> None:
    """Work through the class and what follows it, on one bench."""
    bench = Bench(studio, batch)
    cold = {id(part) for part in cold_parts((*clock, *later))}
    for part in (*clock, *later):
        if hot and (pours_in(part) or any(is_order(one) and is_of_heat(one) for one in part.sentences)):
            bench.hot, hot = (*bench.hot, *hot), ()
        met[id(part)] = bench.work(part, is_cold=id(part) in cold)
