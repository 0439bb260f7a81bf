"""The shape of a published value: a number or a range, its unit, and where it was published."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import AfterValidator, model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.recipe.figure import Figure, Figures, Known, Source
from builder.read.makes import Makes, becomes, carried
from builder.read.shapes.fields import Number, SourceField, Text, YesOrNo, reads
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.placed_data import PlacedData, Step
from builder.read.text.text_error import TextError
from builder.read.values.bounds import FIGURES, Bounds
from builder.read.values.values import member_of
from builder.words.nearest import did_you_mean
from builder.words.plain_number import plain_number

FINDS = (
    FindingKind("figure-in-use-unclear", STOP, "Several figures are given, and it is not said which one is in use and why."),
    FindingKind("figure-out-of-range", STOP, "A figure cannot be true, whatever it is of; mostly a decimal point has slipped."),
    FindingKind("figure-range-upside-down", STOP, "The lower end of a range is above its upper end."),
    FindingKind("figure-unit-wrong", STOP, "A figure has a unit in which it cannot be."),
    FindingKind("figure-value-unclear", STOP, "It is not clear whether a figure is a value, a range or a minimum."),
    FindingKind("figure-without-source", STOP, "A figure stands without its source."),
)

RELATIVE_DENSITY = "relative density"
KnownField = Annotated[Known, reads(member_of(Known))]


class FigureShape(Shape, Makes[Figure]):
    """One published value or range."""

    value: Number | None = maybe("value", example="190")
    """The value that was published, where it is a single one."""
    low: Number | None = maybe("low", example="184")
    """The low end of a range, or a minimum where there is no `high:`."""
    high: Number | None = maybe("high", example="196")
    """The high end of a range."""
    unit: Text = needed("unit", "mg/g")
    """The unit in which it was published."""
    source: SourceField | None = maybe("source", example="a-source")
    """The short name of the work, from sources.yaml."""
    at: Text = needed("at", "table 4, page 112")
    """Where in the work it stands: table, page, section."""
    known: KnownField = needed("known", "read")
    """How it is known."""
    when: Text = maybe("when", "", example="25 degC")
    """The conditions under which it holds, such as a temperature."""
    note: Text = maybe("note", "", example="stored as whole numbers")
    """Anything else that was published with it."""
    in_use: YesOrNo = maybe("in use", False, example="yes")
    """Whether it is the one that counts, where there are several."""
    because: Text = maybe("because", "", example="The edition in force.")
    """Why this one counts where there are several, or why a saponification value lies far from what is published for that fat."""

    @becomes("low")
    def _low_end(self, _: PlacedData) -> Fraction:
        return self.ends[0]

    @becomes("high")
    def _high_end(self, _: PlacedData) -> Fraction | None:
        return self.high if self.value is None else self.value

    @becomes("source")
    def _work(self, _: PlacedData) -> Source:
        assert self.source is not None
        return self.source

    @model_validator(mode="after")
    def _has_source(self) -> Self:
        if self.source is None:
            remedy = 'Write "source:" with a name from sources.yaml and "at:" with the place in it; without them, leave the figure out.'
            raise TextError("figure-without-source", "A figure stands here without its source.", remedy)
        return self

    @model_validator(mode="after")
    def _has_clear_ends(self) -> Self:
        single = self.value is not None and self.low is None and self.high is None
        if not single and (self.value is not None or self.low is None):
            wrong = "It is not clear what was published: one value, a range, or a minimum."
            remedy = 'Write "value:" alone, "low:" and "high:", or "low:" alone for a minimum.'
            raise TextError("figure-value-unclear", wrong, remedy)
        if self.low is not None and self.high is not None and self.low > self.high:
            wrong, remedy = "The lower end of this range is above its upper end.", "Look the figure up again and exchange the two."
            raise TextError("figure-range-upside-down", wrong, remedy, at=("low",))
        return self

    @property
    def is_minimum(self) -> bool:
        """Tell whether only a minimum was published."""
        return self.value is None and self.high is None

    @property
    def ends(self) -> tuple[Fraction, Fraction]:
        """Return the low and the high end, both the value itself where a single one or a minimum was published."""
        low = self.low if self.value is None else self.value
        assert low is not None
        return low, low if self.high is None else self.high


Entries = tuple[FigureShape, ...]


def figures_of(entries: Entries, placed: PlacedData) -> Figures:
    """Make the figures of one property, the one in use first."""
    made = carried(entries, placed)
    first = next((number for number, entry in enumerate(entries) if entry.in_use), 0)
    return Figures(made[first], (*made[:first], *made[first + 1 :]))


def entries_of(figure: str, *units: str, both_ends: bool = False) -> AfterValidator:
    """Make the validator of all entries of one figure: their units, their bounds, and which of them is in use.

    `both_ends` says that a minimum alone will not do for the entry in use.
    """
    bounds = FIGURES[figure]
    return AfterValidator(lambda entries: _judge_in_use(judge_bounds(_judge_units(entries, units), figure, bounds), both_ends))


def _judge_units(entries: Entries, units: tuple[str, ...]) -> Entries:
    for number, entry in enumerate(entries):
        if entry.unit not in units:
            remedy = f"Write it in {' or '.join(units)}, as it was published.{did_you_mean(entry.unit, units)}"
            raise TextError("figure-unit-wrong", f'This figure cannot be in "{entry.unit}".', remedy, at=(number, "unit"))
    return entries


def judge_bounds(entries: Entries, figure: str, bounds: Bounds, *at: Step) -> Entries:
    """Refuse a figure that lies outside its bounds; `at` leads to the entries from where they are judged. Raises TextError."""
    for number, entry in enumerate(entries):
        for end in ("value", "low", "high"):
            found = getattr(entry, end)
            if found is not None and not bounds.hold(found):
                written = f"{plain_number(found)} {bounds.unit}".rstrip()
                wrong = f'"{figure}" cannot be {written}: {bounds.reason}.'
                raise TextError("figure-out-of-range", wrong, bounds.remedy(found), at=(*at, number, end))
    return entries


def in_use(entries: Entries) -> FigureShape | None:
    """Return the entry in use, if there is any."""
    return next((entry for entry in entries if entry.in_use), entries[0] if entries else None)


def _judge_in_use(entries: Entries, both_ends: bool) -> Entries:
    chosen = [entry for entry in entries if entry.in_use] or list(entries)
    wrong = ""
    if len(chosen) > 1:
        wrong = "Several figures are given, and it is not said which one is in use."
    elif len(entries) > 1 and not chosen[0].because:
        wrong = "Several figures are given, and it is not said why this one is in use."
    elif both_ends and chosen and chosen[0].is_minimum:
        wrong = "Only a minimum is published in the entry in use, and the lye is worked out from both ends."
    if wrong:
        remedy = 'Write "in use: yes" and "because: a sentence" beside exactly one entry, and use one with both ends of its range.'
        raise TextError("figure-in-use-unclear", wrong, remedy)
    return entries
