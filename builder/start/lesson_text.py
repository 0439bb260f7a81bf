"""A lesson of a starter becomes the lesson of one recipe: where the starter says `[[weigh ...]]`, each ingredient is weighed in its step.

`[[weigh 1 into the jug]]` weighs the first phase, `[[weigh all ...]]` every phase, `[[weigh rest ...]]` those that no number names, and
`[[weigh lye ...]]` the alkalis. `[[then]]` begins a step that goes with the weighing before it. What a recipe has no phase for is left out,
and a part with nothing left to do too.

A recipe with fats that are hard in the jar, under a starter that warms nothing, has them melted first: with all that mixes with them.
"""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Phase, Recipe
from builder.words.listed import listed

_WEIGH = re.compile(r"\[\[weigh (\w+) ([^\]]+)\]\]")
_THEN = "[[then]] "
_STEP = "1. "
_AT_ONCE = 3
_WARMS = re.compile(r"\b(?:melt|warm|heat|cook)", re.IGNORECASE)
_HARD = (IngredientKind.BUTTER, IngredientKind.WAX, IngredientKind.FATTY_ACID)
_MELTED = (*_HARD, IngredientKind.OIL, IngredientKind.EMULSIFIER)
_MELT = f"{_STEP}Stand the jug in hot water and stir until all is melted. Let it cool until you can hold the jug."
_POUR = f"{_STEP}Pour what is melted to it, and stir until it is even."


def lesson_of(text: str, recipe: Recipe, called: Callable[[str], str], card_of: Callable[[str], Ingredient | None]) -> str:
    """Write the lesson; `called` gives the name of an ingredient as it stands inside a sentence, `card_of` its card."""
    head, *parts = re.split(r"^(?=## )", text, flags=re.MULTILINE)
    numbers = {int(slot) for slot, _ in _WEIGH.findall(text) if slot.isdigit()}
    melted = () if _WARMS.search(text) else tuple(_melted(recipe, card_of))
    left = replace(recipe, phases=tuple(_without(phase, melted) for phase in recipe.phases))
    kept = [_part(part, left, numbers, "[[weigh rest " in text, called, melted) for part in parts]
    return head + "".join(part for part in kept if part)


def _melted(recipe: Recipe, card_of: Callable[[str], Ingredient | None]) -> Iterator[str]:
    """Yield what is melted together: nothing where no fat is hard."""
    names = [line.ingredient.text for phase in recipe.phases for line in phase.lines]
    cards = {name: card for name in names if (card := card_of(name))}
    if any(card.kind in _HARD for card in cards.values()):
        yield from (name for name, card in cards.items() if card.kind in _MELTED)


def _without(phase: Phase, names: Sequence[str]) -> Phase:
    return replace(phase, lines=tuple(line for line in phase.lines if line.ingredient.text not in names))


def _part(text: str, recipe: Recipe, numbers: set[int], has_rest: bool, called: Callable[[str], str], melted: Sequence[str]) -> str:
    lines: list[str] = []
    empty = wanted = False
    for line in text.split("\n"):
        weigh = _WEIGH.fullmatch(line)
        if weigh:
            if melted and not wanted:
                lines += ["{caution: hot-fat}", "", *_steps(melted, "into a heatproof jug", called), _MELT]
            steps = list(_weigh(weigh[1], weigh[2], recipe, numbers, has_rest, called))
            lines += [*steps, _POUR] if melted and not wanted and steps else steps
            empty, wanted = not steps, True
        elif line.startswith(_THEN):
            lines += [] if empty else [_STEP + line.removeprefix(_THEN)]
        elif line.startswith(_STEP) and "{portion}" in line:
            lines += [*_choose(recipe), line]
        else:
            lines.append(line)
    if wanted and not any(line.startswith(_STEP) for line in lines):
        return ""
    return "\n".join(_numbered(lines))


def _weigh(slot: str, where: str, recipe: Recipe, numbers: set[int], has_rest: bool, called: Callable[[str], str]) -> Iterator[str]:
    place, _, more = where.partition("; ")
    yield from _steps(list(_named(slot, recipe, numbers, has_rest)), place, called, f" {more[:1].upper()}{more[1:]}." if more else "")


def _steps(names: Sequence[str], place: str, called: Callable[[str], str], also: str = "") -> Iterator[str]:
    for first in range(0, len(names), _AT_ONCE):
        weighed = listed(f"{{{name}}} of {called(name)}" for name in names[first : first + _AT_ONCE])
        yield f"{_STEP}Weigh {weighed} {place}.{also}"


def _named(slot: str, recipe: Recipe, numbers: set[int], has_rest: bool) -> Iterator[str]:
    if slot == "lye":
        yield from (alkali.name.text for alkali in (recipe.lye.alkalis if recipe.lye else ()))
        return
    last = max(numbers, default=0)
    for number, phase in enumerate(recipe.phases, 1):
        # Without a place for the rest the last number takes what is left.
        place = str(min(number, last) if not has_rest else number)
        if slot == "all" or slot == place or (slot == "rest" and number not in numbers):
            yield from (line.ingredient.text for line in phase.lines)
    if slot == "rest" and recipe.lye:
        yield from (liquid.name.text for liquid in recipe.lye.liquids if liquid.later)


def _choose(recipe: Recipe) -> Iterator[str]:
    for choice in recipe.choices:
        yield f"{_STEP}Choose the {choice.what}: weigh at most {{{choice.what}}} of it for each portion, and stir it in."


def _numbered(lines: list[str]) -> Iterator[str]:
    number = 0
    for line in lines:
        number = number + 1 if line.startswith(_STEP) else 0
        yield f"{number}. {line.removeprefix(_STEP)}" if number else line
