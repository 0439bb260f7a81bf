"""The allergies of a person beside all that a class uses and offers: where each is met, and what cannot be told."""

from collections.abc import Iterable, Iterator, Mapping

from builder.model.dates.studio_class import StudioClass
from builder.model.recipe.ingredient import DeclaredAs, Ingredient
from builder.model.recipe.recipe import Recipe
from builder.model.roster.allergy import Allergy, AllergyFound, By
from builder.model.studio import Studio
from builder.reckon.roster.allergy_terms import Term
from builder.reckon.roster.word_forms import Words, holds, words_of

_SCENTS = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
Chosen = Mapping[tuple[str, str], str | None]


def reckon_allergies(studio: Studio, studio_class: StudioClass, terms: Iterable[Term], chosen: Chosen) -> tuple[Allergy, ...]:
    """Compare each thing that a person wrote with every ingredient and every option of a class. `chosen` are the options they took."""
    recipes = [studio.recipes[make.recipe.text] for make in studio_class.makes]
    return tuple(_compare(studio, recipes, term, chosen) for term in terms)


def _compare(studio: Studio, recipes: list[Recipe], term: Term, chosen: Chosen) -> Allergy:
    found, unstated = [], []
    is_scent_part = any(_is_allergen(studio, name) for name in term.names)
    for recipe in recipes:
        for card, phase, choice in _cards(studio, recipe):
            for by, named in _meets(card, term):
                taken = bool(choice) and chosen.get((recipe.key, choice)) == card.name
                found.append(AllergyFound(recipe.name, card.name, phase, choice, by, named, taken))
                break
            else:
                if is_scent_part and card.declared_as in _SCENTS and card.allergen_statement is None:
                    unstated.append(card.name)
    return Allergy(term.written, tuple(found), term.unclear, tuple(dict.fromkeys(unstated)), term.minds)


def _cards(studio: Studio, recipe: Recipe) -> Iterator[tuple[Ingredient, str, str]]:
    """Yield every card of a recipe, with its phase or its choice."""
    lines = [(line.ingredient, phase.name.text, "") for phase in recipe.phases for line in phase.lines]
    if recipe.lye:
        lines += [(alkali.name, "lye", "") for alkali in recipe.lye.alkalis]
        lines += [(liquid.name, "lye", "") for liquid in recipe.lye.liquids]
    lines += [(option, "", choice.what) for choice in recipe.choices for option in choice.options if option]
    yield from ((studio.ingredients[name.key], phase, choice) for name, phase, choice in lines)


def _meets(card: Ingredient, term: Term) -> Iterator[tuple[By, str]]:
    """Yield how a term meets a card, the surest first."""
    own = (card.name, *card.also_called)
    parts = card.label_names
    yield from ((By.FAMILY, family) for family in term.families if family in card.allergens)
    yield from ((By.KIND, kind) for kind in term.kinds if kind == card.kind)
    if any(holds(words_of(name), other) for other in term.but_not for name in own):
        return
    yield from ((By.NAME, name) for name in own if _named(name, term.names))
    yield from ((By.PART, name) for name in parts if _named(name, term.names))
    if card.allergen_statement:
        yield from ((By.STATEMENT, name) for name in card.allergen_statement.contains if _named(name, term.names))
    else:
        held = (one.name for part in card.holds for one in part.values() if one.high)
        yield from ((By.HELD, name) for name in dict.fromkeys(held) if _named(name, term.names))


def _named(name: str, runs: tuple[Words, ...]) -> bool:
    words = words_of(name)
    return any(holds(words, run) for run in runs)


def _is_allergen(studio: Studio, run: Words) -> bool:
    return any(holds(words_of(name), run) for one in studio.allergens for name in one.counts)
