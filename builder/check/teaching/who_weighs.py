"""Whether it is settled who weighs for the one pot of a class.

Decided: students who weigh for one pot stop a class of several groups, until the lesson says which group weighs, or all together. Why:
the sheet of every group told it to weigh the whole batch, and no reading of it is the likely one.
"""

from collections.abc import Iterator

from builder.check.rule import CLASS, rule_on
from builder.model.dates.studio_class import BatchFor
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.subject import WholeClass
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.model.teaching.lesson import Part
from builder.model.teaching.weighing_plan import Unsettled


@rule_on(
    CLASS,
    FindingKind("weighed-by-every-group", STOP, "Every group would be told to weigh the whole of one batch."),
    FindingKind("group-without-one-pot", STOP, "A step is for one group alone, though each pot needs it."),
)
def find_weighing_unsettled(plan: ClassPlan) -> Iterator[Finding]:
    """Stop a class whose sheets would tell every group to weigh the whole batch, and one where a single group is named without need."""
    about = frozenset({WholeClass(plan.studio_class.key)})
    for one in plan.weighing.unsettled:
        minutes = one.part.minutes
        yield stop(
            "weighed-by-every-group",
            one.part.place,
            f'In "{one.part.title}" students weigh {_ingredients(one)}, and {one.recipe} is one batch for the class. The sheet of every '
            "group would tell it to weigh the whole batch.",
            'Say which it is. Each has a pot: write "batch: one for each group" (or "one for each student") into class.yaml. '
            f'Or the teacher weighs: "(teacher, {minutes} min)". Or it is weighed once for all: by one group, '
            f'"(students, {minutes} min, group 1)", or by all with the teacher, "(together, {minutes} min)".',
            about=about,
        )
    for part in (timed.part for timed in plan.timeline if timed.part.group is not None):
        made = _made(plan, part)
        if made.make.batch_for is not BatchFor.CLASS:
            yield stop(
                "group-without-one-pot",
                part.place,
                f'"{part.title}" is for group {part.group} alone, and of {made.batch.recipe.name} there is {made.make.batch_for}. '
                "The other pots would lack what is done here.",
                f'Leave "group {part.group}" out, or write "batch: {BatchFor.CLASS}" into class.yaml.',
                about=about,
            )


def _ingredients(one: Unsettled) -> str:
    first, *others = one.ingredients
    return first if not others else f"{first} and {len(others)} more"


def _made(plan: ClassPlan, part: Part) -> MadeProduct:
    return next((made for made in plan.made if part.recipe and made.make.recipe.text == part.recipe.text), plan.made[0])
