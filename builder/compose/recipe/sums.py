"""The sums behind a batch, line by line, so that a person can redo them with a pocket calculator. Sources stand below, numbered.

What a table of weighings shows already (shares, amounts as stated, rounding) is left to the JSON document, which holds every working.
"""

from builder.compose.recipe.wording import figure, rule_words, sentence
from builder.compose.views.teacher import SumsView, WorkingRow
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given
from builder.words.say import say

IN_THE_TABLE = (
    "share of total",
    "rest of total",
    "share of oils",
    "parts",
    "weights",
    "rounded to the scale",
    "fat equivalents",
    "acid equivalents",
    "superfat lowest",
    "superfat highest",
)


def view_sums(title: str, batch: WorkedBatch) -> SumsView:
    """Give the sums of one batch, in the order in which they were made."""
    notes: dict[str, int] = {}
    rows = tuple(
        WorkingRow(
            sentence(say(working.of)),
            sentence(rule_words(working.rule)),
            "; ".join(_given(entry, notes) for entry in working.given),
            figure(working.result, working.unit),
        )
        for working in (*batch.workings, *batch.own.workings)
        if working.rule not in IN_THE_TABLE
    )
    return SumsView(title, rows, tuple(f"[{number}] {source}" for source, number in notes.items()))


def _given(entry: Given, notes: dict[str, int]) -> str:
    name = say("{what} of {ingredient}", what=say(entry.name), ingredient=say(entry.of)) if entry.of else say(entry.name)
    text = f"{name} {figure(entry.value, entry.unit)}"
    if not entry.source:
        return text
    source = say("{source}, from memory", source=entry.source) if entry.from_memory else entry.source
    return f"{text} [{notes.setdefault(source, len(notes) + 1)}]"
