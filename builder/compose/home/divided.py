"""Parts that no page holds, in pieces of a page: each later one says again, in a breath, the cautions that it goes on under.

Decided: a caution holds to the end of its part. Why: which later step it is about, words do not tell for certain ("Sprinkle it over"), and
one too many on a page harms nobody.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.compose.home.heights import HEAD, PAGE, lines, lines_of
from builder.compose.home.joined import of_one_place
from builder.compose.views.caution import CautionView
from builder.compose.views.lesson import FlowBlock, FlowPart, StepRun


def divided(part: FlowPart) -> tuple[FlowPart, ...]:
    """Return a part as it is where a page holds it, else in pieces, divided before a caution where that leaves no page half empty."""
    units = tuple(_units(part.blocks))
    last = max((place for place, unit in enumerate(units) if isinstance(unit, StepRun)), default=0)
    ends = [end for end in range(1, last + 1) if _may_end(units[:end]) and HEAD + sum(map(lines_of, units[:end])) <= PAGE]
    if lines(part) <= PAGE or not ends:
        return (part,)
    before_cautions = [end for end in ends if isinstance(units[end], CautionView) and sum(map(lines_of, units[:end])) >= PAGE / 2]
    end = (before_cautions or ends)[-1]
    said = [one for unit in units[:end] if isinstance(unit, CautionView) for one in (unit, *unit.also)]
    again = of_one_place([one.shorter or one for one in said])
    first = replace(part, blocks=tuple(_runs(units[:end])))
    return (first, *divided(replace(part, blocks=(*again, *_runs(units[end:])), continues=True)))


def _units(blocks: Sequence[FlowBlock]) -> Iterator[FlowBlock]:
    """Yield blocks, of runs each step by itself."""
    for block in blocks:
        if isinstance(block, StepRun):
            yield from (replace(block, start=number, html=(html,)) for number, html in enumerate(block.html, start=block.start))
        else:
            yield block


def _runs(units: Sequence[FlowBlock]) -> Iterator[FlowBlock]:
    """Put steps that follow one another into runs again."""
    run: StepRun | None = None
    for unit in units:
        if isinstance(unit, StepRun):
            run = replace(run, html=(*run.html, *unit.html)) if run else unit
            continue
        yield from [run] if run else []
        run = None
        yield unit
    yield from [run] if run else []


def _may_end(units: Sequence[FlowBlock]) -> bool:
    """Tell whether a piece may end here: not between a caution and the first step that it is about."""
    kinds = [type(unit) for unit in reversed(units)]
    return CautionView not in kinds or StepRun in kinds[: kinds.index(CautionView)]
