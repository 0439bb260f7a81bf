"""What was found for each person with an allergy, and what was looked through without finding: for the teacher's sheet alone."""

from collections.abc import Iterator, Sequence

from builder.compose.recipe.wording import counted, listed, sentence, within
from builder.compose.roster.allergens import allergens_open_in
from builder.compose.views.teacher import AllergyView
from builder.model.finding import Finding
from builder.model.recipe.recipe import Choice
from builder.model.roster.allergy import Allergy, AllergyFound, By
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan

_ASK = (
    "Names and families of allergens were compared, by the words of the roster; nothing else. Ask each person before the class, and let "
    "them read the list of ingredients."
)
_BY = {
    By.FAMILY: "in the family {named} by its card",
    By.KIND: "it is one of the kind {named}",
    By.NAME: "by its name",
    By.PART: "{named} is a part of it",
    By.STATEMENT: "its supplier states that it holds {named}",
    By.HELD: "oils of its name can hold {named}",
}


def view_allergies(plan: ClassPlan) -> tuple[AllergyView, ...]:
    """Give each person with an allergy, also of those who wait for a seat, with a line for everything there is to say."""
    people = [*((guest, "") for guest in plan.guests), *((guest, ", on the waiting list") for guest in plan.waiting)]
    return tuple(
        AllergyView(f"{guest.name}{where}: {guest.allergies}", tuple(_lines(guest, plan))) for guest, where in people if guest.compared
    )


def allergy_note(studio: Studio, plan: ClassPlan) -> str:
    """Say what the comparison cannot know."""
    unknown = allergens_open_in(studio, [made.batch for made in plan.made])
    open_parts = [f"What these hold in full only their supplier can say: {unknown}."] if unknown else []
    return " ".join((_ASK, *open_parts, "The cards do not say what gloves and tools are made of."))


def stands_with_the_people(finding: Finding) -> bool:
    """Say whether a finding is shown beside the person whom it is about, with what was settled; a reason for all stands with the others."""
    return finding.name.startswith("allergy-") and (finding.accepted is None or not finding.acceptable)


def _lines(guest: Guest, plan: ClassPlan) -> Iterator[str]:
    for allergy in guest.compared:
        yield from _of_one(allergy, plan)
    if guest.is_settled:
        yield f"Settled with this person: {guest.settled}"


def _of_one(allergy: Allergy, plan: ClassPlan) -> Iterator[str]:
    said = f"\u201c{allergy.written}\u201d"
    inside = [one for one in allergy.found if not one.choice]
    options = [one for one in allergy.found if one.choice]
    if inside:
        yield f"{said}, in what the group makes: {_listed(inside)}."
    for taken, word in ((True, "chosen by this person, so ask again"), (False, "not for this person")):
        some = [one for one in options if one.taken is taken]
        if some:
            yield f"{said}, among the options, {word}: {_listed(some)}."
    if allergy.unstated:
        names = listed([within(name) for name in allergy.unstated])
        yield f"{said} may be in these scents, of which no allergen statement is known here: {names}."
    yield from (f"{said}: {mind}" for mind in allergy.minds)
    if allergy.unclear:
        words = ", ".join(f"\u201c{word}\u201d" for word in allergy.unclear)
        which = "" if words.casefold() == said.casefold() else f" ({words})"
        yield f"{said} is not understood here{which}. Ask what is meant, and look through the lists of ingredients yourself."
    elif not allergy.found and not allergy.unstated:
        yield f"{said}: nothing named so in {_looked_through(plan)}. Traces and cross-contact are not known here."


def _listed(found: Sequence[AllergyFound]) -> str:
    return "; ".join(f"{one.ingredient} ({one.recipe}, {_where(one)}), {_BY[one.by].format(named=within(one.named))}" for one in found)


def _where(one: AllergyFound) -> str:
    return f"choice of {one.choice}" if one.choice else one.phase


def _looked_through(plan: ClassPlan) -> str:
    """Name each product with how many ingredients and options it has."""
    return listed([_product(made.batch.recipe.name, len(made.batch.lines), _options(made.batch.recipe.choices)) for made in plan.made])


def _options(choices: Sequence[Choice]) -> int:
    return sum(option is not None for choice in choices for option in choice.options)


def _product(name: str, lines: int, options: int) -> str:
    offered = f", {counted(options, 'option', 'options')}" if options else ""
    return f"{sentence(name)} ({counted(lines, 'ingredient', 'ingredients')}{offered})"
