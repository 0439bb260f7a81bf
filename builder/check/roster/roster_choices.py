"""What a roster says of choices that the class does not offer so."""

from collections.abc import Iterator, Sequence

from builder.check.roster.roster_columns import are_passed_over, is_unknown, meant_for_ours, tells_of_allergies, tells_of_health
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, ROSTER_COLUMN_UNCLEAR, STOP, FindingKind
from builder.model.place import Name
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.roster.column_twice import column_stands_twice
from builder.model.roster.roster import Roster, UnreadCell, choices_meant, options_meant
from builder.model.studio import Studio
from builder.words.fold import fold
from builder.words.listed import listed
from builder.words.nearest import did_you_mean


@rule_on(
    STUDIO,
    ROSTER_COLUMN_UNCLEAR,
    FindingKind("roster-column-unknown", STOP, "A roster has a column that is neither about people nor a choice of the class."),
    FindingKind("roster-columns-ignored", CAUTION, "A roster has columns of which nothing here makes use."),
    FindingKind("roster-option-unknown", STOP, "A person of the roster has chosen what the class does not offer."),
)
def find_roster_choices_unknown(studio: Studio) -> Iterator[Finding]:
    """Look up each column of each roster among the choices of the class, and each option among those of its choice."""
    for key, roster in studio.rosters.items():
        studio_class = studio.classes.get(key)
        made = studio_class.recipe_keys if studio_class else ()
        # What cannot be read, or is missing, is a finding of its own; nobody knows what choices it offers.
        if made and all(name in studio.recipes for name in made):
            recipes = [studio.recipes[name] for name in made]
            yield from _of_columns(roster, recipes, studio)
            yield from _sizes_unknown(
                roster, [size.written for make in studio_class.makes for size in make.at_home] if studio_class else []
            )


def _sizes_unknown(roster: Roster, sizes: Sequence[str]) -> Iterator[Finding]:
    """Look up each size of a take-home sheet that somebody wants among those that the class has."""
    known = list(dict.fromkeys(sizes))
    for cell in (row.at_home for row in roster.rows):
        if cell.text and cell.key not in map(fold, known):
            wrong = f'This class has no take-home sheet of the size "{cell}".'
            there = f"Write one of these, or leave the cell empty: {', '.join(known)}." if known else "Leave the cell empty."
            yield stop("roster-option-unknown", cell.place, wrong, f"{there}{did_you_mean(cell.text, known)}")


def _of_columns(roster: Roster, recipes: Sequence[Recipe], studio: Studio) -> Iterator[Finding]:
    passed_over = []
    for at, column in enumerate(roster.columns):
        if meant := choices_meant(column, recipes):
            yield from _of_choice(column, meant, roster, studio)
            if column.key in [other.key for other in roster.columns[:at]]:
                yield column_stands_twice(column)
        elif ours := meant_for_ours(column, roster, recipes, studio.ingredients):
            yield stop("roster-column-unknown", column.place, *is_unknown(column, ours, recipes))
        elif tells_of_allergies(column, roster, studio.allergy_words):
            yield stop("roster-column-unknown", column.place, *tells_of_health(column))
        else:
            passed_over.append(column)
    if passed_over:
        yield caution("roster-columns-ignored", passed_over[0].place, *are_passed_over(passed_over, roster))


def _of_choice(column: Name, meant: Sequence[tuple[Recipe, Choice]], roster: Roster, studio: Studio) -> Iterator[Finding]:
    if len(meant) > 1:
        names = listed((f'"{recipe.key} {choice.what}"' for recipe, choice in meant), "or")
        wrong = f'"{column}" is a choice of several products of this class, so nobody can tell which is meant.'
        yield stop("roster-column-unclear", column.place, wrong, f"Name the recipe too: {names}.")
    # An option that no card answers to is a finding of its own; what the cells mean is known once it is named right.
    elif all(option is None or studio.ingredient(option) for option in meant[0][1].options):
        for row in roster.rows:
            cell = row.choices[column.key]
            if isinstance(cell, UnreadCell):
                yield _option_unread(cell, meant[0][1])
            elif cell.text and not options_meant(cell, meant[0][1], studio.ingredients):
                yield _option_unknown(cell, *meant[0])


def _option_unknown(cell: Name, recipe: Recipe, choice: Choice) -> Finding:
    options = _written(choice)
    wrong = f'{recipe.name} offers no {choice.what} called "{cell}".'
    remedy = f"Write one of these, or leave the cell empty: {', '.join(options)}.{did_you_mean(cell.text, options)}"
    return stop("roster-option-unknown", cell.place, wrong, remedy)


def _option_unread(cell: UnreadCell, choice: Choice) -> Finding:
    wrong = f"What {choice.what} this person has chosen cannot be read: {cell.problem}."
    remedy = f"Correct that cell in your spreadsheet, or write one of these into it, or leave it empty: {', '.join(_written(choice))}."
    return stop("roster-option-unknown", cell.place, wrong, remedy)


def _written(choice: Choice) -> list[str]:
    return [option.text if option else f"no {choice.what}" for option in choice.options]
