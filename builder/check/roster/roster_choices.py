"""What a roster says of choices that the class does not offer so."""

from collections.abc import Iterator, Sequence

from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, ROSTER_COLUMN_UNCLEAR, STOP, FindingKind
from builder.model.place import Name
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.roster.roster import PEOPLE, Roster, choices_meant, options_meant
from builder.model.studio import Studio
from builder.words.fold import fold
from builder.words.listed import listed
from builder.words.nearest import did_you_mean, nearest

# Parts of words by which a column may be about what somebody must not touch; such a column is never passed over.
_ABOUT_HEALTH = (
    *("allerg", "sensitiv", "intoler", "health", "medic", "diet", "skin", "asthma", "pregnan", "condition", "react", "avoid", "restrict"),
    *("special", "note", "comment", "remark", "need", "birth"),
)


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
            foreign = [column for column in roster.columns if _is_foreign(column, recipes)]
            if foreign:
                yield _ignored(foreign)
            for column in (one for one in roster.columns if one not in foreign):
                yield from _of_column(column, roster, recipes, studio)
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


def _is_foreign(column: Name, recipes: Sequence[Recipe]) -> bool:
    """Tell whether a column is of something else: no slip of the pen for one of ours, and nothing that could be about somebody's health."""
    if choices_meant(column, recipes) or nearest(column.text, [*PEOPLE, *_column_names(recipes)]):
        return False
    return not _may_be_about_people(column)


def _may_be_about_people(column: Name) -> bool:
    return any(part in column.key for part in _ABOUT_HEALTH) or "age" in column.key.split()


def _ignored(columns: Sequence[Name]) -> Finding:
    names = listed([f'"{column}"' for column in columns])
    wrong = f"Nothing here makes use of {names}; what stands there is read by nobody and printed nowhere."
    remedy = "Take such columns out before you keep the file: what is not there cannot get lost. Or accept this with a reason."
    return caution("roster-columns-ignored", columns[0].place, wrong, remedy)


def _of_column(column: Name, roster: Roster, recipes: Sequence[Recipe], studio: Studio) -> Iterator[Finding]:
    meant = choices_meant(column, recipes)
    if len(meant) > 1:
        names = listed((f'"{recipe.key} {choice.what}"' for recipe, choice in meant), "or")
        wrong = f'"{column}" is a choice of several products of this class, so nobody can tell which is meant.'
        yield stop("roster-column-unclear", column.place, wrong, f"Name the recipe too: {names}.")
    elif not meant:
        known = [*PEOPLE, *_column_names(recipes)]
        wrong = f'"{column}" is neither a column about people nor a choice of what this class makes.'
        health = " What people write of their health goes into `allergies`." if _may_be_about_people(column) else ""
        remedy = f"These may stand here: {', '.join(known)}.{did_you_mean(column.text, known)}{health}"
        yield stop("roster-column-unknown", column.place, wrong, remedy)
    # An option that no card answers to is a finding of its own; what the cells mean is known once it is named right.
    elif all(option is None or studio.ingredient(option) for option in meant[0][1].options):
        for row in roster.rows:
            cell = row.choices[column.key]
            if cell.text and not options_meant(cell, meant[0][1], studio.ingredients):
                yield _option_unknown(cell, *meant[0])


def _column_names(recipes: Sequence[Recipe]) -> list[str]:
    """Return the columns that may stand there, the short form where only one product has the choice."""
    offered = [(recipe, choice.what) for recipe in recipes for choice in recipe.choices]
    whats = [what for _, what in offered]
    return [what if whats.count(what) == 1 else f"{recipe.key} {what}" for recipe, what in offered]


def _option_unknown(cell: Name, recipe: Recipe, choice: Choice) -> Finding:
    options = [option.text if option else f"no {choice.what}" for option in choice.options]
    wrong = f'{recipe.name} offers no {choice.what} called "{cell}".'
    remedy = f"Write one of these, or leave the cell empty: {', '.join(options)}.{did_you_mean(cell.text, options)}"
    return stop("roster-option-unknown", cell.place, wrong, remedy)
