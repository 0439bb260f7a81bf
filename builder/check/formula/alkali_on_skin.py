"""A salt whose solution is alkaline, bicarbonate or soda, in what stays on the skin.

Decided: a label that says to stop where it stings or reddens is enough for bicarbonate in what holds no water.
Why: deodorants are usually made with it; where there is water, its pH can be measured.
"""

from collections.abc import Iterator

from builder.check.batches import Batch, BatchFinding
from builder.check.figure_words import inside, range_of
from builder.check.formula.acids_on_skin import MORE_THAN_A_DROP
from builder.check.formula.formulas import label_text_of
from builder.check.formula.ph_by_kind import HIGHEST
from builder.check.rule import BATCH, rule_on
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.recipe.worked_batch import WorkedBatch
from builder.rules.basis import basis_of
from builder.words.percent import percent

NEUTRAL = "pH above which what stays on dries the skin"


@rule_on(BATCH, FindingKind("alkali-on-skin", STOP | CAUTION, "An alkaline salt stays on the skin, which it reddens, dries and stings."))
def find_alkali_on_the_skin(batch: Batch) -> Iterator[BatchFinding]:
    """Look at what is more than a drop for the pH. A pH that was measured is judged instead: it is that of the product."""
    worked = batch.worked
    if not worked.product.contact.stays_on or worked.recipe.lye or worked.recipe.ph:
        return
    for line in worked.lines:
        figure = line.ingredient.figure("pH in water")
        if figure is None or line.share * 100 <= batch.constants[MORE_THAN_A_DROP].typical:
            continue
        wrong = (
            f"{line.ingredient.name} comes to {percent(line.share)} of what stays on the skin. With sweat or water it has pH "
            f"{range_of(figure, '')} ({basis_of(figure)}), and skin has 4 to 7: it reddens, dries and stings, first in the armpits."
        )
        if figure.low > batch.constants[HIGHEST].typical:
            yield batch.stop("alkali-on-skin", line.place, wrong, f"Leave {inside(line.ingredient)} out.", "")
        elif figure.highest > batch.constants[NEUTRAL].typical and not _is_said(worked):
            yield batch.caution(
                "alkali-on-skin",
                line.place,
                wrong,
                "Use less of it, or magnesium hydroxide or a starch in its place; or say on the label of what holds no water to stop where "
                "it stings. Where the product holds water, measure its pH and write it.",
                "",
            )


def _is_said(worked: WorkedBatch) -> bool:
    """Tell whether label or directions say of a product without water that it can sting or redden."""
    said = label_text_of(worked.recipe)
    return not worked.holds_water and any(word in said for word in ("sting", "redden", "irritat"))
