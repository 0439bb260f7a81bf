"""The batch codes of a product in words for the teacher's sheet."""

from builder.compose.recipe.wording import counted
from builder.model.teaching.class_plan import ClassPlan, MadeProduct

FROM_BEFORE = "What is taken home is of an earlier batch: write its code and the day on which it was made on the labels."


def code_words(plan: ClassPlan, made: MadeProduct, *, labelled: bool = True) -> str:
    """Give the codes with where they are written; empty where there is no date yet.

    `labelled` says whether labels are printed for it, which then bear the code.
    """
    codes = _codes(made)
    if not codes:
        return ""
    if plan.comes_from_before(made.batch.product):
        return f"Batch code: {codes}. Write it on the pot. {FROM_BEFORE}"
    if not labelled:
        return f"Batch code: {codes}. Write it on each pot, and on what is packed."
    return f"Batch code: {codes}. Write it on each pot; the labels bear it."


def _codes(made: MadeProduct) -> str:
    pots = [pot for pot in made.pots if pot.purpose != "teacher"]
    if not pots or not pots[0].code:
        return ""
    first, last = pots[0].code, pots[-1].code
    students = first if first == last else f"{first} to {last} ({counted(len(pots), 'pot', 'pots')})"
    return "; the teacher's pot ".join((students, *(pot.code for pot in made.pots if pot.purpose == "teacher")))
