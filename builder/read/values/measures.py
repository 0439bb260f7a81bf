"""An amount as written becomes a number of its kind's base unit: grams, millilitres, millimetres, minutes, degrees Celsius, a share of one.

The grammar is closed: a number and a unit by name. Only weights, volumes and times may have a second, smaller part (`1 lb 4 oz`),
which is less than one of the first unit. Nothing is guessed: what does not fit raises an AmountError that says what to write.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from builder.model.finding_kind import STOP, FindingKind
from builder.read.text.text_error import AmountError, quoted
from builder.read.values.kinds import EXAMPLES, KIND_OF_UNIT, Kind, examples_of, find_unit, in_base_unit, shown
from builder.read.values.numbers import NUMBER_RUN, number_of, tidy

FINDS = (
    FindingKind("unit-missing", STOP, "An amount has no unit."),
    FindingKind("unit-of-another-kind", STOP, "The unit of an amount makes it another kind of amount than is wanted."),
)

_RANGE = re.compile(r"[0-9]\s*(?:-|–|—|to|or)\s*[0-9]")
_IN_TWO_PARTS = (Kind.WEIGHT, Kind.VOLUME, Kind.TIME)


@dataclass(frozen=True)
class Measured:
    """A number of the kind's base unit, and the unit in which it was written."""

    kind: Kind
    number: Fraction
    unit: str


def measure(text: str, *wanted: Kind, zero: bool = False, below_zero: bool = False) -> Measured:
    """Read an amount of one of the kinds wanted. Raises AmountError."""
    plain = tidy(text)
    unsigned = plain.removeprefix("-").lstrip()
    _refuse_what_is_no_amount(text, unsigned, wanted)
    parts = [(number_of(run), find_unit(unit, wanted)) for run, unit in _split(text, unsigned, wanted)]
    for _, unit in parts:
        _refuse_another_kind(unit, wanted)
    kind = KIND_OF_UNIT[parts[0][1]]
    _refuse_two_amounts(text, kind, parts)
    total = sum((in_base_unit(number, unit) for number, unit in parts), Fraction(0))
    if unsigned != plain:
        if not below_zero:
            remedy = f"Write an amount above zero, for example {EXAMPLES[kind]}."
            raise AmountError("amount-not-positive", f"{quoted(text)} is below zero.", remedy)
        total = sum((in_base_unit(-number, unit) for number, unit in parts), Fraction(0))
    if not any(number for number, _ in parts) and not zero:
        raise AmountError("amount-not-positive", f"{quoted(text)} is nothing.", "Write an amount above zero, or leave the line out.")
    return Measured(kind, total, parts[0][1])


def _refuse_what_is_no_amount(text: str, unsigned: str, wanted: tuple[Kind, ...]) -> None:
    example = examples_of(wanted)
    if not NUMBER_RUN.match(unsigned):
        rest = ', or "rest" for whatever brings the total to 100 %' if Kind.PARTS in wanted else ""
        remedy = f"Write a number and a unit, for example {example}{rest}."
        raise AmountError("amount-unreadable", f"{quoted(text)} does not begin with a number.", remedy)
    if _RANGE.search(unsigned):
        remedy = f'Write one amount, for example {example}; one and a half is "1 1/2".'
        raise AmountError("amount-unreadable", f"{quoted(text)} is a range, and only one amount can be weighed.", remedy)
    if any(sign in unsigned for sign in "()="):
        remedy = "Write the amount in one unit and nothing else; the other units are worked out from it."
        raise AmountError("amount-unreadable", f"More than an amount stands in {quoted(text)}.", remedy)


def _split(text: str, unsigned: str, wanted: tuple[Kind, ...]) -> list[tuple[str, str]]:
    runs = list(NUMBER_RUN.finditer(unsigned))
    ends = [run.start() for run in runs[1:]] + [len(unsigned)]
    parts = [(run.group(), unsigned[run.end() : end].strip().removesuffix(" and")) for run, end in zip(runs, ends, strict=True)]
    for number, unit in parts:
        if not unit:
            number_of(number)
            remedy = f"Write the unit after the number, for example {examples_of(wanted)}."
            raise AmountError("unit-missing", f"{quoted(text)} has no unit.", remedy)
    return parts


def _refuse_another_kind(unit: str, wanted: tuple[Kind, ...]) -> None:
    kind = KIND_OF_UNIT[unit]
    if kind not in wanted:
        words = " or ".join((", ".join(wanted[:-1]), wanted[-1])) if len(wanted) > 1 else wanted[0]
        remedy = f"Write {words}, for example {examples_of(wanted)}." if len(wanted) == 1 else f"Write for example {examples_of(wanted)}."
        raise AmountError("unit-of-another-kind", f'"{shown(unit)}" makes it {kind}, and what is wanted here is {words}.', remedy)


def _refuse_two_amounts(text: str, kind: Kind, parts: list[tuple[Fraction, str]]) -> None:
    remedy = f"Write one amount, for example {EXAMPLES[kind]}; the other units are worked out from it."
    for (_, larger), (number, unit) in pairwise(parts):
        if kind not in _IN_TWO_PARTS or KIND_OF_UNIT[unit] is not kind:
            raise AmountError("amount-unreadable", f"{quoted(text)} holds more than one amount.", remedy)
        if in_base_unit(number, unit) >= in_base_unit(Fraction(1), larger):
            wrong = f"{quoted(text)} can be taken for two amounts, since its second part is not less than 1 {shown(larger)}."
            raise AmountError("amount-unreadable", wrong, remedy)
