"""The lye of a notebook beside what it should be, with the superfat that it leaves, and loudly where it is too much."""

from collections.abc import Iterator
from fractions import Fraction

from builder.model.recipe.quantity import Share
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.listed import listed
from builder.words.percent import percent
from builder.words.plain_number import plain_number
from builder.words.within import within


def lye_beside(written: WorkedBatch, anew: WorkedBatch, superfat: Share, *, is_notebooks: bool) -> Iterator[tuple[str, bool]]:
    """Yield sentences, each with whether it is said loudly. `anew` is the same batch with lye for that superfat."""
    ours, theirs = anew.grams, written.grams
    lye = theirs.lye
    if lye is None or ours.lye is None:
        return
    alkalis = listed([f"{within(one.alkali)}, counted as {percent(one.typical)} pure" for one in lye.purities])
    worst = f"with every figure and weighing at its worst {percent(lye.lowest)} to {percent(lye.highest)}"
    yield f"Lye as it stands: {_grams(theirs.alkali.grams)} ({alkalis}).", False
    yield f"It leaves a superfat of {percent(lye.superfat)}; {worst}.", False
    more = theirs.alkali - ours.alkali
    whose = "that the notebook tells" if is_notebooks else "that is usual here"
    way = (
        "as much"
        if not more
        else f"{_grams(abs(more.grams))} ({percent(abs(more / ours.alkali), 2)}) {'more' if more.grams > 0 else 'less'}"
    )
    yield f"For the superfat {whose} ({percent(superfat.fraction)}) it takes {_grams(ours.alkali.grams)}: the notebook has {way}.", False
    if lye.superfat < 0:
        yield "TOO MUCH LYE: there is not enough fat to take it, and what is left burns skin. DO NOT MAKE THIS BATCH.", True
    elif lye.lowest < 0:
        yield "Lye may be left over in the worst case: see the finding above before you make this batch.", True


def _grams(number: Fraction) -> str:
    return f"{plain_number(number)} g"
