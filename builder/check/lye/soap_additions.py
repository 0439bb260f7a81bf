"""What disturbs a soap with lye: too much of a sugar, salt or clay, milk or beer in the lye, what speeds trace."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, inside, range_of
from builder.check.formula.formulas import formulas_of
from builder.check.places import place_of_choice
from builder.check.rule import BATCH, STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.place import Place
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.studio import Studio
from builder.model.subject import Subject, WholeClass
from builder.rules.basis import PRACTICE, basis_of
from builder.rules.hands.frozen_milk import classes_with_liquid_milk
from builder.words.fold import fold
from builder.words.percent import percent

_DOES = {
    IngredientKind.SUGAR: "sugar heats raw soap until it cracks, rises out of the mould or boils over",
    IngredientKind.HUMECTANT: "sugar alcohols heat raw soap and leave it soft",
    IngredientKind.SALT: "salt takes away the lather and makes the bar crumble at the knife",
    IngredientKind.CLAY: "clay thickens the batter, dries it and lets the bar crack",
}
_FOAMING = frozenset({"beer", "ale", "lager", "stout", "cider", "wine"})


@rule_on(BATCH, FindingKind("too-much-in-soap", CAUTION, "More of an addition is in the soap than it usually bears."))
def find_too_much_in_soap(batch: Batch) -> Iterator[BatchFinding]:
    """Compare what is added to a soap, by its recipe or by its students, with what is usual, in percent of its oils."""
    column, oils = batch.worked.grams, batch.worked.grams.oils
    if not batch.worked.recipe.lye or not oils:
        return
    for weighed in column.weighed:
        share = weighed.mass / oils
        if not _is_over_by_rounding(weighed.line.exact / oils, weighed.line.ingredient):
            yield from _judge(batch, weighed.line.ingredient, weighed.line.place, share)
    options = ((dose.what, one) for dose in batch.filling.doses for one in dose.each)
    for what, one in options:
        card = batch.cards[fold(one.option)]
        held = sum((weighed.mass / oils for weighed in column.weighed if weighed.line.ingredient.key == card.key), Fraction(0))
        added = one.mass / batch.filling.portions.fill * (column.total / oils)
        yield from _judge(batch, card, place_of_choice(what, batch.worked.recipe), held + added)


def _judge(batch: Batch, card: Ingredient, place: Place, share: Fraction) -> Iterator[BatchFinding]:
    usual = card.figure("in soap")
    if usual and share * 100 > usual.highest and not _is_salt_bar(batch, card, share):
        yield batch.caution(
            "too-much-in-soap",
            place,
            f"{card.name} comes to more than {range_of(usual, '%')} of the oils, which is usual ({basis_of(usual)}): "
            f"{_DOES.get(card.kind, 'more changes how the soap sets')}.",
            f"Use less of it, or accept this for a soap that is meant so (a salt bar, say) and that you have made before. {DEFER}",
            f"{batch.name} ({percent(share)})",
        )


def _is_salt_bar(batch: Batch, card: Ingredient, share: Fraction) -> bool:
    """Tell whether a soap is named after its salt and holds as much of it as such a bar does."""
    bar, called = batch.constants["salt in a salt bar"], fold(batch.worked.recipe.name).split()
    return card.kind is IngredientKind.SALT and "salt" in called and bar.low <= round(share * 100) <= bar.highest


def _is_over_by_rounding(exact: Fraction, card: Ingredient) -> bool:
    usual = card.figure("in soap")
    return usual is not None and exact * 100 <= usual.highest


@rule_on(
    STUDIO,
    FindingKind("beer-in-lye", CAUTION, "Beer, cider or wine goes straight into the lye, which foams over."),
    FindingKind("milk-in-lye", CAUTION, "Milk or another sugary liquid goes straight into the lye, scorches and can boil over."),
    FindingKind("speeds-trace", CAUTION, "Something makes raw soap thicken within moments."),
)
def find_what_disturbs_lye(studio: Studio) -> Iterator[Finding]:
    """Look for milk or beer that goes straight into the lye, and for what makes the batter seize."""
    for formula in formulas_of(studio):
        lye = formula.recipe.lye
        if lye is None:
            continue
        for liquid in (one for one in lye.liquids if not one.later):
            card = studio.ingredient(liquid.name)
            if card and card.kind is IngredientKind.MILK:
                made_in = studio.classes_by_recipe.get(formula.recipe.key, ())
                about = frozenset[Subject](WholeClass(one.key) for one in classes_with_liquid_milk(studio, formula.recipe.key))
                if made_in and not about:
                    continue
                yield caution(
                    "milk-in-lye",
                    liquid.name.place,
                    f"{card.name} goes straight into the lye: its sugar scorches, the lye overheats and smells of ammonia, and it can "
                    f"boil over ({PRACTICE}).",
                    f"Dissolve the lye in water alone and add the milk at trace (`later: {{{inside(card)}: 40 %}}`). Or say in the "
                    "lesson, in class and at home, that the milk is frozen to slush first and that the jug stands in ice.",
                    about=about,
                )
            elif card and _foams(card):
                yield caution(
                    "beer-in-lye",
                    liquid.name.place,
                    f"{card.name} goes straight into the lye: its gas and alcohol make the lye foam over, and its sugar heats and scorches "
                    f"({PRACTICE}).",
                    f"Dissolve the lye in water alone and add it, flat, at trace (`later: {{{inside(card)}: 40 %}}`), or accept this where "
                    "it is boiled flat and cooled to slush first, in a jug three times as big that stands in ice.",
                )
        quick = next((part for part in formula.all if part.card.speeds_trace), None)
        if quick and formula.product.is_any_of(["cold-process soap"]):
            yield caution(
                "speeds-trace",
                quick.place,
                f"{quick.card.name} makes raw soap thicken within moments, sometimes to a lump on the blender ({PRACTICE}).",
                "Stir it in last and by hand, with the mould ready; with students use something gentler, or accept this.",
            )


def _foams(card: Ingredient) -> bool:
    """Tell by the words of its names whether a liquid has gas or alcohol and sugar in it."""
    return not _FOAMING.isdisjoint(word for name in (card.name, *card.also_called) for word in fold(name).split())
