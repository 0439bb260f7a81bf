"""Whether the hands of a lesson put milk into a lye as it is usually done: frozen, with the jug in ice, so that its sugar does not scorch.

Common practice, no source: milk is frozen to slush or cubes, the lye sprinkled onto it a little at a time, and the jug stands in ice.
"""

import re
from collections.abc import Iterator, Sequence

from builder.model.dates.studio_class import StudioClass
from builder.model.studio import Studio
from builder.model.teaching.lesson import Part, sentences_in
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import orders, says
from builder.rules.part_recipe import class_parts, home_parts

_FROZEN = re.compile(r"\b(?:frozen|freeze[sr]?|freezing|slush\w*)\b", re.IGNORECASE)
_ICE = re.compile(r"\bice\b(?!\W+cubes? of)", re.IGNORECASE)
_SLUSH = re.compile(r"\bslush\w*\b", re.IGNORECASE)
_NOT_YET = re.compile(r"\b(?:not|isn['’]t)\W+(?:(?:yet|quite|fully|all)\W+)*frozen\b|\bstill\W+(?:soft|liquid|runny)\b", re.IGNORECASE)
_WAIT = re.compile(r"\b(?:wait|longer|another\W+hour|back\W+in(?:to)?\W+the\W+freezer)\b", re.IGNORECASE)
_NOT_USED = re.compile(r"\bfrozen\b[^,;:]*\b(?:(?:is|are)\W+(?:not|never)\W+used|(?:does|do)\W+not\W+go\W+in)\b", re.IGNORECASE)
_THAW = re.compile(r"\b(?:thaw|defrost|(?:warm|heat|melt)\W+(?:the\W+)?frozen\W+milk)\b", re.IGNORECASE)


def classes_with_liquid_milk(studio: Studio, recipe: str) -> Iterator[StudioClass]:
    """Yield the classes that make a recipe of which the lesson, or what of it is done at home, does not say that milk goes in frozen.

    A class whose lesson was not read is left out.
    """
    for one in studio.classes_by_recipe.get(recipe, ()):
        at_home = any(make.at_home for make in one.makes if make.recipe.text == recipe)
        lessons = [class_parts(one, recipe), *([home_parts(one, recipe)] if at_home else [])]
        if one.lesson.parts and not all(map(_says_so, lessons)):
            yield one


def _says_so(parts: Sequence[Part]) -> bool:
    said = [sentence for part in parts for sentence in sentences_in(part.blocks)]
    return any(map(_goes_in_frozen, said)) and any(says(one, _ICE) for one in said)


def _goes_in_frozen(sentence: Sentence) -> bool:
    """Tell whether a sentence has milk frozen, and does not order it thawed beyond slush, or has none go in before it is."""
    thaws = orders(sentence, _THAW) and not says(sentence, _SLUSH)
    return (says(sentence, _FROZEN) or _waits_for_frost(sentence)) and not thaws


def _waits_for_frost(sentence: Sentence) -> bool:
    """Tell whether a sentence has people wait where milk is not frozen yet, or leave such milk out."""
    if not _NOT_YET.search(sentence.words):
        return False
    return orders(sentence, _WAIT) or _NOT_USED.search(sentence.words) is not None
