"""What has to be ready for a class beside what is weighed, from its recipes' tools and the gear that the policy asks for.

Decided: work after the class begins when the class ends by its length, not when its last part ends. Why: students leave then, and a
caution tells of minutes that are not planned.

Decided: what is done ahead on the day ends when the class begins. Why: the clock of the morning can be read off backwards.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence

from builder.model.dates.studio_class import BatchFor, StudioClass
from builder.model.teaching.caution import CautionText
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.preparation import Preparation, Worn
from builder.model.teaching.supervision import Supervision, WatchedPart, WatchRule
from builder.rules.hands.gear import STRONGER, is_gear, kind_of

# What everybody has of their own; of mitts there is a pair at each pot.
GEAR = ("goggles", "gloves", "apron", "mask")
MITTS = "mitts"
MITTS_AT_POTS = "a pair of oven mitts at each pot"

Gear = Mapping[str, Sequence[str]]


def gear_by_hazard(cautions: Iterable[CautionText]) -> Gear:
    """Return what cautions ask people to put on, by the hazard of which they speak."""
    return {text.hazard: text.gear for text in cautions}


def reckon_preparation(
    studio_class: StudioClass,
    made: tuple[MadeProduct, ...],
    students: int,
    supervision: Supervision,
    gear: Gear,
    home_scales: Collection[str] = (),
) -> Preparation:
    """Work out what has to be ready for so many students; `gear` is what cautions ask for beside the rules, by hazard.

    `home_scales` are the names of scales that people have at home and the studio has not: of its own the weighings say which.
    """
    # One batch for all is made at the demo table; what people then need at their places is for the class to say.
    by_hand = [one for one in made if one.taught.by_students or one.taught.together]
    hands = [one for one in by_hand if one.make.batch_for is not BatchFor.CLASS]
    demo = [one for one in made if one not in hands]
    kit = tuple(dict.fromkeys(thing for part in supervision.parts for rule in part.rules for thing in rule.kit))
    worn = worn_by(supervision, students, gear)
    everybody = students + supervision.staff
    worn += _worn_by_recipes({everybody: by_hand, supervision.staff: made}, worn)
    return Preparation(
        worn=worn,
        kit=(*kit, *_at_pots(supervision, gear, kit)),
        at_benches=studio_class.on_each_bench or _tools(hands, home_scales),
        at_demo=studio_class.on_the_demo_table or _tools(demo, home_scales),
        at_sink=studio_class.at_the_sink,
    )


def _tools(made: Iterable[MadeProduct], not_there: Collection[str]) -> tuple[str, ...]:
    """Return the tools of some recipes, without what people wear and what is `not_there`."""
    tools = (tool for one in made for tool in one.batch.recipe.tools)
    return tuple(dict.fromkeys(tool for tool in tools if tool not in not_there and not is_gear(tool, GEAR)))


def _worn_by_recipes(made_by: Mapping[int, Iterable[MadeProduct]], worn: Iterable[Worn]) -> tuple[Worn, ...]:
    """Count what recipes list to put on and no rule asks for, as an apron: for as many people as make them, most first."""
    kinds = {kind_of(one.item) for one in worn}
    found: dict[str, Worn] = {}
    for people, made in made_by.items():
        for tool in (tool for one in made for tool in one.batch.recipe.tools if is_gear(tool, GEAR)):
            if kind_of(tool) not in kinds:
                found.setdefault(kind_of(tool), Worn(tool, people))
    return tuple(found.values())


def worn_by(supervision: Supervision, students: int, gear: Gear) -> tuple[Worn, ...]:
    """Count gear: everybody wears what a part of the students' hands asks for, and what those who watch wear; the staff all of it."""
    everybody = students + supervision.staff
    counts: dict[str, int] = {}
    for part in supervision.parts:
        working = everybody if part.by_hand else supervision.staff
        asked = [pair for rule in part.rules for pair in _gear(rule, working, everybody)]
        asked += [(item, working) for item in _of_cautions(part, gear) if kind_of(item) != MITTS]
        for item, people in asked:
            counts[item] = max(people, counts.get(item, people))
    return tuple(Worn(item, people) for item, people in counts.items() if not _weaker(item, people, counts))


def _of_cautions(part: WatchedPart, gear: Gear) -> Iterable[str]:
    return (item for hazard in part.hazards for item in gear.get(hazard, ()))


def _at_pots(supervision: Supervision, gear: Gear, kit: Iterable[str]) -> tuple[str, ...]:
    """Return the mitts that cautions ask for and no rule has out already."""
    asked = any(kind_of(item) == MITTS for part in supervision.parts for item in _of_cautions(part, gear))
    return (MITTS_AT_POTS,) if asked and not any(is_gear(thing, [MITTS]) for thing in kit) else ()


def _gear(rule: WatchRule, working: int, everybody: int) -> Iterable[tuple[str, int]]:
    yield from ((item, working) for item in rule.wear)
    yield from ((item, everybody) for item in rule.watchers_wear)


def _weaker(item: str, people: int, counts: dict[str, int]) -> bool:
    """Tell whether everybody who needs an item wears a stronger one of its kind: chemical splash goggles stand for goggles."""
    return any(counts.get(stronger, 0) >= people for stronger in STRONGER.get(item, ()))
