"""The picture that stands for a page where somebody passes it on.

What is asked for is the Open Graph protocol (ogp.me): whole addresses, `og:image:alt`, width and height. 1200 by 630 points is common
practice, no source.
"""

import io
from dataclasses import replace
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet
from bs4 import BeautifulSoup
from PIL import Image

from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.fonts.files import font_file
from builder.library import LAYOUTS
from builder.model.document import Publication
from builder.model.sharing import Shape, SharingPicture
from builder.pictures.sharing import draw_sharing
from tests.compose.conftest import FILES, TODAY, read_edition, write_studio
from tests.compose.test_machines import PLACE

FONTS = (font_file("Fira Sans", "Regular"), font_file("Fira Sans", "Bold"))
LEFT_OF_THE_MARK = 1200 - 64 - 400
SQUARE = Shape(((0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)), "#ff0000")


@pytest.fixture(scope="module")
def placed(tmp_path_factory: pytest.TempPathFactory) -> Publication:
    text = FILES["studio.yaml"].replace("region: US\n", PLACE)
    edition = read_edition(write_studio(tmp_path_factory.mktemp("studio"), studio_yaml=text))
    return compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))


def meta(publication: Publication, path: str) -> dict[str, str]:
    html = next(one.html for one in publication.documents if one.path == path)
    found = BeautifulSoup(html, "html.parser").find_all("meta", property=True)
    return {str(one["property"]): str(one["content"]) for one in found}


def drawn(picture: SharingPicture) -> Image.Image:
    return Image.open(io.BytesIO(draw_sharing(picture, *FONTS))).convert("RGB")


def test_each_page_names_a_picture_that_is_made(placed: Publication) -> None:
    made = {one.path for one in placed.drawn}
    assert made == {"sharing.png", "classes/first--sharing.png"}
    for document in placed.documents:
        if document.folder == "site" and document.path.endswith(".html") and "take-home" not in document.path:
            said = meta(placed, document.path)
            assert said["og:image"].removeprefix("https://test.example/soap/") in made, document.path
            assert said["og:image:alt"]
    first = meta(placed, "classes/first.html")
    assert first["og:image"] == "https://test.example/soap/classes/first--sharing.png"
    assert first["og:image:alt"] == "The first class, beside a flower drawn from the recipe"


@pytest.mark.long
def test_without_a_public_address_there_is_none(edition: Edition) -> None:
    publication = compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), TODAY))
    assert publication.drawn == ()
    assert "og:image" not in meta(publication, "index.html")


def test_it_is_of_the_usual_size_and_the_same_each_time(placed: Publication) -> None:
    for picture in placed.drawn:
        data = draw_sharing(picture, *FONTS)
        with Image.open(io.BytesIO(data)) as image:
            assert (image.format, image.size) == ("PNG", (1200, 630))
        assert len(data) < 100_000
        assert draw_sharing(picture, *FONTS) == data


def with_long(title: str) -> ParameterSet:
    return pytest.param(title, marks=pytest.mark.long)


OTHER_TITLES = ("W" * 300, "x " * 200, "-")


@pytest.mark.parametrize(
    "title",
    [
        "Soap",
        "A rather long name of a class in which very much is made by very many people on one single day",
        *map(with_long, OTHER_TITLES),
    ],
)
def test_whatever_the_title_is_it_stays_beside_the_mark_and_above_the_sign(title: str) -> None:
    with_title = drawn(SharingPicture("a.png", "Studio", "", title, (SQUARE,)))
    bare = drawn(SharingPicture("a.png", "", "", ".", (SQUARE,)))
    for x in range(LEFT_OF_THE_MARK + 8, 1200, 16):
        for y in range(0, 630, 16):
            assert with_title.getpixel((x, y)) == bare.getpixel((x, y)), (x, y)
    assert all(with_title.getpixel((x, y)) == bare.getpixel((x, y)) for x in range(0, 1200, 16) for y in range(548, 630, 4))
    left = with_title.crop((0, 0, LEFT_OF_THE_MARK, 540)).getcolors(1 << 20)
    assert left and len(left) > 4, "there is writing"


@pytest.mark.long
def test_letters_that_our_fonts_lack_are_not_drawn(tmp_path: Path) -> None:
    text = FILES["studio.yaml"].replace("region: US\n", PLACE)
    lesson_of = FILES["classes/first/class.yaml"].replace("title: The first class", "title: סבון")
    edition = read_edition(write_studio(tmp_path, studio_yaml=text, classes__first__class_yaml=lesson_of))
    letters = frozenset(map(ord, " ')(-.,abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"))
    publication = compose_documents(*editions(replace(edition.studio, letters=letters), edition.plans, (), (LAYOUTS,), TODAY))
    assert [one.path for one in publication.drawn] == ["sharing.png"]
    assert meta(publication, "classes/first.html")["og:image"] == "https://test.example/soap/sharing.png", "the studio's own stands for it"
