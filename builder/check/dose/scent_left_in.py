"""A label that says "no scent" over a list of ingredients that names one."""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.label.ingredient_list import Variant
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.recipe import Choice, left_out
from builder.rules.basis import PRACTICE
from builder.words.fold import fold


@rule_on(BATCH, FindingKind("scent-left-in", CAUTION, "The label of a portion without scent names a scent all the same."))
def find_scent_left_in(batch: Batch) -> Iterator[BatchFinding]:
    """Look at the list of each variant that goes without what a choice of scents offers."""
    for choice in batch.worked.recipe.choices:
        if _offers_scent(batch, choice) and any(_names_scent(one) for one in batch.filling.variants if (choice.what, None) in one.chosen):
            yield batch.caution(
                "scent-left-in",
                choice.place,
                f'The label of a portion with "{left_out(choice.what)}" names a scent among its ingredients all the same: it comes with '
                f"the recipe or its base, and who bears no scent trusts the name ({PRACTICE}).",
                f'Take a base without scent, or do not offer "{left_out(choice.what)}".',
                "",
            )


def _offers_scent(batch: Batch, choice: Choice) -> bool:
    cards = (batch.cards.get(fold(option.text)) for option in choice.options if option)
    return any(card is not None and card.declared_as is DeclaredAs.FRAGRANCE for card in cards)


def _names_scent(variant: Variant) -> bool:
    return any(entry.declared_as is DeclaredAs.FRAGRANCE for entry in variant.ingredients.entries)
