"""The shopping list on stdout: its dates, what to buy in columns, the days beneath each thing, then what to know of it."""

from collections.abc import Iterator, Sequence
from textwrap import wrap

from builder.compose.views.shopping import ShopGroup, ShopList, ShopRow
from builder.terminal.consoles import open_console, say, styled

HEADINGS = ("what", "needed", "in stock", "to buy", "price", "left after")
_LEFT = ("what", "to buy")
_WIDTH = 110
_GAP = "  "


def print_shopping(shopping: ShopList) -> None:
    """Print the list."""
    console = open_console(width=_WIDTH)
    say(console, styled(shopping.scope, "bold"))
    for date in shopping.dates:
        say(console, f"  {date.day}: {date.title}, {date.students}")
    if shopping.groups:
        say(console)
        for line, style in _lines(shopping):
            say(console, styled(line, style))
        say(console)
    for note in shopping.notes:
        for line in _folded(note, ""):
            say(console, line)


def _lines(shopping: ShopList) -> Iterator[tuple[str, str]]:
    """Yield the lines of the columns, each with its style."""
    total = ("At the till", "", "", "", shopping.total, "")
    everything = [HEADINGS, total, *map(_head, shopping.groups), *(_cells(row) for group in shopping.groups for row in group.rows)]
    widths = [max(len(cell) for cell in column) for column in zip(*everything, strict=True)]
    yield _in_columns(HEADINGS, widths), "bold"
    for group in shopping.groups:
        yield _in_columns(_head(group), widths), "bold"
        for row in group.rows:
            yield _in_columns(_cells(row), widths), ""
            for more in (row.days, row.note):
                yield from ((line, "dim") for line in _folded(more, "    "))
    yield _in_columns(total, widths), "bold"


def _head(group: ShopGroup) -> tuple[str, ...]:
    return group.title, "", "", "", group.price, ""


def _cells(row: ShopRow) -> tuple[str, ...]:
    return f"  {row.name}", row.needed, row.stock, row.packs, row.price, row.left


def _in_columns(cells: Sequence[str], widths: Sequence[int]) -> str:
    found = zip(cells, widths, HEADINGS, strict=True)
    return _GAP.join(cell.ljust(width) if heading in _LEFT else cell.rjust(width) for cell, width, heading in found).rstrip()


def _folded(text: str, indent: str) -> list[str]:
    """Fold a text at its ordinary spaces, so that a number stays with its unit."""
    return wrap(text, _WIDTH, initial_indent=indent, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False)
