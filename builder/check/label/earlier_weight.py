"""What a bar from an earlier batch is said to weigh: a weight that is far from what is poured, or that no label shows.

Decided: from half of what is poured to half as much again is met in silence. Why: bars are cut by eye and lose water, and none of that
comes to half of one; what lies outside is a slip of the pen, such as an ounce for a gram (this studio's own measure, no source).
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.rule import CLASS_IN_STUDIO, rule_on
from builder.model.finding import Finding, caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.subject import Labels
from builder.model.teaching.class_plan import ClassPlan
from builder.words.plain_number import plain_number

LEAST, MOST = Fraction(1, 2), Fraction(3, 2)


@rule_on(
    CLASS_IN_STUDIO,
    FindingKind(
        "earlier-weight-doubtful", CAUTION, "What a bar of an earlier batch weighs is far from what is poured, or no label shows it."
    ),
)
def find_earlier_weights_amiss(plan: ClassPlan, studio: Studio) -> Iterator[Finding]:
    """Hold the weight against what the recipe pours, and against how the label declares it."""
    earlier = plan.date.labels if plan.date else None
    if earlier is None or earlier.weighed is None:
        return
    for made in (made for made in plan.made if plan.comes_from_before(made.batch.product)):
        batch, weighed, poured = made.batch, earlier.weighed.grams, made.batch.own.fill.weight.grams
        about = frozenset({Labels(made.make.recipe.text, plan.studio_class.key)})
        name = batch.recipe.name
        if batch.product.by_volume(studio.region) and batch.recipe.density is not None:
            wrong = f"{name}: its label declares what is in it by volume, so that the weight of the earlier batch stands nowhere."
            yield caution("earlier-weight-doubtful", earlier.place, wrong, "Take out `weighed:`.", about=about)
        elif not LEAST * poured <= weighed <= MOST * poured:
            wrong = (
                f"{name}: its lightest bar is said to weigh {plain_number(weighed, 5)} g, and {plain_number(poured, 5)} g are poured into "
                "one. Its label declares that weight, and a weight that is too high misleads whoever gets the bar."
            )
            yield caution("earlier-weight-doubtful", earlier.place, wrong, "Weigh it again, and look at the unit.", about=about)
