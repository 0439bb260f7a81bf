"""An ingredient list that cannot be printed truthfully."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import ACCEPTABLE_STOP, FindingKind
from builder.model.label.ingredient_list import Question
from builder.model.place import Place
from builder.model.recipe.column import Line, Role
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import ListedAs
from builder.words.fold import fold

# So many pairs with one remedy are named; a base without figures can leave hundreds open.
MOST_NAMED = 6
_OPEN = "Nothing proves which of two ingredients there is more of in this product, so the order on its label would be a guess."


@rule_on(
    BATCH,
    FindingKind(
        "label-name-missing",
        ACCEPTABLE_STOP,
        "Nothing says how the label declares an ingredient, so that no label of the recipe can be true.",
    ),
    FindingKind("label-name-twice", ACCEPTABLE_STOP, "A card lists an ingredient twice, so that nobody knows how much of it there is."),
    FindingKind("label-order-open", ACCEPTABLE_STOP, "Nothing proves which of two ingredients comes first on the label."),
)
def find_open_label_orders(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the ingredient lists of all variants; each name or pair is reported once, of many pairs the first."""
    for name in sorted({name for variant in batch.filling.variants for name in variant.ingredients.nameless}):
        yield batch.label_stop("label-name-missing", _place_of(name, batch), *_nameless(name, batch), "")
    twice = [(card, name) for card in batch.worked.cards_in(batch.cards) for name in _named_twice(card)]
    for card, name in twice:
        wrong = f"The card of {card.name} lists {name} twice under `label name:`, and a list on a label names each ingredient once."
        remedy = "Copy the list that the supplier declares: each name once, at its own place in the order."
        yield batch.label_stop("label-name-twice", _place_of(card.name, batch), wrong, remedy, "")
    # What is in a product of which a name is missing or stands twice, and so how the others stand in it, is not known yet.
    known = [] if twice else [variant.ingredients for variant in batch.filling.variants if not variant.ingredients.nameless]
    open_lists = [listed for listed in known if listed.open_pairs]
    told: Counter[str] = Counter()
    for pair in sorted({pair for listed in open_lists for pair in _alphabetic(listed.open_pairs)}):
        questions = [listed.question for listed in open_lists if listed.question and pair in _alphabetic(listed.open_pairs)]
        place, remedy = _cause(pair, questions, batch)
        told[remedy] += 1
        if told[remedy] <= MOST_NAMED + 1:
            case = " and ".join(pair) if told[remedy] <= MOST_NAMED else "other pairs"
            yield batch.label_stop("label-order-open", place, _OPEN, remedy, case)


def _alphabetic(pairs: Iterable[tuple[str, str]]) -> frozenset[tuple[str, str]]:
    return frozenset((min(pair), max(pair)) for pair in pairs)


def _named_twice(card: Ingredient) -> list[str]:
    """Return the names that a card lists more than once."""
    names = card.label_name.inci if card.label_name else ()
    times = Counter(map(fold, names))
    return [name for name in names if times.pop(fold(name), 1) > 1]


def _nameless(name: str, batch: Batch) -> tuple[str, str]:
    """Return in words what no list can say of a card, and what to write."""
    if batch.worked.recipe.listed is ListedAs.MADE and any(line.role is Role.OIL and line.name == name for line in batch.worked.lines):
        wrong = f"The card of {name} does not say what its soap is called, and this recipe lists what came out of the pot."
        return wrong, 'Add it to a card in shelf/ingredients/, as "saponified as: Olivate" is for olive oil, or list what was put in.'
    wrong = f"The card of {name} does not say how an ingredient list declares it, so no label of this recipe can be true."
    return wrong, "Copy the list that the supplier declares to a card in shelf/ingredients/, as `label name:`."


def _place_of(name: str, batch: Batch) -> Place:
    """Return the place at which a recipe names an ingredient."""
    recipe = batch.worked.recipe
    named = (*(line.ingredient for line in recipe.lines), *recipe.options)
    return next((one.place for one in named if one.key == fold(name)), recipe.place)


def _cause(pair: tuple[str, str], questions: Sequence[Question], batch: Batch) -> tuple[Place, str]:
    """Return what leaves the order open, and what would close it: less of what students may add, or the figure that settles most."""
    recipe, lines = batch.worked.recipe, batch.worked.lines
    asked = max(questions, key=lambda question: question.settles, default=None)
    both_weighed = all(any(name in _declared(line) for line in lines) for name in pair)
    if recipe.choices and not (asked and both_weighed):
        most = max(recipe.choices, key=lambda choice: choice.at_most.fraction)
        return most.place, "Lower `at most:`, so that the order is the same whatever a student adds."
    if asked is None:
        if recipe.listed is ListedAs.MADE:
            weigh = "" if recipe.cure else "weigh bars before and after the cure and write it as `cure:`, or "
            return recipe.at("ingredients listed"), f"A soap's water and free fat vary: {weigh}list the ingredients as put in the pot."
        return recipe.place, "Use more of the one or less of the other, or keep one of them below 1 %."
    if asked.part:
        figure = f"what share of it is {asked.part}, and write it on its card under `label name:` as `shares:`"
    else:
        figure = "which of its parts is the first below one per cent, and write it on its card as `below one per cent from:`"
    return _place_of(asked.blend, batch), f"Ask the supplier of {asked.blend} {figure}, or keep what else is in question below 1 %."


def _declared(line: Line) -> tuple[str, ...]:
    names = line.ingredient.label_name
    return names.plain if names else ()
