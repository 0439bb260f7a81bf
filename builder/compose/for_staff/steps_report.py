"""What `check --reading` says of the steps and cautions of a sheet: steps of many orders, the longest step, parts that warn often.

One action to a step, two where nothing parts them, is what standards of instructions ask for (IEC/IEEE 82079-1, from memory). Cautions that
stand close together dull one another (ANSI Z535.6, from memory); three to a part is this program's own number.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from builder.compose.for_staff.sheet_text import Said
from builder.compose.home.letters import letter_of
from builder.model.dates.studio_class import StudioClass
from builder.model.teaching.lesson import Step
from builder.rules.hands.actions import actions_in
from builder.words.reading import words_of

ORDERS, CAUTIONS = 2, 3
_LETTER = re.compile(r"[A-Z]+(?=\d)")


def steps_by_name(studio_class: StudioClass) -> Mapping[str, Step]:
    """Return the steps of a class by the names that they bear on its documents: `B5`."""
    lettered = ((letter_of(studio_class, part), part) for part in studio_class.lesson.parts)
    return {f"{letter}{number}": step for letter, part in lettered if letter for number, step in enumerate(part.steps, 1)}


def step_lines(said: Sequence[Said], steps: Mapping[str, Step], *, in_english: bool) -> Iterator[str]:
    """Yield in words what to look at; `steps` are those of the class by their names. Orders are counted in English alone."""
    whole = [(block[0].at, sum(len(words_of(one.text)) for one in block)) for block in _blocks(said) if block[0].is_step]
    if whole:
        at, count = max(whole, key=lambda one: one[1])
        yield f"longest step: {count} words, in {at}{_where(steps.get(at))}"
    for at in dict.fromkeys(at for at, _ in whole) if in_english else ():
        verbs = actions_in(steps[at].sentences) if at in steps else ()
        if len(verbs) > ORDERS:
            yield f"over {ORDERS} orders in a step: {len(verbs)} in {at}{_where(steps[at])}: {', '.join(verbs)}"
    for part, blocks in groupby(_blocks(said), key=lambda block: block[0].part):
        mine = list(blocks)
        cautions = [block for block in mine if not block[0].is_step]
        if part and len(cautions) > CAUTIONS:
            yield f"over {CAUTIONS} cautions in a part: {len(cautions)}{_letter(mine)}"


def _blocks(said: Sequence[Said]) -> list[list[Said]]:
    return [list(block) for _, block in groupby(said, key=lambda one: one.block)]


def _where(step: Step | None) -> str:
    return f" ({step.place.file}:{step.place.line})" if step else ""


def _letter(blocks: Sequence[Sequence[Said]]) -> str:
    found = next((_LETTER.match(block[0].at) for block in blocks if block[0].is_step), None)
    return f" in {found[0]}" if found else ""
