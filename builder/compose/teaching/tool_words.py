"""The tools of a recipe as a document lists them: names in braces, such as `{volume}`, are filled in for the batch at hand."""

from collections.abc import Callable

from builder.compose.recipe.wording import sentence
from builder.model.place import Name
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.class_plan import MadeProduct
from builder.rules.naming import BRACES


def tool_words(tool: str, amount: Callable[[Name], str]) -> str:
    """Return a tool as one reads it."""
    return sentence(BRACES.sub(lambda found: amount(Name(" ".join(found[1].split()))), tool))


def batch_with(tool: str, made: tuple[MadeProduct, ...]) -> WorkedBatch:
    """Return the batch for which a tool is set out: the first whose recipe names it; the first of all where the class names it."""
    return next((one.batch for one in made if tool in one.batch.recipe.tools), made[0].batch)
