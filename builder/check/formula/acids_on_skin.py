"""Acids that peel the skin, by the rows of the table of limits that name a pH.

Decided: acids beside lye, or beside bicarbonate that takes all of them, are not looked at as peels. Why: lye makes salts of them before it
takes the fat, and so does bicarbonate as soon as both are wet.
"""

from collections.abc import Iterator, Set
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.dose.limit_words import DEFER, what_counts, where_it_stands, who_says
from builder.check.formula.ph_by_kind import LOWEST
from builder.check.places import place_of_counted
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import LimitRole, names_of
from builder.model.dose.towards import TowardsLimit
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.label.language import OWN
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.basis import basis_of
from builder.rules.fizz import acid_left
from builder.words.fold import fold
from builder.words.percent import percent
from builder.words.plain_number import plain_number

MORE_THAN_A_DROP = "acid beyond a drop for the pH"
_SUNBURN = (
    "“Sunburn Alert: This product contains an alpha hydroxy acid (AHA) that may increase your skin's sensitivity to the sun and "
    "particularly the possibility of sunburn. Use a sunscreen, wear protective clothing, and limit sun exposure while using this product "
    "and for a week afterwards.”"
)


@rule_on(
    BATCH,
    FindingKind(
        "acid-too-sour",
        STOP | CAUTION,
        "A product with an acid that peels skin has a lower pH than the limit for that acid allows, and it burns or irritates.",
    ),
    FindingKind("acid-ph-open", CAUTION, "An acid that peels skin is in the product, and no measured pH says how strongly it works."),
    FindingKind("sun-caution-missing", CAUTION, "An acid makes skin burn more easily in the sun, and the label does not say so."),
)
def find_acids_on_the_skin(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the pH with the least that a row asks for, the law of the studio's own region first, and look for the caution about the sun.

    Where there is lye, it has made salts of all acids, and what fizzes does so in water: nothing of them is left to peel.
    """
    if batch.worked.recipe.lye or acid_left(batch.worked.lines) == 0:
        return
    of_ph = [one for one in batch.filling.asked if one.limit.lowest_ph is not None]
    if of_ph:
        yield from _judge_ph(batch, max(of_ph, key=lambda one: _weight(batch, one)))
    yield from _judge_without_limit(batch, {name for one in of_ph for name in one.limit.names})
    for one in batch.filling.asked:
        if one.limit.role is LimitRole.LABELLING and one.limit.names and _is_more_than_a_drop(batch, one):
            yield from _judge_label(batch, one)


def _weight(batch: Batch, asked: TowardsLimit) -> tuple[bool, bool, Fraction]:
    """Return what tells which row is shown of several: the law that is broken, else what is said in the region, else the mildest pH."""
    ph, least = batch.worked.recipe.ph, asked.limit.lowest_ph
    assert least is not None
    return asked.own_law and ph is not None and ph.low < least, batch.region.has_as_law(asked.limit.region), least


def _is_more_than_a_drop(batch: Batch, asked: TowardsLimit) -> bool:
    return asked.least * 100 > batch.constants[MORE_THAN_A_DROP].typical


def _judge_ph(batch: Batch, asking: TowardsLimit) -> Iterator[BatchFinding]:
    row, found = asking.limit, asking.counted
    assert row.lowest_ph is not None
    ph, place, what = batch.worked.recipe.ph, place_of_counted(found[0], batch.worked.recipe), what_counts(found)
    asked = (
        f"{what} asks for a pH of at least {plain_number(row.lowest_ph)} ({where_it_stands(row)}). "
        f"This is {who_says(row, batch.labelling)}."
    )
    why = "The lower the pH, the more of an acid burns and peels the skin."
    if ph and ph.low < row.lowest_ph:
        wrong = f"{asked} {why} It was measured at {plain_number(ph.low)}."
        remedy = f"Raise the pH with a mild alkali, a little at a time, or use less acid. {DEFER}"
        if asking.own_law:
            yield batch.stop("acid-too-sour", batch.worked.recipe.at("pH"), wrong, remedy, "")
        else:
            yield batch.caution("acid-too-sour", batch.worked.recipe.at("pH"), wrong, remedy, "")
    elif ph is None and _is_more_than_a_drop(batch, asking):
        yield batch.caution(
            "acid-ph-open",
            place,
            f"{asked} {why} At {percent(asking.least)} it is there to peel and no drop for the pH, and the "
            "recipe does not say what was measured.",
            f'Measure, and write it, as in `pH: {{low: 4.8, high: 5.2, measured: "strip, 2026-11"}}`. {DEFER}',
            "",
        )


def _judge_without_limit(batch: Batch, limited: Set[str]) -> Iterator[BatchFinding]:
    """Look for an acid of which no limit names a pH, in what holds water and stays on the skin."""
    worked, lowest = batch.worked, batch.constants[LOWEST]
    if worked.recipe.ph or not worked.product.contact.stays_on or not worked.holds_water:
        return
    for line in worked.lines:
        is_free = line.ingredient.kind is IngredientKind.ACID and limited.isdisjoint(names_of(line.ingredient))
        if is_free and line.share * 100 > batch.constants[MORE_THAN_A_DROP].typical:
            yield batch.caution(
                "acid-ph-open",
                line.place,
                f"{line.ingredient.name} comes to {percent(line.share)} of what stays on the skin, and the recipe does not say what pH was "
                f"measured. Below {plain_number(lowest.typical)} acid peels and burns ({basis_of(lowest)}).",
                f'Measure, and write it, as in `pH: {{low: 4.8, high: 5.2, measured: "strip, 2026-11"}}`; or use less of it. {DEFER}',
                "",
            )


def _judge_label(batch: Batch, asking: TowardsLimit) -> Iterator[BatchFinding]:
    row, found = asking.limit, asking.counted
    if "sun" not in fold(" ".join(batch.worked.recipe.told_in(OWN).label_cautions)):
        yield batch.caution(
            "sun-caution-missing",
            place_of_counted(found[0], batch.worked.recipe),
            f"{what_counts(found)} is an alpha hydroxy acid, and in this amount it makes skin burn more easily in the sun; the label does "
            f"not say so ({where_it_stands(row)}). This is {who_says(row, batch.labelling)}.",
            f"Add to `label cautions:` {_SUNBURN} {DEFER}",
            "",
        )
