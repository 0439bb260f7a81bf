"""What a sheet for everybody says as JSON-LD: how something is made (HowTo), read from what its page shows.

Decided: each caution comes with the step before which it stands, as a HowToTip of that step. Why: who has the steps read out by a machine
hears the warning first.
"""

from collections.abc import Iterator

from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.json_ld import Node
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import LessonFlow, StepRun
from builder.compose.views.take_home import TakeHomeView
from builder.words.html_text import told_in
from builder.words.say import say


def how_to_data(edition: Edition, view: TakeHomeView, here: Address) -> list[Node]:
    """Return a sheet as instructions; nothing where the studio has no public address."""
    page = absolute(edition, here)
    if not page:
        return []
    supplies = [
        {"@type": "HowToSupply", "name": row.name, "requiredQuantity": next((cell for cell in row.cells if cell), "")}
        for group in view.table.groups
        for row in group.rows
    ]
    tools = [{"@type": "HowToTool", "name": tool.words} for tool in view.tools]
    head = {"@type": "HowTo", "@id": f"{page}#how-to", "name": f"{view.recipe}, {view.size}", "yield": view.fills}
    return [{**head, "supply": supplies, "tool": tools, "step": list(_steps(view.flow))}]


def _steps(flow: LessonFlow) -> Iterator[Node]:
    """Yield the steps by the names that the sheet gives them, each with the cautions that stand before it."""
    cautions, position = list(flow.before), 0
    for block in (block for part in flow.parts for block in part.blocks):
        if isinstance(block, CautionView):
            cautions.append(block)
        elif isinstance(block, StepRun):
            for name, html in block.steps:
                position += 1
                text = told_in(html)
                step: Node = {"@type": "HowToStep", "position": position, "name": name, "text": text}
                if cautions:
                    tips = [{"@type": "HowToTip", "text": _said(caution)} for caution in cautions]
                    step["itemListElement"] = [*tips, {"@type": "HowToDirection", "text": text}]
                cautions = []
                yield step


def _said(caution: CautionView) -> str:
    """Return a caution as its box says it."""
    happens = (say("If it happens."),) if caution.begins_unnamed else ()
    return " ".join((caution.word, *caution.dangers, *happens, *caution.if_it_happens))
