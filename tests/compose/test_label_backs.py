"""Backs of labels as somebody set them: no short word alone in a last line, all of one product alike, facts in lines of their own.

That a paragraph does not end in a short word alone is common practice in setting type, no source.
"""

from hypothesis import given
from hypothesis import strategies as st

from builder.compose.label.label_texts import Run
from builder.compose.label_front.designs import DESIGNS
from builder.compose.label_layout.composed import lay_out_composed
from builder.compose.label_layout.label_lines import Block, Setter
from builder.compose.label_layout.label_sheets import SheetUse
from tests.compose.test_label_fronts import FACES, LEAST, label, sheet
from tests.making import sure

SETTER = Setter(FACES)
BOTTLE = SheetUse(sheet(74, 74), 2)


def lines_of(text: str, width: float) -> list[str]:
    return ["".join(run.text for run in line) for line in sure(SETTER.lines((Run(text),), 9.0, width))]


def said(block: Block) -> list[str]:
    return ["".join(run.text for run in line).replace("\u00a0", " ") for line in block.lines]


def test_a_short_word_does_not_stand_alone_in_the_last_line() -> None:
    text = "Keep the tin shut, out of the sun and out of a hot car."
    ends = {lines_of(text, width)[-1] for width in range(22, 60)}
    assert "car." not in ends and "hot car." in ends
    assert lines_of("Sodium Methyl Ethylhexylglycerin", 33)[-1] == "Ethylhexylglycerin", "a long word may stand alone"
    assert lines_of("Keep dry.", 10) == ["Keep", "dry."], "nothing is taken from a line of two words"


@given(st.lists(st.text("abcdefghil", min_size=1, max_size=9), min_size=1, max_size=25), st.integers(25, 90))
def test_lines_hold_every_word_in_its_order_and_are_no_more_and_no_wider(words: list[str], width: int) -> None:
    lines = lines_of(" ".join(words), width)
    assert " ".join(lines).split() == words
    assert all(SETTER.width(line, False, 9.0) <= width + 1e-6 for line in lines)
    # The fewest lines that there can be: words one after the other, each in the line before as long as that has room.
    fewest, used = 1, ""
    for word in words:
        longer = f"{used} {word}".strip()
        if SETTER.width(longer, False, 9.0) <= width + 1e-9:
            used = longer
        else:
            fewest, used = fewest + 1, word
    assert len(lines) == fewest


def backs_of(stock: SheetUse, *back: str) -> list[list[Block]]:
    dressed = [(label(back=(one, "Rub a little into dry hands. " * 6)), DESIGNS["posy"]) for one in back]
    laid = sure(lay_out_composed(dressed, stock, LEAST["small"], SETTER))
    return [list(cells[1].blocks) for cells in laid.labels]


def test_where_one_list_of_a_product_needs_capitals_all_its_lists_have_them() -> None:
    few = "Water (Aqua), Glycerin, Mica"
    many = ", ".join(f"Ethylhexyl Stearate {number}" for number in range(42))
    for text, needs in ((few, False), (many, True)):
        (alone,) = backs_of(BOTTLE, text)
        assert (" ".join(said(alone[0])).isupper()) is needs
    both = backs_of(BOTTLE, few, many)
    lists = [" ".join(said(blocks[0])) for blocks in both]
    assert all(text == text.upper() for text in lists), lists
    assert both[0][0].points == both[1][0].points


def test_the_day_and_the_batch_stand_apart_and_whole() -> None:
    for width in (34, 40, 60, 74):
        ((*_, blocks),) = (backs_of(SheetUse(sheet(width, 120), 2), "Water (Aqua)"),)
        lines = [line for block in blocks for line in said(block)]
        batch = next(line for line in lines if "Batch" in line)
        assert "Batch: ML-270306" in batch
        assert batch.startswith("Batch") or "Made March 6, 2027   Batch" in batch


def test_the_line_to_sign_is_as_long_as_there_is_room_and_at_least_as_long_as_it_was() -> None:
    lengths = []
    for width in (34, 60, 74):
        (blocks,) = backs_of(SheetUse(sheet(width, 120), 2), "Water (Aqua)")
        (blank,) = [run.blank for block in blocks for line in block.lines for run in line if run.blank]
        lengths.append(blank)
        assert 18 <= blank <= 48 and blank < width - 2 * 2.5
    assert lengths == sorted(lengths) and lengths[-1] == 48
