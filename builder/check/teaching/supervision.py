"""Whether enough adults watch what students do, and whether the students are old enough for it.

The rules are those of the teaching policy; a rule on lye and raw soap stops a class, and one on hot fat stops a class with minors. What a
studio finds right it writes as its own policy; where that is laxer on lye, every class that it holds for says so.

Decided: below ten years an adult pours hot base and wax; students who pour it, by an amount or by the words of a step, are a caution.
Why: the number is a policy: no source that was read states it, so that it stops nothing.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.check.rule import CLASS, rule_on
from builder.check.teaching.staff_missing import staff_place
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.hazard import Hazard
from builder.model.place import Place
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.model.teaching.supervision import ADULT, WatchedPart, WatchRule
from builder.rules.pouring import pours_in
from builder.words.listed import listed_once
from builder.words.plain_number import how_many

_DECIDES = "Local codes and your insurer decide."
_OWN = f'A rule of your own goes into studio.yaml: "teaching policy: {{%s: {{%s}}}}". {_DECIDES}'


@rule_on(
    CLASS,
    FindingKind("supervision-too-little", STOP | CAUTION, "There are fewer adults than the teaching policy asks for that work."),
    FindingKind("too-young", STOP, "The class is open to people who are too young for that work by the teaching policy."),
    FindingKind("group-too-large", STOP | CAUTION, "Students work in larger groups than the teaching policy allows for that work."),
    FindingKind("second-adult-missing", STOP | CAUTION, "Only one adult is there where the teaching policy asks for two."),
    FindingKind("lye-not-mixed-ahead", CAUTION, "Students handle dry lye, which staff can mix ahead."),
    FindingKind("not-weighed-ahead", STOP, "Children take from the bottle what staff have to weigh ahead."),
    FindingKind("poured-by-children", CAUTION, "Small children pour what is hot enough to burn, or fill from it."),
    FindingKind("policy-laxer", CAUTION, "The studio's own teaching policy is laxer on lye than that of the library."),
    FindingKind("seats-over-supervision", CAUTION, "More seats can be booked than the adults of the class can watch."),
)
def find_supervision_wanting(plan: ClassPlan) -> Iterator[Finding]:
    """Hold a class against the teaching policy, part by part; a rule that several parts break is one finding."""
    if plan.supervision.staff == 0:
        return  # staff-missing says so.
    said: set[tuple[str, str]] = set()
    for part in (part for part in plan.supervision.parts if part.by_hand):
        for rule in part.rules:
            staff = _staff(plan, rule, part) if rule in _tightest(part, plan.studio_class.youngest) else ()
            for finding in (*staff, *_people(plan, rule, part)):
                if (finding.name, finding.remedy) not in said:
                    said.add((finding.name, finding.remedy))
                    yield replace(finding, remedy=finding.remedy + _unless_none(plan, part, rule))
        yield from _lye_ahead(plan, part)
        yield from _weighed_ahead(plan, part)
        yield from _poured(plan, part)
    yield from _laxer(plan)
    yield from _seats(plan)


def _unless_none(plan: ClassPlan, part: WatchedPart, rule: WatchRule) -> str:
    """Return in words how to write that a part on a recipe with lye brings no raw soap, where that is what the rule holds for."""
    taken_for_raw = Hazard.RAW_SOAP in rule.hazards and Hazard.RAW_SOAP in part.lingering and not _lesson_part(plan, part).no_raw_soap
    return f' If no raw soap comes into their hands in "{part.title}", write `no raw soap` into its heading.' if taken_for_raw else ""


def _tightest(part: WatchedPart, age: int) -> list[WatchRule]:
    """Return of the rules that stop, and of those that caution, the one that lets an adult watch the fewest; and those on the class."""
    numbered = [(to_one, rule) for rule in part.rules if (to_one := rule.to_one(age)) is not None]
    kinds = ([one for one in numbered if one[1].stops_for(age) is stops] for stops in (True, False))
    return [min(kind, key=lambda one: one[0])[1] for kind in kinds if kind] + [rule for rule in part.rules if rule.most is not None]


def _broken(name: str, rule: WatchRule, place: Place, wrong: str, remedy: str, plan: ClassPlan) -> Finding:
    about = frozenset({plan.subject})
    stops = rule.stops_for(plan.studio_class.youngest)
    return stop(name, place, wrong, remedy, about=about) if stops else caution(name, place, wrong, remedy, about=about)


def basis(rule: WatchRule) -> str:
    """Return in words where a rule comes from: the studio's own policy, or the first work that it rests on."""
    return "the studio's own policy" if rule.shipped else rule.basis[0].source.title


def _own(rule: WatchRule, numbers: str) -> str:
    return _OWN % (rule.key, numbers)


def _in_part(part: WatchedPart, rule: WatchRule) -> str:
    return f'In "{part.title}" the rule "{rule.key}" holds ({basis(rule)})'


def _staff(plan: ClassPlan, rule: WatchRule, part: WatchedPart) -> Iterator[Finding]:
    age, staff, students = plan.studio_class.youngest, plan.supervision.staff, plan.students
    place = plan.date.at("enrolled") if plan.date else plan.studio_class.at("seats")
    to_one = rule.to_one(age)
    if to_one is not None and students > staff * to_one:
        needed = -(-students // to_one)
        yield _broken(
            "supervision-too-little",
            rule,
            place,
            f"{_in_part(part, rule)}: one adult watches at most {how_many(to_one, 'student')}. {how_many(staff, 'adult')} can watch "
            f"{staff * to_one} of the {students}.",
            f"Have {how_many(needed, 'adult')} that day (`staff:` of the class or of the date), take fewer students, or let the teacher do "
            f"this part. {_own(rule, f'students to a supervisor: {to_one}')}",
            plan,
        )
    if rule.most is not None and students > rule.most:
        yield _broken(
            "supervision-too-little",
            rule,
            place,
            f"{_in_part(part, rule)}: at most {how_many(rule.most, 'student')} in one class, and {students} are to come.",
            f"Make two dates of it. {_own(rule, f'most students: {rule.most}')}",
            plan,
        )


def _people(plan: ClassPlan, rule: WatchRule, part: WatchedPart) -> Iterator[Finding]:
    studio_class = plan.studio_class
    about = frozenset({WholeClass(studio_class.key)})
    if rule.youngest is not None and studio_class.youngest < rule.youngest:
        yield stop(
            "too-young",
            studio_class.at("youngest"),
            f"{_in_part(part, rule)}: hands-on from {rule.youngest} years, and this class is open from {studio_class.youngest}.",
            f"Raise the age, or let the teacher do this part. {_own(rule, f'youngest: {rule.youngest}')}",
            about=about,
        )
    if rule.group_of is not None and studio_class.group_size > rule.group_of:
        yield _broken(
            "group-too-large",
            rule,
            studio_class.at("group size"),
            f"{_in_part(part, rule)}: groups of {rule.group_of} at most, and the groups here are of {studio_class.group_size}.",
            f'Write "group size: {rule.group_of}". {_own(rule, f"group of: {rule.group_of}")}',
            plan,
        )
    if rule is _asks_for_two(plan) and studio_class.youngest < ADULT and plan.supervision.staff < 2:
        yield _broken(
            "second-adult-missing",
            rule,
            staff_place(plan),
            f"{_in_part(part, rule)}: two adults at least where somebody under {ADULT} takes part, and there is only one.",
            f'Add an assistant to "staff:" (of the class or of the date), or open the class from {ADULT} years.',
            plan,
        )


def _asks_for_two(plan: ClassPlan) -> WatchRule | None:
    """Return the rule of a class that asks for two adults where minors take part, rather one that stops it."""
    asking = [rule for rule in plan.supervision.rules if rule.two_adults]
    return min(asking, key=lambda rule: not rule.stops_for(plan.studio_class.youngest), default=None)


def _lye_ahead(plan: ClassPlan, part: WatchedPart) -> Iterator[Finding]:
    rule = next((rule for rule in part.rules if rule.ahead and Hazard.DRY_LYE in rule.hazards), None)
    if rule is not None:
        yield caution(
            "lye-not-mixed-ahead",
            _lesson_part(plan, part).place,
            f'In "{part.title}" students handle dry lye ({basis(rule)}).',
            f"{rule.ahead} Write it as a part that is `ahead` and names {{lye}} and {{lye water}}, or say `ready-mixed:` with the strength "
            "of the solution in the recipe.",
            about=frozenset({WholeClass(plan.studio_class.key)}),
        )


def _weighed_ahead(plan: ClassPlan, part: WatchedPart) -> Iterator[Finding]:
    age = plan.studio_class.youngest
    for rule in part.rules:
        names = [name for name, hazards in part.not_ahead if any(hazard in rule.hazards for hazard in hazards)]
        if names and rule.ahead_below is not None and age < rule.ahead_below:
            yield stop(
                "not-weighed-ahead",
                _lesson_part(plan, part).place,
                f'In "{part.title}" students from {age} years take {listed_once(names)} from the pack: in an eye it burns, and a '
                f"mouthful can poison a child. Below {rule.ahead_below} years staff weigh it ahead ({basis(rule)}).",
                f"Name it in a part before the class, as in `## Weigh the scent (ahead, 10 min)`, or let the teacher do this. {rule.ahead}",
                about=frozenset({WholeClass(plan.studio_class.key)}),
            )


def _poured(plan: ClassPlan, part: WatchedPart) -> Iterator[Finding]:
    """Look for what is hot in the hands of children who are too young to pour it; of those who are too young for all of it that is said."""
    age, place = plan.studio_class.youngest, pours_in(_lesson_part(plan, part))
    rule = next((rule for rule in part.rules if rule.poured_below is not None and age < rule.poured_below), None)
    if place is None or rule is None or (rule.youngest is not None and age < rule.youngest):
        return
    yield caution(
        "poured-by-children",
        place,
        f'In "{part.title}" students from {age} years pour or fill what is hot enough to burn ({rule.key}). Below '
        f"{rule.poured_below} years an adult pours ({basis(rule)}): hot wax and melted base stick to skin and burn deep.",
        'Let an adult do it, and say so in the step: "Have an adult fill {portion} into each cup". Where it has cooled until it cannot '
        "burn, write `cooled` into the heading of the part.",
        about=frozenset({WholeClass(plan.studio_class.key)}),
    )


def _laxer(plan: ClassPlan) -> Iterator[Finding]:
    """Return in words where the studio's own policy on lye asks less than that of the library."""
    age = plan.studio_class.youngest
    for rule in plan.supervision.rules:
        shipped = rule.shipped
        if shipped is None or shipped.floor is None:
            continue
        to_one, usual = rule.to_one(age), shipped.to_one(age)
        said = [f"from {rule.youngest} years instead of {shipped.youngest}"] if _is_less(rule.youngest, shipped.youngest) else []
        said += [f"{to_one} students to an adult instead of {usual}"] if _is_less(usual, to_one) else []
        said += [f"{rule.most} students at most instead of {shipped.most}"] if _is_less(shipped.most, rule.most) else []
        said += [f"groups of {rule.group_of} instead of {shipped.group_of}"] if _is_less(shipped.group_of, rule.group_of) else []
        if said:
            yield caution(
                "policy-laxer",
                rule.place,
                f'For "{rule.key}" the studio\'s own policy is laxer than that of the library ({basis(shipped)}): {listed_once(said)}. Lye '
                f"and raw soap burn skin and blind eyes, and {plan.studio_class.title} is held by these numbers.",
                f"Take the numbers of the library again, or accept this with the reason for which it is safe in your room. {_DECIDES}",
                about=frozenset({WholeClass(plan.studio_class.key)}),
            )


def _is_less(one: int | None, other: int | None) -> bool:
    return one is not None and other is not None and one < other


def _lesson_part(plan: ClassPlan, part: WatchedPart) -> Part:
    return next(timed.part for timed in plan.timeline if timed.number == part.number)


def _seats(plan: ClassPlan) -> Iterator[Finding]:
    carried, rule, seats = plan.supervision.carried, plan.supervision.limit, plan.studio_class.seats
    if (
        carried is None
        or rule is None
        or seats <= carried
        or plan.students > carried
        or any(date.staff for date in plan.studio_class.dates)
    ):
        return
    yield caution(
        "seats-over-supervision",
        plan.studio_class.at("seats"),
        f"{seats} seats can be booked, and {how_many(plan.supervision.staff, 'adult')} can watch {how_many(carried, 'student')} "
        f'(the rule "{rule.key}": {basis(rule)}).',
        f'Write "seats: {carried}", or have more adults.',
        about=frozenset({WholeClass(plan.studio_class.key)}),
    )
