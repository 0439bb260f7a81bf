"""The shapes of label sheets, and of what a studio or a class asks of its labels."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.design_names import DESIGN_NAMES
from builder.model.label.label_sheet import LabelSheet, LabelWishes, Paper
from builder.model.recipe.quantity import Length
from builder.read.makes import Makes
from builder.read.shapes.fields import Gap, LengthField, Shift, Text, Whole, WholeAboveZero, YesOrNo, reads
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.text.text_error import TextError
from builder.read.values.values import member_of, word_of
from builder.words.plain_number import plain_number

FINDS = (FindingKind("label-sheet-off-the-paper", STOP, "A sheet of labels has labels that end off the paper."),)

NOTHING = Length(Fraction(0))
SMALLEST, MOST_OFF, MOST_SPARE = 5, 15, 50
PaperField = Annotated[Paper, reads(member_of(Paper))]
DesignName = Annotated[str, reads(word_of(*DESIGN_NAMES))]


class LabelSheetShape(Shape, Makes[LabelSheet]):
    """One entry of `label_sheets.yaml`."""

    paper: PaperField = needed("paper", "letter")
    """The paper of the sheet."""
    columns: WholeAboveZero = needed("columns", "2")
    """How many labels lie side by side."""
    rows: WholeAboveZero = needed("rows", "4")
    """How many labels lie one below the other."""
    width: LengthField = needed("width", "95 mm")
    """The width of one label; of a round one its diameter."""
    height: LengthField = needed("height", "69 mm")
    """The height of one label; of a round one its diameter."""
    left: Gap = needed("left", "10 mm")
    """From the left edge of the paper to the first label."""
    top: Gap = needed("top", "10 mm")
    """From the top edge of the paper to the first label."""
    across: Gap = maybe("across", NOTHING, example="3 mm")
    """The gap between two labels side by side."""
    down: Gap = maybe("down", NOTHING, example="3 mm")
    """The gap between two labels one below the other."""
    corner: Gap = maybe("corner", NOTHING, example="2 mm")
    """The radius of the corners."""
    is_round: YesOrNo = maybe("round", False, example="yes")
    """Whether the labels are round."""
    hole: LengthField | None = maybe("hole", example="5 mm")
    """The diameter of the hole of a hanging tag."""
    is_cut: YesOrNo = maybe("cut", False, example="yes")
    """Whether the sheet is plain paper that you cut, so that lines to cut along are printed."""

    @model_validator(mode="after")
    def _lies_on_the_paper(self) -> Self:
        for key, length in (("width", self.width), ("height", self.height)):
            if length.millimetres < SMALLEST:
                wrong = f"A label of {plain_number(length.millimetres, 5)} mm holds no word."
                raise TextError("figure-out-of-range", wrong, f"Measure the sheet anew: at least {SMALLEST} mm.", at=(key,))
        for key, of, start, number, size, gap, page in (
            ("columns", "wide", self.left, self.columns, self.width, self.across, self.paper.size[0]),
            ("rows", "high", self.top, self.rows, self.height, self.down, self.paper.size[1]),
        ):
            end = start.millimetres + number * size.millimetres + (number - 1) * gap.millimetres
            if end > page:
                wrong = f"{number} {key} end {plain_number(end, 5)} mm from the edge, and the paper is {plain_number(page, 5)} mm {of}."
                remedy = "Measure the sheet anew; margins, labels and gaps must add up."
                raise TextError("label-sheet-off-the-paper", wrong, remedy, at=(key,))
        if self.is_round and self.width != self.height:
            wrong = "A round label is as wide as it is high."
            raise TextError("label-sheet-off-the-paper", wrong, 'Write the diameter as "width" and as "height".', at=("height",))
        return self


class LabelWishesShape(Shape, Makes[LabelWishes]):
    """What a class asks of its labels."""

    stands_at = "sheet"

    sheet: Text | None = maybe("sheet", example="letter 2 x 4")
    """The sheet of labels by its name, ours or of your `shelf/label_sheets.yaml`. Without it, the first that holds the text and sits on the
    container."""
    panels: Annotated[int, reads(lambda text: int(word_of("1", "2")(text)))] | None = maybe("panels", example="2")
    """2 for front and back on two labels."""
    to_colour: YesOrNo | None = maybe("to colour", example="yes")
    """Whether labels are outlines to colour in, with a title to write, and each student's bag gets a gift tag."""
    tags: YesOrNo | None = maybe("tags", example="yes")
    """Whether each student's bag gets a tag."""
    design: DesignName | None = maybe("design", example="garland")
    """How the labels look: posy, poster, linen, garland, slate or sampler. `stillroom reference labels` tells of them."""
    spare: Whole | None = maybe("spare", example="2")
    """How many labels of each product are printed beyond one for each container, for those that are spoilt; without it none. They come
    last, those of which there are most first."""

    @model_validator(mode="after")
    def _is_not_a_second_set(self) -> Self:
        if self.spare is not None and self.spare > MOST_SPARE:
            wrong = f"{self.spare} spare labels of each product are more than a class spoils."
            remedy = f"Write at most {MOST_SPARE}. To print all of a date anew, print its sheet again."
            raise TextError("figure-out-of-range", wrong, remedy, at=("spare",))
        return self


class StudioLabelsShape(LabelWishesShape):
    """What a studio asks of all its labels, and how far off its printer is."""

    own_names: YesOrNo = maybe("names of their own", False, example="yes")
    """Whether a label bears what its student calls it, from the column `their name for it` of the roster, in place of the product's name.
    It stands on labels only; what it is and everything else stays."""
    logo: YesOrNo = maybe("logo", False, example="yes")
    """Whether your logo (`look: {logo: ...}`) stands on the fronts in place of your name, where there is room for it."""
    portfolio: YesOrNo = maybe("portfolio", False, example="yes")
    """Whether `print/label-portfolio.pdf` shows your labels in all designs, in colour and in grey, beside their containers."""
    right: Shift | None = maybe("right", example="0.5 mm")
    """How far to the right your printer has to print, or to the left with a minus. The label test page shows it."""
    down: Shift | None = maybe("down", example="-1 mm")
    """How far down your printer has to print, or up with a minus."""

    @model_validator(mode="after")
    def _is_what_a_printer_is_off(self) -> Self:
        for key, shift in (("right", self.right), ("down", self.down)):
            if shift is not None and abs(shift.millimetres) > MOST_OFF:
                off = plain_number(shift.millimetres, 5)
                wrong = f"A printer is off by a few millimetres; {off} mm moves the labels off their positions."
                raise TextError("figure-out-of-range", wrong, f"Print the test page again: at most {MOST_OFF} mm either way.", at=(key,))
        return self
