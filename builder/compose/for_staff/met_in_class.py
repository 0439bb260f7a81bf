"""Which hazards a part in class meets only since an earlier part has left them, as people are watched for them, and what staff meet.

Decided: their cautions stand on the sheets of the class at each part in which they are still there. Why: the step that names neither lye
nor soap ("Blend for five seconds") is the one at which somebody takes the goggles off.
"""

from builder.model.hazard import Hazard
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.timed_part import StaffPart, TimedPart
from builder.rules.hazard import heat_left


def met_in_class(plan: ClassPlan, timed: TimedPart) -> tuple[str, ...]:
    """Return the hazards that have not gone since an earlier part; none for what is only read or waited for."""
    if not timed.part.by_hand:
        return timed.met
    left = next((one.lingering for one in plan.supervision.parts if one.number == timed.number), ())
    if not timed.part.steps:
        return ()
    raw = (Hazard.RAW_SOAP,) if Hazard.RAW_SOAP in left else ()
    return (*raw, *heat_left(left, is_soap=bool(raw)))


def met_after_class(plan: ClassPlan, one: StaffPart) -> tuple[str, ...]:
    """Return what staff meet after the class, with raw soap where students have left it and no heading says that there is none."""
    watched = [part for part in plan.supervision.parts if part.by_hand]
    left_raw = bool(watched) and Hazard.RAW_SOAP in watched[-1].hazards
    raw = (Hazard.RAW_SOAP,) if left_raw and one.part.steps and not one.part.no_raw_soap else ()
    return tuple(dict.fromkeys((*one.met, *raw)))
