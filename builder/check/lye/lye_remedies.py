"""What to write for less lye, in the words of the recipe."""

from builder.model.recipe.recipe import LyePlan


def less_lye(plan: LyePlan) -> str:
    """Return in words how a recipe gets less lye."""
    return "weigh less lye" if plan.superfat is None else "raise the superfat"
