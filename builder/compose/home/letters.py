"""The letter of a part, which is the same on every document of a class: A for the first of its lesson that is done at home, B for the next.

Decided: the letters follow what is done at home, since a call from a kitchen names a step by them (B5); the parts for the class alone that
have steps come after those, so that every step of a bench has a name as well. They run through all recipes of a class, so that no two parts
have one letter: the sheet of a second recipe begins where that of the first ends.
"""

from itertools import chain, product
from string import ascii_uppercase

from builder.model.dates.studio_class import StudioClass
from builder.model.teaching.lesson import Part, Where

LETTERS = (*ascii_uppercase, *map("".join, product(ascii_uppercase, repeat=2)))


def letter_of(studio_class: StudioClass, part: Part) -> str:
    """Return the letter of a part, AA for the one after Z; empty for one that is for the class alone and has no steps."""
    parts = studio_class.lesson.parts
    at_home = (one for one in parts if one.where is not Where.CLASS_ONLY)
    in_class = (one for one in parts if one.where is Where.CLASS_ONLY and one.steps)
    return next((letter for letter, one in zip(LETTERS, chain(at_home, in_class), strict=False) if one is part), "")
