"""An ingredient of a recipe that no step of the class, or of the take-home sheet, puts in.

A lesson that names its amounts in braces is followed to the letter by a person who is alone with the sheet: what no step names stays on
the table. Words count as braces do (`rules/ingredient_words.py`).

Decided: a lesson that names less than half of its ingredients in braces is not looked at. Why: it is written in words of its own, and a
false alarm on each of them costs trust.
"""

from collections.abc import Iterable, Iterator, Sequence

from builder.check.rule import CLASS_IN_STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Name, Place
from builder.model.recipe.column import Column, Role
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.recipe import Recipe
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.lesson import Part
from builder.rules.ingredient_words import Call, Instructions
from builder.rules.naming import Unknown, WholeBatch, meaning_of, weighings
from builder.rules.part_recipe import followed
from builder.words.fold import fold
from builder.words.listed import listed
from builder.words.nearest import nearest
from builder.words.within import within

_ONLY_WITH_BRACES = 2
_LYE = (Role.ALKALI, Role.LYE_WATER)


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind("ingredient-in-no-step", CAUTION, "No step of a lesson puts in an ingredient of its recipe."),
)
def find_ingredients_in_no_step(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Compare what each recipe holds with what the steps of its class, and of its take-home sheet, put in."""
    for made in plan.made:
        # Lye that nobody handles is a stop of its own.
        elsewhere = () if made.taught.lye_by else _LYE
        left: dict[tuple[Place, tuple[str, ...]], list[str]] = {}
        for one in followed(plan, made):
            last, names = _left_out(one.parts, one.column, made.batch.recipe, studio, elsewhere)
            if last is not None and names:
                left.setdefault((last.place, names), []).append(one.where)
        for (place, names), documents in left.items():
            yield _finding(plan, made, place, names, " or ".join(documents))


def _finding(plan: ClassPlan, made: MadeProduct, place: Place, names: tuple[str, ...], where: str) -> Finding:
    it, first = "it" if len(names) == 1 else "them", within(names[0])
    return caution(
        "ingredient-in-no-step",
        place,
        f"{made.batch.recipe.name}: the recipe holds {listed([within(name) for name in names])}, and no step {where} puts {it} in. "
        f"Whoever follows the steps leaves {it} out.{_harm(made, names)}",
        f"Add a step that names {it} in braces, for example `Stir in {{{first}}} of {first}.`",
        about=frozenset({WholeClass(plan.studio_class.key)}),
    )


def _harm(made: MadeProduct, names: tuple[str, ...]) -> str:
    """Return in words what comes of it where people can be hurt."""
    cards = [w.line.ingredient for w in made.batch.grams.weighed if w.line.ingredient.name in names]
    lye = " Then lye can be left over in the soap." if made.batch.recipe.lye and any(card.counts_as.is_oil for card in cards) else ""
    return lye + (
        " Then bacteria and mould can grow in the product." if any(card.kind is IngredientKind.PRESERVATIVE for card in cards) else ""
    )


def _left_out(
    parts: Sequence[Part], column: Column, recipe: Recipe, studio: Studio, elsewhere: tuple[Role, ...]
) -> tuple[Part | None, tuple[str, ...]]:
    """Return the names of what no step puts in, without the roles that are said elsewhere, and the last part that names any in braces."""
    calls = _calls(column)
    named, last = _named(parts, column, recipe, studio)
    in_braces = [call for key, call in calls.items() if key in named]
    if "" in named or len(in_braces) < max(_ONLY_WITH_BRACES, len(calls) / 2):
        return last, ()
    steps, taken = Instructions.of(parts), frozenset(word for call in in_braces for word in call.words)
    missing = {w.line.ingredient.key for w in column.weighed if w.line.role not in elsewhere} - named
    left = tuple(call.card.name for key, call in calls.items() if key in missing and not steps.put_in(call, taken))
    return last, () if left and steps.put_everything_in else left


def _calls(column: Column) -> dict[str, Call]:
    """Return everything that is weighed, by its key."""
    phases: dict[str, set[str]] = {}
    for w in column.weighed:
        phases.setdefault(w.line.ingredient.key, set()).add(fold(w.line.phase))
    cards = {w.line.ingredient.key: w.line.ingredient for w in column.weighed if w.mass}
    return {key: Call(card, frozenset(phases[key] - {""})) for key, card in cards.items()}


def _named(parts: Iterable[Part], column: Column, recipe: Recipe, studio: Studio) -> tuple[set[str], Part | None]:
    """Return the keys of what braces name, an empty one for the batch as a whole, and the last part that names any."""
    found: set[str] = set()
    last = None
    for part in parts:
        for mention in part.mentions:
            keys = _keys(mention.name, column, recipe, studio)
            found |= keys
            last = part if keys else last
    return found, last


def _keys(name: Name, column: Column, recipe: Recipe, studio: Studio) -> set[str]:
    match meaning_of(name, recipe, studio):
        case WholeBatch():
            return {""}
        case Unknown():
            # A name that is misspelt is a finding of its own, and means what it is like.
            return {fold(one) for one in nearest(name.text, [w.line.ingredient.name for w in column.weighed], most=1)}
        case meant:
            return {w.line.ingredient.key for w in weighings(column, meant)}
