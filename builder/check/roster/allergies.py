"""People of a roster beside what their class uses and what they have chosen.

Whoever comes and would touch what their own allergy means stops the class, until the studio has settled it with that person and written how
under `settled` in the roster, in a sentence: no reason speaks for the next person. Of those who wait, and of words that nothing here knows,
it is a caution. No finding repeats a name, what the person wrote, or what was settled.

Decided: an allergy that is met is a caution, also where everybody touches the ingredient. Why: what is dangerous to whom only the person
knows; the studio settles it with them, and a stop would be lifted by deleting the cell.

Decided: an allergy is settled in the roster for one person, in a sentence, and by no reason for a class. Why: the next person's allergy
is another one, and "ok" tells nobody what to do.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.check.rule import CLASS, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.roster.allergy import AllergyFound
from builder.model.roster.roster import Guest
from builder.model.teaching.class_plan import ClassPlan
from builder.words.listed import listed_once

_TALK = "Talk with the person before the class; the printed roster shows what was compared."
_SETTLE = (
    "Then write what you have settled, in a sentence, into the column `settled` of their line in the roster; it is printed nowhere else."
)
_SETTLED = "The roster says how this was settled with the person."


@rule_on(
    CLASS,
    FindingKind(
        "allergy-unclear",
        CAUTION,
        "The roster tells of an allergy in words that nothing here knows, so that they were compared with nothing.",
    ),
    FindingKind("allergy-in-recipe", STOP | CAUTION, "A person of the roster would touch or use what their own allergy may mean."),
    FindingKind("allergy-in-choice", STOP | CAUTION, "A person of the roster has chosen what their own allergy may mean."),
    FindingKind("settled-unclear", CAUTION, "What stands under `settled` is no sentence that others could follow, and settles nothing."),
)
def find_allergies_met(plan: ClassPlan) -> Iterator[Finding]:
    """Look at each person of a date, those who wait included."""
    for guest in plan.guests:
        met = list(_met(guest, plan, waits=False))
        yield from (replace(finding, accepted=_SETTLED) if guest.is_settled else finding for finding in met)
        if met and guest.settled and not guest.is_settled:
            yield _unclear_settlement(guest, plan)
    for guest in plan.waiting:
        yield from _met(guest, plan, waits=True)


def _met(guest: Guest, plan: ClassPlan, *, waits: bool) -> Iterator[Finding]:
    found = [one for allergy in guest.compared for one in allergy.found]
    in_recipe, taken = [one for one in found if not one.choice], [one for one in found if one.taken]
    about, settle = frozenset({plan.subject}), _TALK if waits else f"{_TALK} {_SETTLE}"
    if in_recipe:
        wrong = (
            f"{_who(guest, plan)} writes of an allergy, and by its card or its name this is meant: {_named(in_recipe)}. It is in what the "
            "whole group makes."
        )
        remedy = f"Leave it out, or take another ingredient. {settle}"
        if waits:
            yield caution("allergy-in-recipe", guest.place, wrong, remedy)
        else:
            yield stop("allergy-in-recipe", guest.place, wrong, remedy, about=about)
    if taken:
        wrong = f"{_who(guest, plan)} has chosen what their own allergy may mean: {_named(taken)}."
        remedy = f"Ask whether another option is better. {settle}"
        if waits:
            yield caution("allergy-in-choice", guest.place, wrong, remedy)
        else:
            yield stop("allergy-in-choice", guest.place, wrong, remedy, about=about)
    if any(allergy.unclear for allergy in guest.compared):
        yield caution(
            "allergy-unclear",
            guest.place,
            f"{_who(guest, plan)} writes of allergies, and some of the words are known to nothing here. Those were compared with nothing.",
            f"Ask what is meant and write each allergen by itself, with commas between them. {_TALK} A reason under `accepts:` holds for "
            "everybody of the class.",
        )


def _unclear_settlement(guest: Guest, plan: ClassPlan) -> Finding:
    wrong = (
        f"What is written under `settled` for {_inside(_who(guest, plan))} is no sentence that others could follow, so that nothing is "
        "settled. The roster prints it for those who stand beside this person."
    )
    remedy = "Write in a sentence what you agreed on, for example: Asked her doctor and wears gloves. A text with a comma goes in quotes."
    return caution("settled-unclear", guest.settled_place, wrong, remedy)


def _inside(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]


def _who(guest: Guest, plan: ClassPlan) -> str:
    when = f" for {plan.date.on:%Y-%m-%d %H:%M}" if plan.date else ""
    return f"A person of the roster{when} (line {guest.place.line})"


def _named(found: list[AllergyFound]) -> str:
    return listed_once([f"{one.ingredient} ({one.recipe})" for one in found])
