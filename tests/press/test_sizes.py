"""The size of type that a sheet gets does not hang on the guess at which it is begun; a guess that is right saves layouts."""

from itertools import combinations_with_replacement
from types import SimpleNamespace
from xml.etree import ElementTree

import pytest

from builder.press.engine.sizes import laid_out

NAMES = ["large", "middle", "small", "smallest"]


class Page:
    """A page that has been laid out, with the boxes on it, of whose height so much is filled."""

    def __init__(self, *boxes: SimpleNamespace, filled: float = 0.01) -> None:
        self._page_box = self
        self._boxes = boxes
        self.height = 1
        end = SimpleNamespace(position_y=0, margin_height=lambda: filled)
        self.children = [SimpleNamespace(descendants=lambda: [end])]

    def content_box_y(self) -> float:
        return 0

    def descendants(self, *, placeholders: bool) -> tuple[SimpleNamespace, ...]:
        return () if placeholders else self._boxes


def sheet(pages: tuple[int, ...], most: int, begun_at: int, of_other_pieces: str = "") -> tuple[str, int]:
    """Lay out a sheet that takes so many pages in each size; give its size, and the number of layouts."""
    holds = " ".join("0" if size < begun_at else "1000" for size in range(len(NAMES)))
    body = ElementTree.Element("body", {"data-fits": " ".join(NAMES), "data-fit": "large", "data-most": str(most), "data-holds": holds})
    body.text = "Weigh the oils."
    if of_other_pieces:
        ElementTree.SubElement(body, "p", {"class": "one-page", "data-in": of_other_pieces})
    page, made = Page(SimpleNamespace(element=None)), []

    def render() -> SimpleNamespace:
        size = body.get("data-fit", "")
        made.append(size)
        return SimpleNamespace(size=size, pages=[page] * pages[NAMES.index(size)])

    return laid_out(body, render).size, len(made)


def all_tried(pages: tuple[int, ...], most: int) -> str:
    """Return the first size with as few pages as are wanted, or else with as few as the last has."""
    return next(name for name, taken in zip(NAMES, pages, strict=True) if taken <= max(most, pages[-1]))


@pytest.mark.parametrize("begun_at", range(len(NAMES)))
def test_the_size_is_the_same_wherever_it_is_begun(begun_at: int) -> None:
    for falling in combinations_with_replacement(range(5, 0, -1), len(NAMES)):
        for most in range(1, 7):
            size, _ = sheet(falling, most, begun_at)
            assert size == all_tried(falling, most), (falling, most)


@pytest.mark.parametrize("begun_at", range(len(NAMES)))
def test_sizes_in_which_other_pieces_want_a_page_are_tried_for_themselves(begun_at: int) -> None:
    falling = list(combinations_with_replacement(range(4, 0, -1), 2))
    for pages in ((*first, *second) for first in falling for second in falling):
        for most in range(pages[-1], 5):
            size, _ = sheet(pages, most, begun_at, "large middle")
            assert size == all_tried(pages, most), (pages, most)


@pytest.mark.parametrize(("pages", "begun_at", "layouts"), [((2, 2, 1, 1), 0, 1), ((5, 4, 2, 1), 2, 2), ((7, 6, 5, 2), 3, 2)])
def test_who_guesses_right_lays_out_once_or_twice(pages: tuple[int, ...], begun_at: int, layouts: int) -> None:
    assert sheet(pages, 2, begun_at) == (NAMES[begun_at], layouts)


def test_what_was_tried_is_kept() -> None:
    assert sheet((3, 2, 1, 1), 2, 0) == ("middle", 2)


@pytest.mark.parametrize(
    ("parting_less", "closest", "tried", "pages"),
    [
        (4, 4, [None, "any"], 4),  # What the last way does not save none of them does.
        (4, 3, [None, "any", "last"], 3),
        (3, 3, [None, "any", "last"], 3),
    ],
)
def test_of_the_ways_that_save_a_page_the_one_is_taken_that_parts_least(
    parting_less: int, closest: int, tried: list[str | None], pages: int
) -> None:
    body = ElementTree.Element("body", {"data-closers": "last any"})
    number, made = {None: 4, "last": parting_less, "any": closest}, []

    def render() -> SimpleNamespace:
        way = body.get("data-closer")
        made.append(way)
        return SimpleNamespace(way=way, pages=[Page(SimpleNamespace(element=None), filled=0.5)] * number[way])

    kept = laid_out(body, render)
    assert (made, len(kept.pages)) == (tried, pages)
    assert kept.way == ("last" if parting_less == 3 else "any" if closest == 3 else None)


def test_a_piece_is_tried_by_itself_before_all_of_a_sheet_is() -> None:
    html = '<div><p class="one-page">Weigh it.</p><p>Then <b>stir</b>.</p></div>'
    body = ElementTree.fromstring(f'<body data-fits="large small" data-fit="large" data-holds="3 900">{html}</body>')
    page = Page(SimpleNamespace(element=body[0][0], element_tag="p"))
    made = []

    def render() -> SimpleNamespace:
        made.append((body.get("data-fit"), "".join(body.itertext())))
        return SimpleNamespace(pages=[page] * (2 if body.get("data-fit") == "large" else 1))

    assert len(laid_out(body, render).pages) == 1
    # In the larger type the piece runs on by itself, so that the rest need not be laid out with it; nothing of it is lost.
    assert made == [("small", "Weigh it.Then stir."), ("large", "Weigh it.")]
    assert "".join(body.itertext()) == "Weigh it.Then stir."


@pytest.mark.parametrize(
    ("filled", "tried"),
    # In size "small" two pages of 97 % and of so much are filled; in "middle" a page holds 1000 letters, where it holds 1250 in "small".
    [(0.55, ["small", "middle"]), (0.67, ["small", "middle"]), (0.69, ["small"])],
)
def test_a_size_in_which_all_is_clearly_too_much_is_not_tried(filled: float, tried: list[str]) -> None:
    body = ElementTree.Element("body", {"data-fits": "middle small", "data-fit": "middle", "data-most": "2", "data-holds": "1000 1250"})
    body.text = "Weigh the oils. " * 140
    made = []

    def render() -> SimpleNamespace:
        made.append(body.get("data-fit"))
        box = SimpleNamespace(element=None)
        pages = [Page(box, filled=0.97), Page(box, filled=filled)]
        return SimpleNamespace(pages=pages if body.get("data-fit") == "small" else [*pages, Page(box)])

    laid_out(body, render)
    assert (body.get("data-fit"), made) == ("small", tried)


@pytest.mark.parametrize(
    ("filled", "tried"),
    # In the last size 2.9 pages of "middle" become 2.32, which are three; 2.5 may become two, which only a layout can tell.
    [(0.9, ["middle"]), (0.5, ["middle", "small"])],
)
def test_a_sheet_that_clearly_takes_a_page_more_than_it_wants_is_begun_with_that_page(filled: float, tried: list[str]) -> None:
    names = {"data-fits": "large middle small", "data-fit": "large", "data-most": "2", "data-holds": "500 1000 1250"}
    body = ElementTree.Element("body", names)
    body.text = "Weigh the oils. " * 186
    made = []

    def render() -> SimpleNamespace:
        made.append(body.get("data-fit"))
        return SimpleNamespace(pages=[Page(filled=1.0), Page(filled=1.0), Page(filled=filled)])

    laid_out(body, render)
    assert (body.get("data-fit"), made) == ("middle", tried)
