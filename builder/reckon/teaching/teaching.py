"""How a class is taught, from its parts: a demonstration, hands-on, or a demonstration with hands-on parts; and the advice that applies.

A part makes something if it names an amount that is weighed or chosen, or if students have raw soap in their hands. Where no part in
class does, each part with steps counts. What the teacher makes in class is shown; what students make, alone or together with the teacher,
is hands-on. Filling, wrapping and talking decide nothing while something is made in class.

Decided: the format is worked out from the parts, and published as worked out; a claim that differs is a caution. Why: what the page says
is what the lesson does.
"""

from dataclasses import replace

from builder.model.dates.studio_class import BatchFor, Format, StudioClass
from builder.model.recipe.ingredient import CountsAs
from builder.model.studio import Studio
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.lesson import Part, Where, Who
from builder.model.teaching.teaching import FormatAdvice, Taught, Teaching
from builder.reckon.lye.lye_course import parts_with_dry_lye
from builder.reckon.teaching.handling import Handled, batch_of, handled_in, handles_lye, has_steps, hazards_in


def with_teaching(studio: Studio, studio_class: StudioClass, made: tuple[MadeProduct, ...]) -> tuple[tuple[MadeProduct, ...], Teaching]:
    """Work out who makes each product, the format of the class, and which advice applies."""
    parts = [part for part in studio_class.lesson.parts if part.where is not Where.HOME_ONLY and part.who is not Who.WAITING]
    handled = [(part, handled_in(studio, part, batch_of(made, part))) for part in parts]
    made = tuple(
        replace(one, taught=_taught(studio, one, [(part, what) for part, what in handled if batch_of(made, part) is one.batch]))
        for one in made
    )
    with_dry_lye = parts_with_dry_lye(studio, studio_class.lesson, made)
    hazards = {hazard for part in parts for hazard in hazards_in(studio, part, batch_of(made, part), with_dry_lye)}
    applying = tuple(advice for advice in studio.format_advice.values() if _applies(advice, studio_class, made, hazards))
    return made, Teaching(format_of([(part, what) for part, what in handled if part.in_class_time]), applying)


def format_of(parts: list[tuple[Part, Handled]]) -> Format:
    """Return the format that the parts in class come to."""
    making = [part for part, what in parts if what.makes]
    making = making or [part for part, _ in parts if has_steps(part)]
    if not any(part.by_hand for part in making):
        return Format.DEMO
    return Format.DEMO_WITH_HANDS_ON_PARTS if any(part.who is Who.TEACHER for part in making) else Format.HANDS_ON


def _taught(studio: Studio, made: MadeProduct, parts: list[tuple[Part, Handled]]) -> Taught:
    def any_by(*who: Who) -> bool:
        return any(what.mixes for part, what in parts if part.who in who)

    return Taught(
        ahead=any_by(Who.AHEAD),
        shown=any_by(Who.TEACHER),
        together=any_by(Who.TOGETHER),
        by_students=any_by(Who.STUDENTS),
        chosen=any(what.chosen for part, what in parts if part.by_hand),
        filled=any(what.fills for part, what in parts if part.by_hand),
        lye_by=frozenset(part.who for part, _ in parts if handles_lye(studio, part, made.batch)),
    )


def _applies(advice: FormatAdvice, studio_class: StudioClass, made: tuple[MadeProduct, ...], hazards: set[str]) -> bool:
    base = any(line.ingredient.counts_as is CountsAs.BASE for one in made for line in one.batch.lines)
    lyes = [one.batch.recipe.lye for one in made if one.batch.recipe.lye]
    in_pairs = bool(lyes) and all(lye.ready_mixed for lye in lyes) and 1 < studio_class.group_size <= 2
    single = all(one.make.batch_for is BatchFor.STUDENT for one in made)
    return (
        (not advice.hazards or any(hazard in hazards for hazard in advice.hazards))
        and advice.ready_mixed_in_pairs in (None, in_pairs)
        and advice.ready_made_base in (None, base)
        and advice.single_portions in (None, single)
        and advice.goal in (None, studio_class.goal)
    )
