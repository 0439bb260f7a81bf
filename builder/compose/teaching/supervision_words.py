"""Supervision in words: who watches which group, what each part asks for, and what it rests on."""

from collections.abc import Sequence
from typing import Literal

from builder.compose.punctuation import labelled
from builder.compose.recipe.wording import sentence
from builder.compose.views.running import RuleRow, WatchRow
from builder.model.hazard import Hazard
from builder.model.recipe.figure import Known
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.supervision import ADULT, WatchedPart, Watcher, WatchRule
from builder.words.say import message, say, say_count

POLICY = message("These are rules of a policy, not law. Local rules, the safety data sheet, your insurer and licensed practice come first.")
# What is counted in a room: groups, places of one person, students; one of them, two, and a run of them by their numbers.
Kind = Literal["group", "place", "student"]
ONE: dict[Kind, str] = {
    "group": message("group {number}"),
    "place": message("place {number}"),
    "student": message("student {number}"),
}
TWO: dict[Kind, str] = {
    "group": message("groups {first} and {last}"),
    "place": message("places {first} and {last}"),
    "student": message("students {first} and {last}"),
}
MORE: dict[Kind, str] = {
    "group": message("groups {first} to {last}"),
    "place": message("places {first} to {last}"),
    "student": message("students {first} to {last}"),
}


def adult(one: Watcher) -> str:
    """Name an adult, by a number where there are several of the kind: teacher, assistant 1, assistant 2."""
    if one.is_teacher:
        return say("Teacher") if one.alone else say("Teacher {number}", number=one.number)
    return say("Assistant") if one.alone else say("Assistant {number}", number=one.number)


def in_groups(plan: ClassPlan) -> bool:
    """Tell whether several people share a bench; else each has a place."""
    return plan.studio_class.group_size > 1


def place_kind(plan: ClassPlan) -> Kind:
    """Return what benches are counted by: groups, or the places of one person."""
    return "group" if in_groups(plan) else "place"


def group_word(plan: ClassPlan) -> str:
    """Return in words what a bench card calls a group: a group, or the place of one person."""
    return say("group") if in_groups(plan) else say("place")


def people_of(count: int) -> str:
    """Count people: `1 person`, `3 people`."""
    return say_count("{count}\u00a0person", "{count}\u00a0people", count)


def asks_for_eyewash(plan: ClassPlan) -> bool:
    """Tell whether a rule on some part of the class asks for an eyewash."""
    return any("eyewash" in thing for thing in plan.preparation.kit)


def watch_rows(plan: ClassPlan) -> tuple[WatchRow, ...]:
    """Return in words who watches which groups."""
    kind = place_kind(plan)
    return tuple(WatchRow(adult(one), numbers(one.groups, kind)) for one in plan.supervision.watchers)


def numbers(groups: Sequence[int], kind: Kind) -> str:
    """Name groups by their numbers: `group 1`, `places 3 to 5`, `the whole room`."""
    if not groups:
        return say("the whole room")
    if len(groups) == 1:
        return say(ONE[kind], number=groups[0])
    return say(TWO[kind] if len(groups) == 2 else MORE[kind], first=groups[0], last=groups[-1])


def carried_words(plan: ClassPlan) -> str:
    """Return in words how many students the staff of the date can watch, and which rule says so."""
    supervision = plan.supervision
    if supervision.carried is None or supervision.limit is None:
        return say_count(
            "{count}\u00a0student comes; no rule sets how many can be watched.",
            "{count}\u00a0students come; no rule sets how many can be watched.",
            plan.students,
        )
    come = say_count("{count}\u00a0student comes.", "{count}\u00a0students come.", plan.students)
    watch = say_count(
        '{count}\u00a0adult can watch {students}; the rule "{rule}" sets it.',
        '{count}\u00a0adults can watch {students}; the rule "{rule}" sets it.',
        supervision.staff,
        students=supervision.carried,
        rule=say(supervision.limit.key),
    )
    return f"{come} {watch}"


def rule_rows(plan: ClassPlan) -> tuple[RuleRow, ...]:
    """Return each rule that holds where students work, with the parts in which it does."""
    found = []
    for rule in plan.supervision.rules:
        parts = [_title(part, rule) for part in plan.supervision.parts if part.by_hand and rule in part.rules]
        every = len(parts) > 1 and len(parts) == sum(part.by_hand for part in plan.supervision.parts)
        found.append(
            RuleRow(
                sentence(say(rule.key)),
                say("every part by hand") if every else "; ".join(parts),
                asks(rule, plan.studio_class.youngest),
                basis(rule, plan.studio_class.youngest),
            )
        )
    return tuple(row for row in found if row.asks)


def _title(part: WatchedPart, rule: WatchRule) -> str:
    """Name a part; where only the heat of an earlier one brings the rule there, say so."""
    here = [hazard for hazard in part.hazards if hazard in rule.hazards]
    still_hot = bool(here) and all(hazard in part.lingering and hazard in (Hazard.HOT, Hazard.HOT_FAT) for hazard in here)
    return say("{part} (still hot)", part=part.title) if still_hot else part.title


def asks(rule: WatchRule, age: int) -> str:
    """Return in words what a rule asks of a class that is open from an age."""
    to_one = rule.to_one(age)
    said = [say_count("1 adult for {count} student", "1 adult for {count} students", to_one)] if to_one else []
    said += [say("2 adults at least")] if rule.two_adults and age < ADULT else []
    said += [say("groups of {size} at most", size=rule.group_of)] if rule.group_of else []
    said += [say_count("from {count} year", "from {count} years", rule.youngest)] if rule.youngest else []
    said += [say_count("at most {count} student", "at most {count} students", rule.most)] if rule.most else []
    return ", ".join(said)


def basis(rule: WatchRule, age: int) -> str:
    """Return in words what a rule rests on; of numbers that the studio has set, what those of the library ask of a class from an age."""
    said = [say("the studio's own numbers, in place of: {rules}", rules=asks(rule.shipped, age) or say("none"))] if rule.shipped else []
    for one in rule.basis:
        title = say(one.source.title)
        said.append(say("{source}, from memory", source=title) if one.known is Known.MEMORY else title)
    return "; ".join(dict.fromkeys(said))


def ahead_lines(plan: ClassPlan) -> tuple[str, ...]:
    """Return in words what could be done ahead so that students meet less."""
    rules = (rule for rule in plan.supervision.rules if rule.ahead and not (_is_on_lye(rule) and _lye_is_ready(plan)))
    return tuple(dict.fromkeys(labelled(sentence(say(rule.key)), say(rule.ahead)) for rule in rules))


def _is_on_lye(rule: WatchRule) -> bool:
    return any(hazard in (Hazard.CAUSTIC, Hazard.DRY_LYE) for hazard in rule.hazards)


def _lye_is_ready(plan: ClassPlan) -> bool:
    """Tell whether all lye that the class uses is mixed ahead: nothing of it is left to advise."""
    mixed = {lye.recipe for lye in plan.weighing.solutions if lye.ahead}
    return all(made.batch.recipe.name in mixed for made in plan.made if made.batch.recipe.lye)
