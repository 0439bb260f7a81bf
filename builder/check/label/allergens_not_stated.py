"""Scents, and bases with scent, whose allergens nobody has stated, where the region wants them named.

Decided: a base with scent in its declared list needs an allergen statement as a scent does; what the list names counts once. Why:
whatever the source (Regulation (EU) 2023/1545); whether a list names the extended ones nobody can see.

Decided: a scent whose allergens nobody has stated holds back its labels wherever the region wants them named; what is published of the
oil is said as what to ask for. Why: a short list harms those who trust it; a table of oils is no statement of this bottle.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import ACCEPTABLE_STOP, FindingKind
from builder.model.label.ingredient_list import MayHold
from builder.model.recipe.ingredient import AllergenList
from builder.words.listed import listed_once
from builder.words.percent import percent

_ASK = {
    AllergenList.ORIGINAL: "the 24 fragrance allergens of the original list",
    AllergenList.EXTENDED: "the fragrance allergens of the extended list (Regulation (EU) 2023/1545)",
}


@rule_on(
    BATCH,
    FindingKind(
        "allergens-not-stated",
        ACCEPTABLE_STOP,
        "The label has to name fragrance allergens, and nobody has stated how much of them a scent brings.",
    ),
)
def find_allergens_not_stated(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what is scented in all variants; a recipe is reported once, with all of them. It holds back the labels alone."""
    lists = [variant.ingredients for variant in batch.filling.variants]
    named = sorted({name for one in lists for name in one.without_statement})
    region, which = batch.labelling.region, batch.labelling.allergen_list
    if not named or which is None:
        return
    rule = region.rules["allergens"]
    wrong = (
        f"A label in this region ({region.name}) names each fragrance allergen of which there is more than a threshold "
        f"({rule.source.title}, {rule.at}), and nothing says how much of them there is in {listed_once(named)}. The list may be short of "
        "names that keep somebody from a rash."
    )
    remedy = (
        f"Ask the supplier of each for its allergen statement, which gives the shares of {_ASK[which]}, and copy it to the card as "
        f"`allergen statement:`.{_to_ask_for([held for one in lists for held in one.may_hold])}"
    )
    yield batch.label_stop("allergens-not-stated", batch.worked.recipe.place, wrong, remedy, "")


def _to_ask_for(scents: list[MayHold]) -> str:
    """Return in words what is published of the scents: what to ask for, and no statement."""
    told: dict[str, tuple[tuple[str, Fraction], ...]] = {}
    for held in scents:
        if len(held.allergens) > len(told.get(held.scent, ())):
            told[held.scent] = held.allergens
    parts = [f"{scent}: {', '.join(f'{name} (up to {percent(most)})' for name, most in held)}" for scent, held in told.items()]
    if not parts:
        return ""
    return (
        f" What is published of such oils lets them hold, in amounts that a label names, {'; '.join(parts)}. That is what to ask for, and "
        "no statement: yours may hold more, less or others."
    )
