"""The sums behind a batch, line by line, so that a person can redo them with a pocket calculator. Sources stand below, numbered.

What a table of weighings shows already (shares, amounts as stated, rounding) is left to the JSON document, which holds every working.
"""

from collections.abc import Iterable
from fractions import Fraction
from itertools import groupby

from builder.compose.recipe.wording import figure, rule_words, sentence
from builder.compose.views.teacher import SumsView, WorkingRow
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.recipe.working import Given, SumRule, Working
from builder.words.say import message, say

IN_THE_TABLE = (
    SumRule.SHARE_OF_TOTAL,
    SumRule.REST_OF_TOTAL,
    SumRule.SHARE_OF_OILS,
    SumRule.PARTS,
    SumRule.WEIGHTS,
    SumRule.ROUNDED_TO_THE_SCALE,
    SumRule.SUPERFAT_LOWEST,
    SumRule.SUPERFAT_HIGHEST,
)

# What is added up under its rows, and what the sum is called.
ADDED = {
    SumRule.FAT_EQUIVALENTS: message("Fat, together"),
    SumRule.FAT_EQUIVALENTS_AS_WEIGHED: message("Fat as weighed, together"),
    SumRule.ACID_EQUIVALENTS: message("Acids, together"),
    SumRule.ACID_EQUIVALENTS_AS_WEIGHED: message("Acids as weighed, together"),
}


def view_sums(title: str, batch: WorkedBatch) -> SumsView:
    """Return the sums of one batch, in the order in which they were made."""
    notes: dict[str, int] = {}
    shown = (working for working in (*batch.workings, *batch.own.workings) if working.rule not in IN_THE_TABLE)
    rows = tuple(row for rule, alike in groupby(shown, lambda one: one.rule) for row in _rows(rule, tuple(alike), notes))
    return SumsView(title, rows, tuple(f"[{number}] {source}" for source, number in notes.items()))


def _rows(rule: SumRule, alike: tuple[Working, ...], notes: dict[str, int]) -> Iterable[WorkingRow]:
    """Yield the rows of sums of one rule that follow one another, and beneath several that are added what they come to."""
    for working in alike:
        given = "; ".join(_given(entry, notes) for entry in working.given)
        yield WorkingRow(sentence(say(working.of)), sentence(rule_words(rule)), given, figure(working.result, working.unit))
    if rule in ADDED and len(alike) > 1:
        total = sum((working.result for working in alike), Fraction(0))
        given = " + ".join(figure(working.result, "") for working in alike)
        yield WorkingRow(say(ADDED[rule]), say("The sum of the rows above"), given, figure(total, alike[0].unit))


def _given(entry: Given, notes: dict[str, int]) -> str:
    name = say("{what} of {ingredient}", what=say(entry.name), ingredient=say(entry.of)) if entry.of else say(entry.name)
    text = f"{name} {figure(entry.value, entry.unit)}"
    if not entry.source:
        return text
    source = say("{source}, from memory", source=entry.source) if entry.from_memory else entry.source
    return f"{text} [{notes.setdefault(source, len(notes) + 1)}]"
