"""allergy-in-recipe, allergy-in-choice, allergy-unclear: people of a roster beside what their class uses and what they have chosen.

All three are cautions: an allergy is not the same as a danger (a scent breathed, an oil on the skin, a nut eaten), and what is done about
it is settled between the person and the studio. No finding repeats a name or what the person wrote.
"""

from collections.abc import Iterator

from builder.check.figure_words import listed
from builder.model.allergy import AllergyFound
from builder.model.class_sheet import ClassSheet
from builder.model.finding import Finding, caution
from builder.model.roster import Guest

_TALK = (
    "Talk with the person before the class; the teacher's sheet shows what was compared. A reason under `accepts:` holds for everybody of "
    "the class."
)


def find_allergies_met(sheet: ClassSheet) -> Iterator[Finding]:
    """Look at each person of a date, those who wait included."""
    for guest in (*sheet.guests, *sheet.waiting):
        found = [one for allergy in guest.compared for one in allergy.found]
        in_recipe, taken = [one for one in found if not one.choice], [one for one in found if one.taken]
        if in_recipe:
            yield caution(
                "allergy-in-recipe",
                guest.place,
                f"{_who(guest, sheet)} writes of an allergy, and by its card or its name this is meant: {_named(in_recipe)}. It is in what "
                "the whole group makes.",
                f"Leave it out, or take another ingredient. {_TALK}",
            )
        if taken:
            yield caution(
                "allergy-in-choice",
                guest.place,
                f"{_who(guest, sheet)} has chosen what their own allergy may mean: {_named(taken)}.",
                f"Ask whether another option is better. {_TALK}",
            )
        if any(allergy.unclear for allergy in guest.compared):
            yield caution(
                "allergy-unclear",
                guest.place,
                f"{_who(guest, sheet)} writes of allergies, and some of the words are known to nothing here. Those were compared with "
                "nothing.",
                f"Ask what is meant and write each allergen by itself, with commas between them. {_TALK}",
            )


def _who(guest: Guest, sheet: ClassSheet) -> str:
    when = f" for {sheet.date.on:%Y-%m-%d %H:%M}" if sheet.date else ""
    return f"A person of the roster{when} (line {guest.place.line})"


def _named(found: list[AllergyFound]) -> str:
    return listed([f"{one.ingredient} ({one.recipe})" for one in found])
