"""Supervision in words: who watches which group, what each part asks for, and what it rests on."""

from collections.abc import Sequence

from builder.compose.recipe.wording import counted, sentence
from builder.compose.views.running import RuleRow, WatchRow
from builder.model.hazard import Hazard
from builder.model.recipe.figure import Known
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.supervision import ADULT, WatchedPart, WatchRule
from builder.words.say import say

POLICY = "These are rules of a policy, not law. Local codes, your insurer and licensed practice come first."
FROM_MEMORY = ", from memory"


def adults(plan: ClassPlan) -> tuple[str, ...]:
    """Name the adults of a date by their number: teacher, assistant 1, assistant 2."""
    teachers, assistants = plan.staff
    names = ["Teacher"] if teachers == 1 else [f"Teacher {number}" for number in range(1, teachers + 1)]
    return (*names, *(["Assistant"] if assistants == 1 else [f"Assistant {number}" for number in range(1, assistants + 1)]))


def group_word(plan: ClassPlan) -> str:
    """Say what a bench card calls a group: a group, or the place of one person."""
    return "group" if plan.studio_class.group_size > 1 else "place"


def asks_for_eyewash(plan: ClassPlan) -> bool:
    """Say whether a rule on some part of the class asks for an eyewash."""
    return any("eyewash" in thing for thing in plan.preparation.kit)


def watch_rows(plan: ClassPlan) -> tuple[WatchRow, ...]:
    """Say who watches which groups."""
    word = group_word(plan)
    return tuple(WatchRow(name, numbers(groups, word)) for name, groups in zip(adults(plan), plan.supervision.watched, strict=True))


def numbers(groups: Sequence[int], word: str) -> str:
    """Name groups by their numbers: `group 1`, `places 3 to 5`, `the whole room`."""
    if not groups:
        return "the whole room"
    if len(groups) == 1:
        return f"{word} {groups[0]}"
    return f"{word}s {groups[0]} {'and' if len(groups) == 2 else 'to'} {groups[-1]}"


def carried_words(plan: ClassPlan) -> str:
    """Say how many students the staff of the date can watch, and which rule says so."""
    supervision = plan.supervision
    if supervision.carried is None or supervision.limit is None:
        return f"{counted(plan.students, 'student comes', 'students come')}; no rule sets how many can be watched."
    who = counted(supervision.staff, "adult", "adults")
    come = counted(plan.students, "student comes", "students come")
    return f'{come}. {who} can watch {supervision.carried}; the rule "{supervision.limit.key}" sets it.'


def rule_rows(plan: ClassPlan) -> tuple[RuleRow, ...]:
    """Give each rule that holds where students work, with the parts in which it does."""
    found = []
    for rule in plan.supervision.rules:
        parts = [_title(part, rule) for part in plan.supervision.parts if part.by_hand and rule in part.rules]
        every = len(parts) > 1 and len(parts) == sum(part.by_hand for part in plan.supervision.parts)
        found.append(
            RuleRow(
                sentence(say(rule.key)),
                "every part by hand" if every else "; ".join(parts),
                asks(rule, plan.studio_class.youngest),
                basis(rule, plan.studio_class.youngest),
            )
        )
    return tuple(row for row in found if row.asks)


def _title(part: WatchedPart, rule: WatchRule) -> str:
    """Name a part; where only the heat of an earlier one brings the rule there, say so."""
    here = [hazard for hazard in part.hazards if hazard in rule.hazards]
    still_hot = bool(here) and all(hazard in part.lingering and hazard in (Hazard.HOT, Hazard.HOT_FAT) for hazard in here)
    return f"{part.title} (still hot)" if still_hot else part.title


def asks(rule: WatchRule, age: int) -> str:
    """Say what a rule asks of a class that is open from an age."""
    to_one = rule.to_one(age)
    said = [f"1 adult for {to_one} students"] if to_one else []
    said += ["2 adults at least"] if rule.two_adults and age < ADULT else []
    said += [f"groups of {rule.group_of} at most"] if rule.group_of else []
    said += [f"from {rule.youngest} years"] if rule.youngest else []
    said += [f"at most {rule.most} students"] if rule.most else []
    return ", ".join(said)


def basis(rule: WatchRule, age: int) -> str:
    """Say what a rule rests on; of numbers that the studio has set, what those of the stock would ask of a class from an age."""
    said = [f"the studio's own numbers, in place of: {asks(rule.stock, age) or 'none'}"] if rule.stock else []
    said += [f"{one.source.title}{FROM_MEMORY if one.known is Known.MEMORY else ''}" for one in rule.basis]
    return "; ".join(dict.fromkeys(said))


def ahead_lines(plan: ClassPlan) -> tuple[str, ...]:
    """Say what could be done ahead so that students meet less."""
    rules = (rule for rule in plan.supervision.rules if rule.ahead and not (_is_on_lye(rule) and _lye_is_ready(plan)))
    return tuple(dict.fromkeys(f"{sentence(say(rule.key))}: {say(rule.ahead)}" for rule in rules))


def _is_on_lye(rule: WatchRule) -> bool:
    return any(hazard in (Hazard.CAUSTIC, Hazard.DRY_LYE) for hazard in rule.hazards)


def _lye_is_ready(plan: ClassPlan) -> bool:
    """Say whether all lye that the class uses is mixed ahead: nothing of it is left to advise."""
    mixed = {lye.recipe for lye in plan.weighing.solutions if lye.ahead}
    return all(made.batch.recipe.name in mixed for made in plan.made if made.batch.recipe.lye)
