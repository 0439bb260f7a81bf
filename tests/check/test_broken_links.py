"""What texts point at: cautions, drawings, links and pictures that are there are met in silence, and so is what could not be read."""

from dataclasses import replace
from typing import Any

import pytest

from builder.check.links_broken import find_broken_links
from builder.model.place import Name, Place
from builder.model.studio import Studio
from builder.model.subject import WholeClass
from builder.model.teaching.lesson import (
    Block,
    CautionHere,
    DrawingHole,
    LinkHole,
    LinkTo,
    Page,
    Part,
    PictureHole,
    Prose,
    Step,
    Steps,
    Who,
)
from tests.making import told
from tests.reckon.test_guests import LOTION, STUDIO

CAUTION, DRAWING = next(iter(STUDIO.cautions)), next(iter(STUDIO.drawings.values())).name
PICTURE = next(iter(STUDIO.pictures.values()))


def pointing(block: Block, *, where: str, **studio: Any) -> Studio:
    """Return the studio of one class and one page, of which one text holds a block."""
    held = (block,)
    part = Part("Stir", Who.TEACHER, 5, held if where == "part" else ())
    lesson = replace(LOTION.lesson, introduction=held if where == "introduction" else (), parts=(part,))
    page = Page("about", "About", held if where == "page" else (), Place("pages/about.md", 1))
    one = replace(LOTION, lesson=lesson, picture=None)
    here = {"classes": {one.key: one}, "pages": {"about": page}, "pictures": {}, "other_files": frozenset(), **studio}
    return replace(STUDIO, **here)


HOLES: dict[str, tuple[Block, Block, str]] = {
    "a caution": (CautionHere(Name(CAUTION)), CautionHere(Name("no such caution")), "caution-unknown"),
    "a drawing": (Prose((DrawingHole(Name(DRAWING)),)), Prose((DrawingHole(Name("no such drawing")),)), "drawing-unknown"),
    "a page": (Prose((LinkHole(LinkTo.PAGE, Name("about")),)), Prose((LinkHole(LinkTo.PAGE, Name(LOTION.key)),)), "link-broken"),
    "a class": (Prose((LinkHole(LinkTo.CLASS, Name(LOTION.key)),)), Prose((LinkHole(LinkTo.CLASS, Name("about")),)), "link-broken"),
    "a step": (
        Steps((Step(("Go on.",)),)),
        Steps((Step((LinkHole(LinkTo.PAGE, Name("nowhere")),)),)),
        "link-broken",
    ),
}  # fmt: skip


@pytest.mark.parametrize("where", ["part", "introduction", "page"])
@pytest.mark.parametrize("what", HOLES)
def test_what_a_text_points_at_is_there(what: str, where: str) -> None:
    right, wrong, name = HOLES[what]
    assert told(find_broken_links(pointing(right, where=where))) == []
    (found,) = told(find_broken_links(pointing(wrong, where=where)))
    assert found.name == name
    assert found.about == (frozenset() if where == "page" else frozenset({WholeClass(LOTION.key)}))


@pytest.mark.parametrize(
    ("block", "unread"),
    [
        (CautionHere(Name("lost")), "cautions"),
        (Prose((LinkHole(LinkTo.PAGE, Name("lost")),)), "pages"),
        (Prose((LinkHole(LinkTo.CLASS, Name("lost")),)), "classes"),
    ],
)
def test_what_could_not_be_read_is_there(block: Block, unread: str) -> None:
    for kind in ("cautions", "pages", "classes"):
        lost = replace(STUDIO.unread, **{kind: frozenset({"lost"})})
        found = told(find_broken_links(pointing(block, where="part", unread=lost)))
        assert bool(found) is (kind != unread)


def test_a_picture_lies_beside_its_text_and_ends_as_pictures_do() -> None:
    block = Prose((PictureHole(Name("jar.png"), "a jar"),))
    for where, folder in (("part", f"classes/{LOTION.key}"), ("page", "pages")):
        path = f"{folder}/jar.png"
        assert told(find_broken_links(pointing(block, where=where, pictures={path: PICTURE}))) == []
        (none,) = told(find_broken_links(pointing(block, where=where, pictures={f"{folder}/jars.png": PICTURE, "other/jar2.png": PICTURE})))
        assert 'There is no picture "jar.png" beside this text.' in none.wrong and "jars.png" in none.remedy
        assert "jar2.png" not in none.remedy
        (other,) = told(find_broken_links(pointing(block, where=where, other_files=frozenset({path}))))
        assert 'a file whose name ends in ".png" is not taken for a picture' in other.wrong


def test_the_picture_of_a_class_is_looked_up_too() -> None:
    here = pointing(CautionHere(Name(CAUTION)), where="part")
    (one,) = here.classes.values()
    shown = replace(next(each for each in STUDIO.classes.values() if each.picture), key=one.key, lesson=one.lesson)
    assert [found.name for found in told(find_broken_links(replace(here, classes={one.key: shown})))] == ["picture-missing"]
