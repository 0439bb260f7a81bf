"""What to write for less lye, in the words of the recipe."""

from builder.model.recipe.recipe import LyePlan


def less_lye(plan: LyePlan) -> str:
    """Say how a recipe gets less lye."""
    return "weigh less lye" if plan.superfat is None else "raise the superfat"
