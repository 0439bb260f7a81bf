"""What the choices of a product come to for the class, and who has chosen what: for the teacher's sheet alone."""

from collections.abc import Mapping, Sequence

from builder.compose.dose.dose_words import drops_in_words, reasons
from builder.compose.label.label_counts import label_order
from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import counted, grams, sentence, within
from builder.compose.teaching.supervision_words import group_word
from builder.compose.views.doses import GuestTable, TotalRow, TotalTable
from builder.model.dose.dose import Dose, MostOf
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ChoiceTotal, ClassPlan, MadeProduct
from builder.model.teaching.jar import Pot, pot_of_each_student
from builder.model.teaching.pot_for import PotFor


def view_totals(studio: Studio, made: MadeProduct, *, has_roster: bool) -> tuple[TotalTable, ...]:
    """Give a table for each choice: the most in a portion of each kind of container, and what all portions need of each option."""
    filled = made.filled
    doses = [(f"{container_name(studio, one.fill)}: " if len(filled) > 1 else "", dose) for one in filled for dose in one.doses]
    return tuple(
        _table([(where, dose) for where, dose in doses if dose.what == total.what], total, has_roster)
        for total in made.choices
        if total.options
    )


def view_guests(plan: ClassPlan) -> tuple[GuestTable, ...]:
    """Give who comes, and who waits for a seat; nothing where the class has no roster, or none of its rows is for this date."""
    come = f"{counted(len(plan.guests), 'person', 'people')} on the roster for {counted(plan.students, 'student', 'students')}."
    wait = f"{counted(len(plan.waiting), 'person', 'people')} on the waiting list, for whom nothing is prepared:"
    tables = []
    if plan.guests:
        tables.append(_guests(plan, plan.guests, f"{come} {label_order(plan)}", _pots(plan)))
    if plan.waiting:
        tables.append(_guests(plan, plan.waiting, wait, {}))
    return tuple(tables)


def _guests(plan: ClassPlan, guests: Sequence[Guest], listed: str, pots: Mapping[str, tuple[Pot, ...]]) -> GuestTable:
    choices = [(made.batch.recipe.key, made.batch.recipe.name, dose) for made in plan.made for dose in made.batch.own.doses]
    several = len({key for key, _, _ in choices}) > 1
    heads = [f"{name}: {dose.what}" if several else sentence(dose.what) for _, name, dose in choices]
    has_age, has_allergies = any(one.age is not None for one in guests), any(one.allergies for one in guests)
    rows = []
    for number, guest in enumerate(guests):
        cells = [guest.name, *(str(one[number].number) if number < len(one) else "" for one in pots.values())]
        cells += [str(guest.age) if guest.age is not None else ""] if has_age else []
        cells += [_chosen(guest, key, dose) for key, _, dose in choices]
        cells += [guest.allergies] if has_allergies else []
        rows.append(tuple(cells))
    columns = ("Name", *pots, *(["Age"] if has_age else []), *heads, *(["Allergies"] if has_allergies else []))
    return GuestTable(listed, columns, tuple(rows))


def _pots(plan: ClassPlan) -> dict[str, tuple[Pot, ...]]:
    """Give the columns that say from which pot a guest fills, as the batch codes count them, each with the pot of every student."""
    names = {PotFor.GROUP: sentence(group_word(plan)), PotFor.STUDENT: "Pot"}
    pots = {made.pots[0].purpose: pot_of_each_student(made.pots) for made in plan.made if made.pots}
    return {name: pots[purpose] for purpose, name in names.items() if purpose in pots}


def _chosen(guest: Guest, recipe: str, dose: Dose) -> str:
    if (recipe, dose.what) not in guest.chosen:
        return "not yet"
    option = guest.chosen[recipe, dose.what]
    return within(option) if option is not None else f"no {dose.what}"


def _table(doses: Sequence[tuple[str, Dose]], total: ChoiceTotal, has_roster: bool) -> TotalTable:
    rows = tuple(
        TotalRow(
            name=option.option,
            most="; ".join(f"{where}{_most(one)}" for where, dose in doses for one in dose.each if one.option == option.option),
            chosen=str(option.chosen),
            for_chosen=grams(option.for_chosen),
            expected=grams(option.expected),
            worst=grams(option.worst),
        )
        for option in total.options
    )
    portions = counted(total.portions, "portion", "portions")
    out = [f"{counted(total.left_out, 'portion', 'portions')} with no {total.what}."] if total.left_out else []
    open_words = f"{counted(total.open, 'portion', 'portions')} without a choice yet, spread evenly over what is offered."
    return TotalTable(
        caption=f"{sentence(total.what)}: the most in one portion, and in {portions}",
        has_roster=has_roster,
        rows=rows,
        notes=(*reasons([dose for _, dose in doses]), *out, *([f"Expected: {open_words}"] if total.open else [])),
    )


def _most(one: MostOf) -> str:
    if not one.is_offered:
        return "not at this size"
    drops = drops_in_words(one)
    if not one.weight:
        return drops
    return f"{grams(one.weight)}, {drops}" if drops else grams(one.weight)
