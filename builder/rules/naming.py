"""What a name in braces means for a recipe: an ingredient, a phase, the batch, or one of a few fixed words. It is resolved here alone.

Whoever checks, works out or writes asks for the meaning and goes by it. Fixed words come before ingredients, these before phases, and what
is chosen comes last. An ingredient that is also the water of the lye is meant as it stands in the phases.

Decided: a name in braces is resolved by the recipe alone, in `rules/naming.py`; `oils`, `lye` and the like mean weighings in a soap,
elsewhere they are names of phases. Why: what is checked, worked out and printed is one meaning; `{oils}` in a scrub is the whole phase,
as its recipe says.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.place import Name
from builder.model.recipe.column import Column, Role, Weighed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import Recipe
from builder.model.remembered import remembered
from builder.model.studio import Studio
from builder.words.fold import fold

BRACES = re.compile(r"\{([^{}]+)\}")  # A name in a text that is not Markdown.
STROKES = " strokes"  # After the name of what has a pump: how often to press it.
IN_ALL = " in all"  # After what is chosen: the most for every container of the batch together.


@dataclass(frozen=True)
class WholeBatch:
    """`{batch}`: all weighings together."""


@dataclass(frozen=True)
class OfPortions:
    """What is read from the portions: what goes into a container, a cup, how many there are, the volume, what stays in the pot.

    `each student` is how many containers a student fills in class, and all of them at home.
    """

    word: str


@dataclass(frozen=True)
class Superfat:
    """`{superfat}`: that of the amounts as weighed."""


@dataclass(frozen=True)
class OfLye:
    """The weighings of some roles in a soap: alkali, its water, both as a solution, the oils."""

    word: str
    roles: tuple[Role, ...]

    @property
    def is_solution(self) -> bool:
        """Tell whether alkali and water are meant as what they make together."""
        return len(self.roles) > 1


@dataclass(frozen=True)
class IngredientNamed:
    """An ingredient of the recipe, by the key of its card; `in_strokes` of its pump, where the document is for the class."""

    key: str
    in_strokes: bool = False


@dataclass(frozen=True)
class PhaseNamed:
    """All that is weighed in a phase, by its folded name."""

    phase: str


@dataclass(frozen=True)
class ChoiceNamed:
    """What students choose (`{scent}`), by the folded word; `in_all` for all containers of the batch together."""

    what: str
    in_all: bool = False


@dataclass(frozen=True)
class OptionNamed:
    """One option of a choice that is no ingredient of the recipe besides, by the key of its card."""

    key: str


@dataclass(frozen=True)
class Unmeasured:
    """Strokes of something of which nobody has measured a pump; `of` is what would be pumped."""

    of: "Meaning"


@dataclass(frozen=True)
class Unknown:
    """Nothing that the recipe knows."""


Meaning = WholeBatch | OfPortions | Superfat | OfLye | IngredientNamed | PhaseNamed | ChoiceNamed | OptionNamed | Unmeasured | Unknown

VOLUME, LEFT_IN_THE_POT = OfPortions("volume"), OfPortions("left in the pot")
PORTION, CUP, CONTAINERS, EACH_STUDENT = map(OfPortions, ("portion", "cup", "containers", "each student"))
FIXED: Mapping[str, Meaning] = {"batch": WholeBatch()} | {
    one.word: one for one in (PORTION, CUP, CONTAINERS, EACH_STUDENT, VOLUME, LEFT_IN_THE_POT)
}
FOR_SOAP: Mapping[str, Meaning] = {
    "oils": OfLye("oils", (Role.OIL,)),
    "lye": OfLye("lye", (Role.ALKALI,)),
    "lye water": OfLye("lye water", (Role.LYE_WATER,)),
    "lye solution": OfLye("lye solution", (Role.ALKALI, Role.LYE_WATER)),
    "superfat": Superfat(),
}


def meaning_of(name: Name, recipe: Recipe, studio: Studio) -> Meaning:
    """Return what a name in braces means for a recipe."""
    return meanings(recipe, studio).get(name.key, Unknown())


@remembered(4096)
def meanings(recipe: Recipe, studio: Studio) -> Mapping[str, Meaning]:
    """Return every name that braces may hold for a recipe, folded, with what it means; also strokes of what has no pump."""
    found: dict[str, Meaning] = dict(fixed_words(recipe, studio))
    lye = [*(one.name for one in recipe.lye.liquids), *(one.name for one in recipe.lye.alkalis)] if recipe.lye else []
    for name in (*(line.ingredient for line in recipe.lines), *lye):
        card = studio.ingredient(name)
        for called in (name.text, card.name, *card.also_called) if card else (name.text,):
            found.setdefault(fold(called), IngredientNamed(card.key if card else name.key))
    for phase in recipe.phases:
        found.setdefault(phase.name.key, PhaseNamed(phase.name.key))
    for choice in recipe.choices:
        for in_all in (False, True):
            found.setdefault(fold(choice.what) + IN_ALL * in_all, ChoiceNamed(fold(choice.what), in_all))
    options = (studio.ingredient(option) for choice in recipe.choices for option in choice.options if option is not None)
    for option in (card for card in options if card):
        for called in (option.name, *option.also_called):
            found.setdefault(fold(called), OptionNamed(option.key))
    pumped = _pumped(studio)
    for called, meant in tuple(found.items()):
        match meant:
            case IngredientNamed(key) if key in pumped:
                found.setdefault(called + STROKES, IngredientNamed(key, in_strokes=True))
            case _:
                found.setdefault(called + STROKES, Unmeasured(meant))
    return found


@remembered(8)
def _pumped(studio: Studio) -> frozenset[str]:
    """Return the keys of the ingredients that a pump of the studio measures."""
    return frozenset(card.key for one in studio.supplies if (card := studio.ingredient(one.name)) and one.stroke(card))


def fixed_words(recipe: Recipe, studio: Studio) -> Mapping[str, Meaning]:
    """Return the names that need no ingredient. A soap whose lye is still missing is spoken of as a soap all the same."""
    return {**FIXED, **FOR_SOAP} if recipe.lye or studio.products[recipe.product].made_with_lye else FIXED


def is_solution(meant: Meaning) -> bool:
    """Tell whether a name means alkali and water as what they make together."""
    return isinstance(meant, OfLye) and meant.is_solution


def weighings(column: Column, meant: Meaning) -> tuple[Weighed, ...]:
    """Return the weighings of a column that are meant one by one; none for the batch as a whole, for portions and for what is chosen."""
    match meant:
        case OfLye(roles=roles):
            named = tuple(w for w in column.weighed if w.line.role in roles)
            # Of ready-mixed lye the solution is what its bottles hold; the water beside it is never poured into the lye.
            solutions = tuple(w for w in named if w.line.strength is not None)
            return solutions if meant.is_solution and solutions else named
        case IngredientNamed(key):
            mine = tuple(w for w in column.weighed if w.line.ingredient.key == key)
            return tuple(w for w in mine if w.line.role is not Role.LYE_WATER) or mine
        case PhaseNamed(phase):
            return tuple(w for w in column.weighed if fold(w.line.phase) == phase)
        case Unmeasured(of):
            return weighings(column, of)
    return ()


def options_of(recipe: Recipe, meant: Meaning, studio: Studio) -> tuple[Ingredient, ...]:
    """Return the ingredients from which students choose where a name means a choice, or one of its options."""
    match meant:
        case ChoiceNamed(what):
            choice = next((one for one in recipe.choices if fold(one.what) == what), None)
        case OptionNamed(key):
            choice = next((one for one in recipe.choices if any(c and c.key == key for c in map(studio.ingredient, one.options))), None)
        case _:
            choice = None
    cards = (studio.ingredient(option) for option in choice.options if option is not None) if choice else ()
    return tuple(card for card in cards if card)
