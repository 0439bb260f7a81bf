"""What a name in braces stands for: a set of weighings of the batch at hand, or one of a few fixed words.

An ingredient, a phase, `{batch}`, `{oils}`, `{lye}`, `{lye water}` and `{lye solution}` each name weighings, which are added up. An
ingredient that is also the water of the lye is meant as it stands in the phases. `{portion}`, `{cup}` (the portion with what sticks to the
cup), `{containers}`, `{each student}` (containers: those of one student in class, all of them at home), `{volume}` (for a mould or a pot),
`{left in the pot}`, `{superfat}` and what students choose (`{scent}`, `{colour}`; `{scent in all}` for all containers of the batch) are
read from the portions, the lye and the doses.
An ingredient with a pump and the word `strokes` after it (`{lotion base strokes}`) is in class the number of strokes; at home, where
another pump stands, it is the weight.
"""

from collections.abc import Callable

from builder.compose.dose.dose_words import dose_in_all, dose_in_words, most_in_words
from builder.compose.recipe.wording import grams, grams_and_ounces, percent, volume_at_most, weighed_together
from builder.compose.supplies.supply_words import strokes_and_weight
from builder.model.dose.dose import Dose
from builder.model.place import Name
from builder.model.recipe.column import Column, Weighed
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.recipe import LyePlan
from builder.model.recipe.size import PeopleSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.supplies.cost import PumpStrokes
from builder.rules.named_weighings import FOR_ALL, IN_ALL, LEFT_IN_THE_POT, LYE_ROLES, STROKES, VOLUME, weighings_named
from builder.words.fold import fold


def known_mentions(batch: WorkedBatch) -> tuple[str, ...]:
    """Give every name, folded, that a lesson may put in braces for this batch, other names of its ingredients included."""
    names = ["batch", "portion", "cup", "containers", "each student"]
    names += [VOLUME] if batch.volume else []
    names += [LEFT_IN_THE_POT] if batch.own.portions.in_the_pot else []
    names += [name for name, roles in LYE_ROLES.items() if any(w.line.role in roles for w in batch.grams.weighed)]
    names += ["superfat"] if batch.grams.lye else []
    names += [name for dose in batch.own.doses for name in (fold(dose.what), fold(dose.what) + IN_ALL)]
    names += [fold(w.line.phase) for w in batch.grams.weighed]
    names += [fold(name) for w in batch.grams.weighed for name in (w.line.name, *w.line.ingredient.also_called)]
    names += [fold(option) for dose in batch.own.doses for option in dose.options if option is not None]
    names += [fold(one.ingredient) + STROKES for one in batch.strokes]
    return tuple(dict.fromkeys(names))


def class_amount(studio: Studio, batch: WorkedBatch, name: Name) -> str:
    """Give the amount that a mention stands for in class: in grams, on the studio's scales; or in strokes of a pump."""
    strokes = _strokes(studio, batch, name)
    if strokes is not None:
        return strokes_and_weight(strokes)
    return _amount(studio, batch, name, grams, lambda named: weighed_together(named(batch.grams), "g"))


def home_amount(studio: Studio, batch: WorkedBatch, name: Name) -> str:
    """Give the amount that a mention stands for at home: in grams, then in ounces."""
    name = _without_strokes(studio, batch, name)

    def write(named: "Named") -> str:
        first, *others = (weighed_together(named(column), column.unit) for column in batch.columns)
        return " ".join((first, *(f"({text})" for text in others)))

    return _amount(studio, batch, name, grams_and_ounces, write)


def ingredients_named(studio: Studio, batch: WorkedBatch, name: Name) -> tuple[tuple[Ingredient, str], ...]:
    """Give the ingredients that a reader handles at a mention, each with its phase; the batch as a whole names none."""
    name = _without_strokes(studio, batch, name)
    dose = _dose(studio, batch, name)
    if dose is not None:
        cards = (studio.ingredient(option) for option in dose.options if option is not None)
        return tuple((card, "") for card in cards if card is not None)
    if name.key in (*FOR_ALL, "superfat"):
        return ()
    return tuple((w.line.ingredient, w.line.phase) for w in _weighings(studio, batch.grams, name))


def _strokes(studio: Studio, batch: WorkedBatch, name: Name) -> PumpStrokes | None:
    card = studio.ingredient(name.key.removesuffix(STROKES)) if name.key.endswith(STROKES) else None
    return next((one for one in batch.strokes if card and fold(one.ingredient) == card.key), None)


def _without_strokes(studio: Studio, batch: WorkedBatch, name: Name) -> Name:
    """Give the ingredient whose strokes a mention means, or the mention as it is."""
    card = studio.ingredient(name.key.removesuffix(STROKES)) if name.key.endswith(STROKES) else None
    pumped = card is not None and any(w.line.ingredient.key == card.key for w in batch.grams.weighed)
    return Name(name.key.removesuffix(STROKES), name.place) if pumped else name


Named = Callable[[Column], tuple[Weighed, ...]]


def _amount(
    studio: Studio,
    batch: WorkedBatch,
    name: Name,
    write_mass: Callable[..., str],
    write_weighings: Callable[[Named], str],
) -> str:
    if name.key == "portion":
        return write_mass(batch.own.portions.fill)
    if name.key == "cup":
        return write_mass(batch.own.portions.poured)
    if name.key == "containers":
        return str(batch.own.portions.yields)
    if name.key == "each student":
        return str(batch.own.each_student if isinstance(batch.size, PeopleSize) else batch.own.portions.yields)
    if name.key == VOLUME and batch.volume:
        return volume_at_most(batch.volume)
    if name.key == LEFT_IN_THE_POT and batch.own.portions.in_the_pot:
        return write_mass(batch.own.portions.in_the_pot)
    if name.key == "superfat" and batch.grams.lye:
        return percent(batch.grams.lye.superfat, 1)
    if not _weighings(studio, batch.grams, name) and not _is_lye_water(studio, batch, name):
        dose = _dose(studio, batch, name)
        if dose is None:
            raise KeyError(f"{name.text} is not part of {batch.recipe.name}")
        if name.key.endswith(IN_ALL):
            return dose_in_words(dose_in_all(dose, batch.own.portions.yields))
        option = studio.ingredient(name)
        one = next((one for one in dose.each if option is not None and fold(one.option) == option.key), None)
        return most_in_words(one) if one else dose_in_words(dose)
    return write_weighings(lambda column: _weighings(studio, column, name))


def _weighings(studio: Studio, column: Column, name: Name) -> tuple[Weighed, ...]:
    if name.key == "batch":
        return column.weighed
    return weighings_named(studio, column, name)


def _is_lye_water(studio: Studio, batch: WorkedBatch, name: Name) -> bool:
    """Say whether a mention means the water of the lye, of which a ready-mixed lye may need none."""
    plan = batch.recipe.lye
    return plan is not None and (name.key in LYE_ROLES or _is_liquid(studio, name, plan))


def _dose(studio: Studio, batch: WorkedBatch, name: Name) -> Dose | None:
    """Give the dose that a mention means: by what is chosen (`scent`), or by one of its options that the batch itself lacks."""
    if _weighings(studio, batch.grams, name):
        return None
    what = name.key.removesuffix(IN_ALL)
    card = studio.ingredient(what)
    for dose in batch.own.doses:
        if fold(dose.what) == what or (card and any(fold(option or "") == card.key for option in dose.options)):
            return dose
    return None


def _is_liquid(studio: Studio, name: Name, plan: LyePlan) -> bool:
    card = studio.ingredient(name)
    return card is not None and any(studio.ingredient(liquid.name) is card for liquid in plan.liquids)
