"""The tools of a recipe as a document lists them: names in braces, such as `{volume}`, are filled in for the batch at hand."""

from collections.abc import Callable, Iterable, Sequence

from builder.compose.recipe.wording import sentence
from builder.model.place import Name
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.teaching.class_plan import MadeProduct
from builder.rules.hands.gear import tools_with_gear
from builder.rules.naming import BRACES
from builder.words.say import say


def tool_words(tool: str, amount: Callable[[Name], str]) -> str:
    """Return a tool as one reads it."""
    return sentence(BRACES.sub(lambda found: amount(Name(" ".join(found[1].split()))), tool))


def tools_to_set_out(tools: Sequence[str], gear: Iterable[str]) -> tuple[str, ...]:
    """Return the tools of a recipe with the gear that cautions ask for, in the language that is spoken.

    A studio may write its tools in the language of its sheets: a tool with the first word of a translation names that piece.
    """
    wanted = [piece for piece in gear if say(piece) == piece or not any(say(piece).split()[0] in tool.split() for tool in tools)]
    return tuple(say(tool) if tool in wanted else tool for tool in tools_with_gear(tools, wanted))


def batch_with(tool: str, made: tuple[MadeProduct, ...]) -> WorkedBatch:
    """Return the batch for which a tool is set out: the first whose recipe names it; the first of all where the class names it."""
    return next((one.batch for one in made if tool in one.batch.recipe.tools), made[0].batch)
