"""What was found for each person with an allergy, and what was looked through without finding: for the roster alone."""

from collections.abc import Iterator, Sequence

from builder.compose.punctuation import labelled, quoted
from builder.compose.recipe.wording import listed, sentence, within
from builder.compose.roster.allergens import allergens_open_in
from builder.compose.views.teacher import AllergyView
from builder.model.finding import Finding
from builder.model.recipe.recipe import Choice
from builder.model.roster.allergy import Allergy, AllergyFound, By
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import message, say, say_count

_ASK = message(
    "Names and families of allergens were compared, by the words of the roster; nothing else. Ask each person before the class, and let "
    "them read the list of ingredients."
)
_BY = {
    By.FAMILY: message("in the family {named} by its card"),
    By.KIND: message("it is one of the kind {named}"),
    By.NAME: message("by its name"),
    By.PART: message("{named} is a part of it"),
    By.STATEMENT: message("its supplier states that it holds {named}"),
    By.HELD: message("oils of its name can hold {named}"),
}


def view_allergies(plan: ClassPlan) -> tuple[AllergyView, ...]:
    """Return each person with an allergy, also of those who wait for a seat, with a line for everything there is to say."""
    coming = [(guest, guest.name) for guest in plan.guests]
    waiting = [(guest, say("{name}, on the waiting list", name=guest.name)) for guest in plan.waiting]
    return tuple(
        AllergyView(labelled(who, guest.allergies), tuple(_lines(guest, plan))) for guest, who in (*coming, *waiting) if guest.compared
    )


def allergy_note(studio: Studio, plan: ClassPlan) -> str:
    """Return in words what the comparison cannot know."""
    unknown = allergens_open_in(studio, [made.batch for made in plan.made])
    open_parts = [say("What these hold in full only their supplier can say: {names}.", names=unknown)] if unknown else []
    return " ".join((say(_ASK), *open_parts, say("The cards do not say what gloves and tools are made of.")))


def stands_with_the_people(finding: Finding) -> bool:
    """Tell whether a finding is shown beside the person whom it is about, with what was settled; a reason for all is with the others."""
    return finding.name.startswith("allergy-") and (finding.accepted is None or not finding.acceptable)


def _lines(guest: Guest, plan: ClassPlan) -> Iterator[str]:
    for allergy in guest.compared:
        yield from _of_one(allergy, plan)
    if guest.is_settled:
        yield say("Settled with this person: {what}", what=guest.settled)


def _of_one(allergy: Allergy, plan: ClassPlan) -> Iterator[str]:
    said = quoted(allergy.written)
    inside = [one for one in allergy.found if not one.choice]
    options = [one for one in allergy.found if one.choice]
    if inside:
        yield say("{allergy}, in what the group makes: {found}.", allergy=said, found=_listed(inside))
    for taken, text in (
        (True, message("{allergy}, among the options, chosen by this person, so ask again: {found}.")),
        (False, message("{allergy}, among the options, not for this person: {found}.")),
    ):
        some = [one for one in options if one.taken is taken]
        if some:
            yield say(text, allergy=said, found=_listed(some))
    if allergy.unstated:
        names = listed([within(name) for name in allergy.unstated])
        yield say("{allergy} may be in these scents, of which no allergen statement is known here: {names}.", allergy=said, names=names)
    yield from (labelled(said, mind) for mind in allergy.minds)
    if allergy.unclear:
        words = ", ".join(quoted(word) for word in allergy.unclear)
        text = message("{allergy} is not understood here ({words}). Ask what is meant, and look through the lists of ingredients yourself.")
        if words.casefold() == said.casefold():
            text = message("{allergy} is not understood here. Ask what is meant, and look through the lists of ingredients yourself.")
        yield say(text, allergy=said, words=words)
    elif not allergy.found and not allergy.unstated:
        yield say(
            "{allergy}: nothing named so in {products}. Traces and cross-contact are not known here.",
            allergy=said,
            products=_looked_through(plan),
        )


def _listed(found: Sequence[AllergyFound]) -> str:
    return "; ".join(f"{say(one.ingredient)} ({one.recipe}, {_where(one)}), {say(_BY[one.by], named=within(one.named))}" for one in found)


def _where(one: AllergyFound) -> str:
    return say("choice of {choice}", choice=say(one.choice)) if one.choice else say(one.phase)


def _looked_through(plan: ClassPlan) -> str:
    """Name each product with how many ingredients and options it has."""
    return listed([_product(made.batch.recipe.name, len(made.batch.lines), _options(made.batch.recipe.choices)) for made in plan.made])


def _options(choices: Sequence[Choice]) -> int:
    return sum(option is not None for choice in choices for option in choice.options)


def _product(name: str, lines: int, options: int) -> str:
    held = [say_count("{count}\u00a0ingredient", "{count}\u00a0ingredients", lines)]
    held += [say_count("{count}\u00a0option", "{count}\u00a0options", options)] if options else []
    return f"{sentence(name)} ({', '.join(held)})"
