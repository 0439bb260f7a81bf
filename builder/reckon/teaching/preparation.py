"""What has to be ready for a class beside what is weighed, from its recipes' tools and the gear that the policy asks for.

Decided: work after the class begins when the class ends by its length, not when its last part ends. Why: students leave then, and a
caution tells of minutes that are not planned.

Decided: what is done ahead on the day ends when the class begins. Why: the clock of the morning can be read off backwards.
"""

from collections.abc import Iterable

from builder.model.dates.studio_class import BatchFor, StudioClass
from builder.model.teaching.class_plan import MadeProduct
from builder.model.teaching.preparation import Preparation, Worn
from builder.model.teaching.supervision import Supervision, WatchRule

GEAR = ("goggles", "gloves", "apron", "mask")


def reckon_preparation(studio_class: StudioClass, made: tuple[MadeProduct, ...], students: int, supervision: Supervision) -> Preparation:
    """Work out what has to be ready for so many students."""
    # One batch for all is made at the demo table; what people then need at their places is for the class to say.
    by_hand = [one for one in made if one.taught.by_students or one.taught.together]
    hands = [one for one in by_hand if one.make.batch_for is not BatchFor.CLASS]
    demo = [one for one in made if one not in hands]
    every = [rule for part in supervision.parts for rule in part.rules]
    return Preparation(
        worn=worn_by(supervision, students),
        kit=tuple(dict.fromkeys(thing for rule in every for thing in rule.kit)),
        at_benches=studio_class.on_each_bench or _tools(hands),
        at_demo=studio_class.on_the_demo_table or _tools(demo),
        at_sink=studio_class.at_the_sink,
    )


def _tools(made: Iterable[MadeProduct]) -> tuple[str, ...]:
    """Return the tools of some recipes, without what people wear."""
    tools = (tool for one in made for tool in one.batch.recipe.tools)
    return tuple(dict.fromkeys(tool for tool in tools if not any(word in GEAR for word in tool.split())))


def worn_by(supervision: Supervision, students: int) -> tuple[Worn, ...]:
    """Count gear: everybody wears what a part of the students' hands asks for, and what those who watch wear; the staff all of it."""
    everybody = students + supervision.staff
    counts: dict[str, int] = {}
    for part in supervision.parts:
        for rule in part.rules:
            for item, people in _gear(rule, everybody if part.by_hand else supervision.staff, everybody):
                counts[item] = max(counts.get(item, 0), people)
    return tuple(Worn(item, people) for item, people in counts.items() if not _weaker(item, people, counts))


def _gear(rule: WatchRule, working: int, everybody: int) -> Iterable[tuple[str, int]]:
    yield from ((item, working) for item in rule.wear)
    yield from ((item, everybody) for item in rule.watchers_wear)


def _weaker(item: str, people: int, counts: dict[str, int]) -> bool:
    """Tell whether everybody who needs an item wears a stronger one of its kind: chemical splash goggles stand for goggles."""
    stronger = {"goggles": "chemical splash goggles", "nitrile gloves": "lye-resistant gloves"}.get(item)
    return stronger is not None and counts.get(stronger, 0) >= people
