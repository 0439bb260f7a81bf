"""The letter of a part, which is the same on every document of a class: A for the first of its lesson that is done at home, B for the next.

Decided: the letters follow what is done at home, since a call from a kitchen names a step by them (B5); a part that is for the class
alone has none, and its steps are counted by themselves. They run through all recipes of a class, so that no two parts have one letter:
the sheet of a second recipe begins where that of the first ends.
"""

from itertools import product
from string import ascii_uppercase

from builder.model.dates.studio_class import StudioClass
from builder.model.teaching.lesson import Part, Where

LETTERS = (*ascii_uppercase, *map("".join, product(ascii_uppercase, repeat=2)))


def letter_of(studio_class: StudioClass, part: Part) -> str:
    """Give the letter of a part; empty for one that is for the class alone, AA for the one after Z."""
    mine = (one for one in studio_class.lesson.parts if one.where is not Where.CLASS_ONLY)
    return next((letter for letter, one in zip(LETTERS, mine, strict=False) if one is part), "")
