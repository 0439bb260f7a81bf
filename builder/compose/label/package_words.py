"""The net contents of a package of several units: their number, what is in each, and what is in all of them.

In the United States in words: `5 bars, Net Wt 3.4 oz (96.3 g) each, Total Net Wt 17 oz (1 lb 1 oz) 481 g` (16 CFR 500.27(a), read), the
figure of all being cut by itself and not multiplied from a cut one, as in the examples there. Elsewhere `5 × 96 g (480 g)` (common
practice, no source), which reads alike in every language but for the decimal sign.

Decided: the figure of a whole package is cut from what is in it, not multiplied from a cut figure. Why: so do the published examples.
"""

from collections.abc import Sequence

from builder.compose.label.label_languages import in_figures
from builder.compose.label.label_texts import Paragraph, Run
from builder.compose.label.label_words import net_contents
from builder.compose.recipe.portion_words import nouns_of
from builder.compose.recipe.wording import NBSP
from builder.model.label.language import Language
from builder.model.label.region import Region
from builder.model.recipe.filling import Filling
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import fill

BLANK = 14.0


def package_contents(
    batch: WorkedBatch, filling: Filling, region: Region, units: int, container: str, languages: Sequence[Language]
) -> Paragraph:
    """Return the statement; where a soap has not been weighed after its cure both figures are lines to write on."""
    each, total = net_contents(batch, filling, region), net_contents(batch, filling, region, units)
    blank = Run("", bold=True, blank=BLANK)
    if not region.with_ounces:
        times = f"{units}{NBSP}×{NBSP}"
        if each:
            return (Run(in_figures(f"{times}{each} ({total})", languages), bold=True),)
        return (Run(times, bold=True), blank, Run(" = ", bold=True), blank)
    one, many = nouns_of(container)
    number = fill(one if units == 1 else many, {"count": units})
    if each:
        return (Run(f"{number}, {each} each, Total {total}", bold=True),)
    return (Run(f"{number}, Net Wt ", bold=True), blank, Run(" each, Total Net Wt ", bold=True), blank)
