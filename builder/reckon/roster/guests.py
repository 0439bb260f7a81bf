"""Who comes on a date and what each has chosen, and what the choices of a product come to for all portions."""

from collections import Counter
from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import ceil

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.dose.dose import Dose
from builder.model.recipe.recipe import Recipe
from builder.model.roster.roster import Guest, Roster, RosterRow, choices_meant, options_meant, rows_of
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ChoiceTotal, Containers, OptionTotal
from builder.reckon.roster.allergies import reckon_allergies
from builder.reckon.roster.allergy_terms import vocabulary_of


def reckon_guests(studio: Studio, studio_class: StudioClass, date: ClassDate | None, *, waiting: bool = False) -> tuple[Guest, ...]:
    """Return the people of a date, or those who wait for a seat, in the order of the roster; none where the class has no roster."""
    roster = studio.rosters.get(studio_class.key)
    if roster is None:
        return ()
    rows = tuple(rows_of(roster, studio_class, date, waiting=waiting))
    words = vocabulary_of(studio) if any(row.allergies for row in rows) else None
    guests = []
    for row in rows:
        chosen = _chosen(studio, studio_class, roster, row)
        compared = reckon_allergies(studio, studio_class, words.terms(row.allergies), chosen) if words and row.allergies else ()
        places = (row.at("allergies"), row.at("settled"))
        own_name = row.own_name.text if studio.profile.labels.own_names else ""
        told = (row.design, own_name, row.at_home.text)
        guests.append(Guest(row.name.text, row.age, row.allergies, chosen, compared, row.settled, *places, *told))
    return tuple(guests)


def _chosen(studio: Studio, studio_class: StudioClass, roster: Roster, row: RosterRow) -> Mapping[tuple[str, str], str | None]:
    recipes = [studio.recipes[make.recipe.text] for make in studio_class.makes]
    found: dict[tuple[str, str], str | None] = {}
    for column in roster.columns:
        for recipe, choice in choices_meant(column, recipes):
            for option in options_meant(row.choices[column.key], choice, studio.ingredients):
                found[recipe.key, choice.what] = option
    return found


def reckon_choices(recipe: Recipe, containers: Sequence[Containers]) -> tuple[ChoiceTotal, ...]:
    """Return for each choice what all portions can need of each option, whatever containers the batch fills.

    A guest's choice is that of all of their portions. What nobody has chosen yet, spare portions included, is expected to fall evenly on
    what is offered, leaving it out among it, and whole portions, or packages of several, are counted upwards.
    """
    totals: dict[str, ChoiceTotal] = {}
    for one in containers:
        for dose in one.filling.doses:
            found = _of_choice(recipe, one, dose)
            totals[dose.what] = _add(totals[dose.what], found) if dose.what in totals else found
    return tuple(totals.values())


def _add(one: ChoiceTotal, other: ChoiceTotal) -> ChoiceTotal:
    more = {option.option: option for option in other.options}
    options = (
        OptionTotal(a.option, a.chosen + b.chosen, a.for_chosen + b.for_chosen, a.expected + b.expected, a.worst + b.worst)
        for a, b in ((option, more[option.option]) for option in one.options)
    )
    return ChoiceTotal(one.what, one.portions + other.portions, one.left_out + other.left_out, one.open + other.open, tuple(options))


def _of_choice(recipe: Recipe, containers: Containers, dose: Dose) -> ChoiceTotal:
    units, portions, chosen = containers.filling.fill.units, containers.in_all, Counter[str | None]()
    for jar in containers.jars:
        if jar.guest and (recipe.key, dose.what) in jar.guest.chosen:
            chosen[jar.guest.chosen[recipe.key, dose.what]] += jar.units
    unknown = max(portions - chosen.total(), 0)
    share = ceil(Fraction(unknown, units * max(len(dose.offered), 1))) * units
    options = tuple(
        OptionTotal(
            option=one.option,
            chosen=chosen[one.option],
            for_chosen=one.to_have_ready * chosen[one.option],
            expected=one.to_have_ready * (chosen[one.option] + share),
            worst=one.to_have_ready * portions,
        )
        for one in dose.each
    )
    return ChoiceTotal(dose.what, portions, chosen[None], unknown, options)
