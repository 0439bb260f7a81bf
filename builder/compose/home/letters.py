"""The letter of a part, which is the same on every document of a class: A for the first of its lesson that is done at home, B for the next.

Decided: the letters follow what is done at home, since a call from a kitchen names a step by them (B5); the parts for the class alone that
have steps come after those, so that every step of a bench has a name as well. They run through all recipes of a class, so that no two parts
have one letter: the sheet of a second recipe begins where that of the first ends.
"""

from itertools import chain, product
from string import ascii_uppercase

from builder.compose.recipe.wording import within
from builder.model.dates.studio_class import StudioClass
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part, Where
from builder.rules.part_recipe import home_parts
from builder.words.listed import listed
from builder.words.say import say, say_count

LETTERS = (*ascii_uppercase, *map("".join, product(ascii_uppercase, repeat=2)))


def letter_of(studio_class: StudioClass, part: Part) -> str:
    """Return the letter of a part, AA for the one after Z; empty for one that is for the class alone and has no steps."""
    parts = studio_class.lesson.parts
    at_home = (one for one in parts if one.where is not Where.CLASS_ONLY)
    in_class = (one for one in parts if one.where is Where.CLASS_ONLY and one.steps)
    return next((letter for letter, one in zip(LETTERS, chain(at_home, in_class), strict=False) if one is part), "")


def letters_of_others(studio: Studio, studio_class: StudioClass, recipe: str) -> tuple[str, ...]:
    """Return for each other recipe of a class its letters before the last one of this recipe, in words, so that nobody looks for them."""
    own = [letter_of(studio_class, part) for part in home_parts(studio_class, recipe)]
    before = set(LETTERS[: LETTERS.index(own[-1])] if own else ())
    lines = []
    for other in studio_class.recipe_keys:
        letters = [letter for part in home_parts(studio_class, other) if (letter := letter_of(studio_class, part)) in before]
        if other != recipe and letters:
            line = say_count(
                "Not on this sheet: part {letters}, for {recipe}.",
                "Not on this sheet: parts {letters}, for {recipe}.",
                len(letters),
                letters=_in_a_row(letters),
                recipe=within(studio.recipes[other].name),
            )
            lines.append(line)
    return tuple(lines)


def _in_a_row(letters: list[str]) -> str:
    places = [LETTERS.index(letter) for letter in letters]
    if len(letters) > 2 and places[-1] - places[0] == len(letters) - 1:
        return say("{first} to {last}", first=letters[0], last=letters[-1])
    return listed(letters)
