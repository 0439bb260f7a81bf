"""How high a part of a take-home sheet is, in lines of its text, as `take-home.css` sets it at 14 pt."""

import math

from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowBlock, FlowPart, ProseView, StepRun
from builder.words.html_text import told_in

# Lines of a page of the lower of the two sheets of paper; letters to a line.
PAGE, HEAD, FRAME, DRAWINGS, PARAGRAPH = 44.6, 2.0, 0.4, 1.0, 0.2
OF_TEXT, OF_CAUTION, OF_STEP = 62, 65, 61
CAUTION_LINE, STEP_GAP, DRAWN_STEP = 0.92, 0.06, 1.25


def lines(part: FlowPart) -> float:
    """Estimate the height of a part, in lines of its text."""
    return HEAD + sum(map(lines_of, part.blocks))


def lines_of(block: FlowBlock) -> float:
    """Estimate the height of one block; nothing for what stands before on the same page."""
    match block:
        case ProseView(html):
            text = told_in(html)
            return (math.ceil(len(text) / OF_TEXT) + PARAGRAPH if text else 0) + (DRAWINGS if "<figure" in html else 0)
        case StepRun():
            return sum(_of_step(html) for html in block.html)
        case CautionView():
            said = (*(f"{block.word} {danger}" for danger in block.dangers), " ".join(block.if_it_happens))
            return 0.0 if block.when_apart else FRAME + CAUTION_LINE * sum(math.ceil(len(text) / OF_CAUTION) for text in said)


def _of_step(html: str) -> float:
    text, drawn = told_in(html), "<figure" in html
    return math.ceil(len(text) * (DRAWN_STEP if drawn else 1) / OF_STEP) + STEP_GAP
