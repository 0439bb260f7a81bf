"""The share of a preservative against the amount in which it is usually used.

Decided: a preservative below its usual amount is compared by its exact share, limits by what is weighed. Why: rounding alone is no reason
to call a sound recipe unpreserved.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import DEFER, range_of
from builder.check.rule import BATCH, rule_on
from builder.model.dose.limit import names_of
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.recipe.ingredient import Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.rules.basis import basis_of
from builder.words.percent import percent


@rule_on(
    BATCH,
    FindingKind(
        "preservative-too-little", CAUTION, "There is less preservative than its lowest usual amount, and the product spoils unseen."
    ),
    FindingKind("preservative-over-usual", CAUTION, "There is more preservative than is usual, which irritates and does not keep better."),
)
def find_preservative_amounts(batch: Batch) -> Iterator[BatchFinding]:
    """Compare the exact share of each preservative; what a scale makes of too little is a finding of its own."""
    shares: dict[str, Fraction] = {}
    for line in batch.worked.lines:
        shares[line.ingredient.key] = shares.get(line.ingredient.key, Fraction(0)) + line.share
    for line in batch.worked.lines:
        usual = line.ingredient.figure("usual amount")
        share = shares.pop(line.ingredient.key, None)
        if line.ingredient.kind is not IngredientKind.PRESERVATIVE or usual is None or share is None:
            continue
        known = f"{range_of(usual, '%')} of the product is usual ({basis_of(usual)})"
        if share * 100 < usual.low:
            yield batch.caution(
                "preservative-too-little",
                line.place,
                f"{line.ingredient.name} comes to {percent(share)}, and {known}. Below the lowest usual amount it does not preserve: the "
                "product spoils unseen, as if there were none in it.",
                f"Raise it to at least {percent(usual.low / 100)}. {DEFER}",
                "",
            )
        elif usual.high is not None and share * 100 > usual.high and not _has_a_limit(line.ingredient, batch):
            yield batch.caution(
                "preservative-over-usual",
                line.place,
                f"{line.ingredient.name} comes to {percent(share)}, and {known}. More of it does not keep the "
                "product better, and it irritates skin and eyes.",
                f"Lower it to at most {percent(usual.high / 100)}, or accept this with your supplier's document. {DEFER}",
                "",
            )


def _has_a_limit(card: Ingredient, batch: Batch) -> bool:
    """Tell whether a limit of the tables speaks of the whole of it; what passes that is a finding of its own."""
    names = names_of(card)
    return len(names) == 1 and any(names[0] in one.limit.names for one in batch.filling.towards)
