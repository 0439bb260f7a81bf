"""What the choices of a product come to for the class, and who has chosen what: for the teacher's sheet alone."""

from collections.abc import Mapping, Sequence

from builder.compose.dose.dose_words import drops_in_words, none_of, reasons
from builder.compose.label.label_counts import label_order
from builder.compose.punctuation import labelled
from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import grams, sentence, within
from builder.compose.teaching.supervision_words import group_word
from builder.compose.views.doses import GuestTable, TotalRow, TotalTable
from builder.model.dose.dose import Dose, MostOf
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ChoiceTotal, ClassPlan, MadeProduct
from builder.model.teaching.jar import Pot, pot_of_each_student
from builder.model.teaching.pot_for import PotFor
from builder.words.say import say, say_count


def view_totals(studio: Studio, made: MadeProduct, *, has_roster: bool) -> tuple[TotalTable, ...]:
    """Return a table for each choice: the most in a portion of each kind of container, and what all portions need of each option."""
    filled = made.filled
    doses = [(labelled(container_name(studio, one.fill), "") if len(filled) > 1 else "", dose) for one in filled for dose in one.doses]
    return tuple(
        _table([(where, dose) for where, dose in doses if dose.what == total.what], total, has_roster)
        for total in made.choices
        if total.options
    )


def view_guests(plan: ClassPlan) -> tuple[GuestTable, ...]:
    """Return who comes, and who waits for a seat; nothing where the class has no roster, or none of its rows is for this date."""
    students = say_count("{count}\u00a0student", "{count}\u00a0students", plan.students)
    come = say_count(
        "{count}\u00a0person on the roster for {students}.",
        "{count}\u00a0people on the roster for {students}.",
        len(plan.guests),
        students=students,
    )
    wait = say_count(
        "{count}\u00a0person on the waiting list, for whom nothing is prepared:",
        "{count}\u00a0people on the waiting list, for whom nothing is prepared:",
        len(plan.waiting),
    )
    tables = []
    if plan.guests:
        tables.append(_guests(plan, plan.guests, f"{come} {label_order(plan)}", _pots(plan)))
    if plan.waiting:
        tables.append(_guests(plan, plan.waiting, wait, {}))
    return tuple(tables)


def _guests(plan: ClassPlan, guests: Sequence[Guest], listed: str, pots: Mapping[str, tuple[Pot, ...]]) -> GuestTable:
    choices = [(made.batch.recipe.key, made.batch.recipe.name, dose) for made in plan.made for dose in made.batch.own.doses]
    several = len({key for key, _, _ in choices}) > 1
    heads = [f"{name}: {say(dose.what)}" if several else sentence(say(dose.what)) for _, name, dose in choices]
    has_age, has_allergies = any(one.age is not None for one in guests), any(one.allergies for one in guests)
    has_size = any(one.at_home for one in guests)
    rows = []
    for number, guest in enumerate(guests):
        cells = [guest.name, *(str(one[number].number) if number < len(one) else "" for one in pots.values())]
        cells += [str(guest.age) if guest.age is not None else ""] if has_age else []
        cells += [_chosen(guest, key, dose) for key, _, dose in choices]
        cells += [guest.at_home] if has_size else []
        cells += [guest.allergies] if has_allergies else []
        rows.append(tuple(cells))
    told = (*([say("Take-home sheet")] if has_size else []), *([say("Allergies")] if has_allergies else []))
    columns = (say("Name"), *pots, *([say("Age")] if has_age else []), *heads, *told)
    return GuestTable(listed, columns, tuple(rows))


def _pots(plan: ClassPlan) -> dict[str, tuple[Pot, ...]]:
    """Return the columns that say from which pot a guest fills, as the batch codes count them, each with the pot of every student."""
    names = {PotFor.GROUP: sentence(group_word(plan)), PotFor.STUDENT: say("Pot")}
    pots = {made.pots[0].purpose: pot_of_each_student(made.pots) for made in plan.made if made.pots}
    return {name: pots[purpose] for purpose, name in names.items() if purpose in pots}


def _chosen(guest: Guest, recipe: str, dose: Dose) -> str:
    if (recipe, dose.what) not in guest.chosen:
        return say("not yet")
    option = guest.chosen[recipe, dose.what]
    return within(option) if option is not None else none_of(dose.what)


def _table(doses: Sequence[tuple[str, Dose]], total: ChoiceTotal, has_roster: bool) -> TotalTable:
    rows = tuple(
        TotalRow(
            name=say(option.option),
            most="; ".join(f"{where}{_most(one)}" for where, dose in doses for one in dose.each if one.option == option.option),
            chosen=str(option.chosen),
            for_chosen=grams(option.for_chosen),
            expected=grams(option.expected),
            worst=grams(option.worst),
        )
        for option in total.options
    )
    what = say(total.what)
    out = say_count("{count}\u00a0portion with no {choice}.", "{count}\u00a0portions with no {choice}.", total.left_out, choice=what)
    left_open = say_count(
        "Expected: {count}\u00a0portion without a choice yet, spread evenly over what is offered.",
        "Expected: {count}\u00a0portions without a choice yet, spread evenly over what is offered.",
        total.open,
    )
    return TotalTable(
        caption=say_count(
            "{choice}: the most in one portion, and in {count}\u00a0portion",
            "{choice}: the most in one portion, and in {count}\u00a0portions",
            total.portions,
            choice=sentence(what),
        ),
        has_roster=has_roster,
        rows=rows,
        notes=(*reasons([dose for _, dose in doses]), *([out] if total.left_out else []), *([left_open] if total.open else [])),
    )


def _most(one: MostOf) -> str:
    if not one.is_offered:
        return say("not at this size")
    drops = drops_in_words(one)
    if not one.weight:
        return drops
    return f"{grams(one.weight)}, {drops}" if drops else grams(one.weight)
