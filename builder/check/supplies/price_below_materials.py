"""What a class takes in does not pay for what it uses up."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.batches import BatchFinding
from builder.check.rule import CLASS_IN_STUDIO, rule_on
from builder.model.finding import caution
from builder.model.finding_kind import CAUTION, FindingKind
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan
from builder.words.plain_number import how_many


@rule_on(CLASS_IN_STUDIO, FindingKind("price-below-materials", CAUTION, "What a class takes in does not pay for what it uses up."))
def find_prices_below_materials(plan: ClassPlan, studio: Studio) -> Iterator[BatchFinding]:
    """Compare the price of a class with its materials; choices count at their most, and what has no price for nothing."""
    cost, a_class = plan.cost, plan.studio_class
    if cost is None or a_class.price * plan.students >= cost.total:
        return
    least = "at least " if cost.unpriced else ""
    finding = caution(
        "price-below-materials",
        a_class.at("price"),
        "The price does not pay for the materials, with the dearest scent and colour at their most.",
        "Raise the price, or make less, or correct the prices in shelf/supplies.yaml.",
        about=frozenset({WholeClass(a_class.key)}),
    )
    currency = studio.profile.currency
    taken = f"{_money(a_class.price * plan.students)} {currency} come in and {least}{_money(cost.total)} {currency} go out"
    yield BatchFinding(finding, f"{how_many(plan.students, 'student')}, where {taken}")


def _money(value: Fraction) -> str:
    """Write a sum to the hundredth; the exact half goes to the even one."""
    return f"{round(value * 100) // 100}.{round(value * 100) % 100:02d}"
