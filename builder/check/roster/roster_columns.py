"""Columns of a roster that are neither about people nor a choice of the class: of a booking system, or one of ours by another name.

Decided: such a column is passed over, in a caution that names it, only if neither its head nor a cell of it speaks for one of ours. What
may be about health stops, in any words. Why: an allergy in a column that nobody reads looks like no allergy.
"""

import re
from collections.abc import Mapping, Sequence
from difflib import SequenceMatcher

from builder.model.place import Name
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import Choice, Recipe
from builder.model.roster.allergy import AllergyWords, Says
from builder.model.roster.roster import About, Roster, options_meant
from builder.words.fold import fold
from builder.words.listed import listed

# How words begin in the heads of columns that may be about what somebody must not touch, in the languages of many forms; and what stands
# within such words. Common practice, no source.
_BEGINNINGS = (
    *("health", "gesundheit", "sant\u00e9", "salud", "medic", "medik", "diet", "nutrition", "food", "vegan", "vegetarian", "gluten"),
    *("lactose", "latex", "epi-?pen", "inhaler", "asthma", "eczema", "psoriasis", "dermat", "rash", "skin", "haut", "peau", "piel"),
    *("hay ?fever", "epilep", "diabet", "pregnan", "breastfe", "condition", "react", "irritat", "avoid", "restrict", "cannot", "can't"),
    *("must not", "watch out", "special", "need", "requirement", "access", "disab", "mobility", "wheelchair", "illness", "injur"),
    *("doctor", "physician", "should know", "to know", "aware", "tell us", "anything", "concern", "note", "comment", "remark", "bemerk"),
    *("remarque", "hinweis", "observ", "message", "additional info", "other info", "further info", "more info", "extra info"),
)
_WITHIN = ("allerg", "alerg", "sensit", "sensib", "empfindlich", "intoler", "vertr\u00e4glich", r"nuts?\b")
_HEALTH = re.compile(rf"\b(?:{'|'.join(_BEGINNINGS)})|{'|'.join(_WITHIN)}")
_AGE = re.compile(r"\b(?:ages?|aged|dob|birth\w*|born|old|years?|minors?|under)\b")
# Words of heads under which nobody writes of an allergy, whatever stands there: an address may be 12 Almond Road. Common practice, no
# source.
_OF_A_BOOKING = re.compile(
    r"\b(?:phone|telephone|tel|mobile|cell|fax|e-?mail|mail|address|street|town|city|county|state|country|postal|post ?code|zip|order"
    r"|booking|ticket|invoice|receipt|payment|paid|price|fee|total|amount|currency|discount|coupon|voucher|refund|tax|vat|status|id|number"
    r"|no|ref|reference|code|url|web|website|company|firm|first|last|surname|family|given|name|title)\b"
)
_ALIKE = 0.76
_WORD = re.compile(r"[^\W_]+")


def meant_for_ours(column: Name, roster: Roster, recipes: Sequence[Recipe], cards: Mapping[str, Ingredient]) -> tuple[str, ...]:
    """Return the columns of ours that may be meant by one that is none of them: by its head, or as its cells name options of a choice.

    What the roster has under its own head is not meant once more, but for allergies.
    """
    if _HEALTH.search(column.text.casefold()):
        return (About.ALLERGIES,)
    there = {*roster.about_people, *(other.key for other in roster.columns if other is not column)} - {About.ALLERGIES}
    of_choices = _choice_columns(recipes)
    names = [name for name in (*About, *(name for name, _ in of_choices)) if fold(name) not in there]
    found = [name for name in names if _is_near(column.key, fold(name))]
    if About.AGE in names and _AGE.search(column.key):
        found.append(About.AGE)
    if About.WAITING in names and column.key.startswith("wait"):
        found.append(About.WAITING)
    cells = [row.choices[column.key] for row in roster.rows]
    found += [name for name, choice in of_choices if name in names and any(_names_an_option(cell, choice, cards) for cell in cells)]
    return tuple(dict.fromkeys(found))


def _is_near(key: str, name: str) -> bool:
    """Tell whether a head is a name of ours with a slip of the pen, or holds all of its words (`booking date`)."""
    alike = max(SequenceMatcher(None, one, other).ratio() for one, other in ((key, name), (name, key)))
    return alike >= _ALIKE or set(_WORD.findall(name)) <= set(_WORD.findall(key))


def _names_an_option(cell: Name, choice: Choice, cards: Mapping[str, Ingredient]) -> bool:
    return any(option is not None for option in options_meant(cell, choice, cards))


def tells_of_allergies(column: Name, roster: Roster, known: Sequence[AllergyWords]) -> bool:
    """Tell whether somebody has written of an allergy in a column whose head does not say what stands there."""
    if _OF_A_BOOKING.search(column.key):
        return False
    texts = sorted({fold(word) for row in known if row.says is Says.AN_ALLERGEN for word in row.words}, key=len, reverse=True)
    told = re.compile(rf"\b(?:{'|'.join(map(re.escape, texts))})(?:s|es)?\b|allerg|intoleran")
    return any(told.search(row.choices[column.key].key) for row in roster.rows)


def is_unknown(column: Name, meant: Sequence[str], recipes: Sequence[Recipe]) -> tuple[str, str]:
    """Return what is wrong with a column that may be one of ours, told by its head alone."""
    known = [*About, *(name for name, _ in _choice_columns(recipes))]
    wrong = f'"{column}" is neither a column about people nor a choice of what this class makes, and may be meant for one.'
    if About.ALLERGIES in meant:
        remedy = (
            "What people write of their health goes into `allergies`, where it is compared; call this column so, or move what it tells."
        )
    else:
        near = listed([f'"{name}"' for name in meant], "or")
        remedy = f"Did you mean {near}?"
    return wrong, f"{remedy} Else take it out. These may stand here: {', '.join(known)}."


def tells_of_health(column: Name) -> tuple[str, str]:
    """Return what is wrong with a column in which somebody has written of an allergy."""
    wrong = f'Under "{column}" somebody has written of what they may not touch, and nothing of that column is compared with what is made.'
    return wrong, "Call the column `allergies`, or move what it tells there and take it out."


def are_passed_over(columns: Sequence[Name], roster: Roster) -> tuple[str, str]:
    """Return what is wrong with all columns of which nothing makes use: once, with their heads and nothing else of them."""
    names = listed([f'"{column}"' for column in columns])
    wrong = f"Nothing here makes use of {names}; what stands there is printed nowhere, and compared with nothing."
    there = "" if About.ALLERGIES in roster.about_people else " No column is called `allergies`: if one of these is about that, call it so."
    return wrong, f"Take such columns out before you keep the file: what is not there cannot get lost. Or accept this with a reason.{there}"


def _choice_columns(recipes: Sequence[Recipe]) -> list[tuple[str, Choice]]:
    """Return each choice that may have a column, in order, with its head: the short form where only one product has the choice."""
    offered = [(recipe.key, choice) for recipe in recipes for choice in recipe.choices]
    whats = [choice.what for _, choice in offered]
    return [(choice.what if whats.count(choice.what) == 1 else f"{key} {choice.what}", choice) for key, choice in offered]
