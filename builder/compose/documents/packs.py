"""Everything that a date prints, in one file: a page of counts, and behind it each sheet once, in the order of printing.

Decided: alike pages are in it once, with their number beside them. Why: a printer prints copies, and a file with each of eighty pages in it
would hide the one that is wrong. Labels are in files of their own, since they go on other paper.
Decided: the roster is counted and not in it. Why: a file that is printed in one go is passed on in one go, and the roster names people.
Decided: costs, reasons and workings are named and not in it. Why: they are looked up at a desk, and would be seven pages of each pack.
Decided: the check list lies on the back of the page of counts. Why: both are ticked before the class, by the one who prints.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter
from posixpath import basename
from typing import NamedTuple

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed, Joins, Lies, ToPrint
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.teaching.class_plans import when
from builder.compose.teaching.preparation_words import summary
from builder.compose.views.pack import PackRow, PackView
from builder.model.document import JoinedSheet, Piece, laid_behind_a_cover
from builder.model.teaching.class_plan import ClassPlan
from builder.words.listed import listed
from builder.words.say import say


@dataclass(frozen=True)
class Packed:
    """A sheet of the pack by its place, with how many of it to print."""

    at: Address
    printed: ToPrint

    @property
    def joined(self) -> JoinedSheet:
        """Return it as it lies in the pack."""
        return JoinedSheet(self.at.folder, self.at.path, self.printed.apart, self.printed.lies is not Lies.IN_THE_PACK)


class CountedPieces(NamedTuple):
    """Pieces of the pack that follow one another, with how often they are printed."""

    printed: ToPrint
    copies: int
    pieces: tuple[Piece, ...]

    @property
    def pages(self) -> int:
        """Return the pages that are printed of them."""
        return self.copies * sum(piece.pages for piece in self.pieces)

    @property
    def paper(self) -> int:
        """Return the sheets of paper that they take."""
        return self.copies * sum(piece.paper for piece in self.pieces)


def compose_pack(edition: Edition, plan: ClassPlan, here: Address, packed: Iterable[Packed]) -> Composed:
    """Make the pack of one date of the sheets that it prints, of which those in files of their own are counted alone."""
    sheets = sorted(packed, key=lambda one: one.printed.lies.value)
    title = say("To print: {class_title}", class_title=plan.studio_class.title)
    around = frame(edition, here, title, f"{title}, {when(edition, plan)}")

    def view(pages: Sequence[int], own: int) -> PackView:
        known = [(one, number) for one, number in zip(sheets, pages, strict=True) if number]
        bound = [(one.printed, number) for one, number in known if one.printed.lies is Lies.IN_THE_PACK]
        laid = laid_behind_a_cover([(number, printed.apart) for printed, number in bound], own)
        counted = [entry for (printed, _), pieces in zip(bound, laid, strict=True) for entry in _counted(printed, pieces)]
        beside = tuple(_beside(one.printed, number) for one, number in known if one.printed.lies in (Lies.WITH_NAMES, Lies.ON_STOCK))
        looked_up = tuple(f"{one.printed.name} ({basename(one.at.path)})" for one, _ in known if one.printed.lies is Lies.LOOKED_UP)
        in_all, rows = _in_all(counted, own) if counted else "", tuple(map(_row, counted))
        return PackView(around, title, when(edition, plan), summary(plan), in_all, rows, beside, listed(looked_up))

    # Nothing is counted before the sheets are pressed.
    return Composed(view((0,) * len(sheets), 1), Joins(tuple(one.joined for one in sheets), view))


def _counted(printed: ToPrint, pieces: Sequence[Piece]) -> list[CountedPieces]:
    """Return how often each piece of a sheet is printed.

    Pages that turned out to be longer than one are printed as often as that one; where nobody can tell whose they are, all as often as any.
    """
    each, over = divmod(len(pieces), len(printed.copies))
    copies = (max(printed.copies),) * len(pieces) if over else tuple(number for number in printed.copies for _ in range(each))
    runs = groupby(zip(copies, pieces, strict=True), key=itemgetter(0))
    return [CountedPieces(printed, number, tuple(piece for _, piece in run)) for number, run in runs]


def _row(one: CountedPieces) -> PackRow:
    first, last = one.pieces[0].first, one.pieces[-1].last
    sides = say("both sides") if any(piece.pages > 1 for piece in one.pieces) else say("one side")
    if one.pieces[0].on_the_back:
        sides = say("the back of this page")
    pages = say("{first} to {last}", first=first, last=last) if last > first else str(first)
    return PackRow(one.printed.name, pages, one.printed.said or str(one.copies), sides, str(one.paper) if one.paper else "")


def _beside(printed: ToPrint, pages: int) -> PackRow:
    if printed.lies is Lies.WITH_NAMES:
        sides = say("paper")
    else:
        sides = say("its own sheets, both sides") if printed.on_both_sides else say("its own sheets, one side")
    return PackRow(printed.name, "", "", sides, str(Piece(1, pages).paper if printed.on_both_sides else pages))


def _in_all(counted: Sequence[CountedPieces], own: int) -> str:
    """Sum up what is printed, with the pages of counts themselves."""
    pages = own + sum(one.pages for one in counted)
    paper = Piece(1, own).paper + sum(one.paper for one in counted)
    return say("In all {pages}\u00a0printed pages on {paper}\u00a0sheets of paper.", pages=pages, paper=paper)
