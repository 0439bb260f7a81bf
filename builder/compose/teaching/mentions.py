"""The amount that a name in braces stands for: a set of weighings of the batch at hand, or what is read from portions, lye and doses.

What a name means is resolved in `rules/naming.py`. An ingredient with a pump and the word `strokes` after it (`{lotion base strokes}`)
is in class the number of strokes; at home, where another pump stands, it is the weight.
"""

from collections.abc import Callable

from builder.compose.dose.dose_words import dose_in_all, dose_in_words, most_in_words
from builder.compose.recipe.portion_words import read_both_ways
from builder.compose.recipe.wording import grams, percent, volume_at_most, weighed_together
from builder.compose.supplies.supply_words import strokes_and_weight
from builder.model.place import Name
from builder.model.recipe.column import Column, Weighed
from builder.model.recipe.filling import Reading
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.quantity import Mass
from builder.model.recipe.size import PeopleSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.rules.naming import (
    CONTAINERS,
    CUP,
    EACH_STUDENT,
    LEFT_IN_THE_POT,
    PORTION,
    VOLUME,
    ChoiceNamed,
    IngredientNamed,
    Meaning,
    OfLye,
    OfPortions,
    OptionNamed,
    PhaseNamed,
    Superfat,
    WholeBatch,
    meaning_of,
    options_of,
    weighings,
)
from builder.words.fold import fold

Named = Callable[[Column], tuple[Weighed, ...]]


def class_amount(studio: Studio, batch: WorkedBatch, name: Name) -> str:
    """Return the amount that a mention stands for in class: in grams, on the studio's scales; or in strokes of a pump."""
    meant = meaning_of(name, batch.recipe, studio)
    if isinstance(meant, IngredientNamed) and meant.in_strokes:
        strokes = next((one for one in batch.strokes if fold(one.ingredient) == meant.key), None)
        if strokes is not None:
            return strokes_and_weight(strokes)
    return _amount(batch, name, meant, lambda what: grams(what(batch.own.read)), lambda named: weighed_together(named(batch.grams), "g"))


def home_amount(studio: Studio, batch: WorkedBatch, name: Name) -> str:
    """Return the amount that a mention stands for at home: in grams, then in ounces."""

    def write(named: Named) -> str:
        first, *others = (weighed_together(named(column), column.unit) for column in batch.columns)
        return " ".join((first, *(f"({text})" for text in others)))

    return _amount(batch, name, meaning_of(name, batch.recipe, studio), lambda what: read_both_ways(batch.own, what), write)


def ingredients_named(studio: Studio, batch: WorkedBatch, name: Name) -> tuple[tuple[Ingredient, str], ...]:
    """Return the ingredients that a reader handles at a mention, each with its phase; the batch as a whole names none."""
    meant = meaning_of(name, batch.recipe, studio)
    chosen = tuple((card, "") for card in options_of(batch.recipe, meant, studio))
    return chosen or tuple((w.line.ingredient, w.line.phase) for w in weighings(batch.grams, meant))


def _amount(
    batch: WorkedBatch,
    name: Name,
    meant: Meaning,
    write_mass: Callable[[Callable[[Reading], Mass]], str],
    write_weighings: Callable[[Named], str],
) -> str:
    match meant:
        case OfPortions():
            found = _of_portions(batch, meant, write_mass)
        case Superfat():
            found = percent(batch.grams.lye.superfat, 1) if batch.grams.lye else None
        case ChoiceNamed() | OptionNamed():
            found = _chosen(batch, meant)
        case WholeBatch():
            found = write_weighings(lambda column: column.weighed)
        case OfLye() | IngredientNamed() | PhaseNamed():
            found = write_weighings(lambda column: weighings(column, meant))
        case _:
            found = None
    if found is None:
        raise KeyError(f"{name.text} is not part of {batch.recipe.name}")
    return found


def _of_portions(batch: WorkedBatch, meant: OfPortions, write_mass: Callable[[Callable[[Reading], Mass]], str]) -> str | None:
    portions = batch.own.portions
    each = batch.own.each_student if isinstance(batch.size, PeopleSize) else portions.yields
    written = {
        PORTION: write_mass(lambda one: one.fill),
        CUP: write_mass(lambda one: one.poured),
        CONTAINERS: str(portions.yields),
        EACH_STUDENT: str(each),
        VOLUME: volume_at_most(batch.volume) if batch.volume else None,
        LEFT_IN_THE_POT: write_mass(lambda one: one.in_the_pot) if portions.in_the_pot else None,
    }
    return written[meant]


def _chosen(batch: WorkedBatch, meant: ChoiceNamed | OptionNamed) -> str | None:
    """Return in words how much of what is chosen one portion may take, or all of them; of one option where it is named."""
    for dose in batch.own.doses:
        if isinstance(meant, ChoiceNamed) and fold(dose.what) == meant.what:
            return dose_in_words(dose_in_all(dose, batch.own.portions.yields) if meant.in_all else dose)
        if isinstance(meant, OptionNamed) and any(fold(option or "") == meant.key for option in dose.options):
            one = next((one for one in dose.each if fold(one.option) == meant.key), None)
            return most_in_words(one) if one else dose_in_words(dose)
    return None
