"""A page names each photograph in several widths, so that a phone loads a small one.

The attributes are those of the HTML standard (4.8.2, 4.8.4.2.1): `srcset` with widths, `sizes`, a `source` chosen by `media` and `type`.
The most that a page may weigh is 300 KB on a phone: the goal that the project has set itself, no standard.
"""

import io
import random
import re
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from PIL import Image, features

from builder import cli, pipeline
from builder.model.picture import PictureFile, Size
from builder.pictures import PictureError, picture_at
from builder.press.weight import MOST, parts_of
from tests.published import only_pages
from tests.test_findings import lay_out

DAY = "2027-01-01"


def leaves(width: int, height: int, kind: str = "JPEG") -> bytes:
    """Make a photograph as hard to pack as any: every point another."""
    points = random.Random(1).randbytes(width * height * 3)
    written = io.BytesIO()
    Image.frombytes("RGB", (width, height), points).save(written, kind, quality=95)
    return written.getvalue()


def cloth(width: int, height: int) -> bytes:
    """Make a photograph that is easy to pack, and has a corner that says which way is up."""
    image = Image.linear_gradient("L").resize((width, height)).convert("RGB")
    image.paste((200, 20, 20), (0, 0, width // 4, height // 4))
    written = io.BytesIO()
    image.save(written, "JPEG", quality=92)
    return written.getvalue()


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    studio = tmp_path_factory.mktemp("photos") / "studio"
    lay_out(None, studio)
    folder = studio / "classes/one-lotion"
    (folder / "bench.jpg").write_bytes(cloth(1640, 1230))
    (folder / "hedge.jpg").write_bytes(cloth(1000, 750))
    Image.new("RGBA", (700, 700), (0, 90, 0, 120)).save(folder / "leaf.png")
    with (folder / "class.yaml").open("a", encoding="utf-8") as file:
        file.write("\npicture: {file: bench.jpg, alt: The bench & its scales}\n")
    lesson = folder / "lesson.md"
    words = '![A hedge](hedge.jpg "In June")\n\n![A leaf](leaf.png)\n\n![Decorative](leaf.png)\n\n'
    lesson.write_text(words + lesson.read_text(encoding="utf-8"), encoding="utf-8")
    with only_pages():
        assert cli.main(["publish", str(studio), "--to", str(studio.parent / "out"), "--today", DAY]) == 0
    return studio.parent / "out" / "site"


def pictures_of(page: Path) -> list[Tag]:
    return BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser").find_all("picture")


@pytest.mark.long
def test_each_width_that_a_page_names_is_there_and_is_as_wide(site: Path) -> None:
    seen = 0
    for page in sorted(site.rglob("*.html")):
        for picture in pictures_of(page):
            image = picture.find("img")
            assert isinstance(image, Tag)
            ratio = int(str(image["width"])) / int(str(image["height"]))
            sources = picture.find_all("source")
            assert [source.get("type") for source in sources] == ["image/avif", "image/webp", "image/avif", "image/webp"]
            named = [part.split() for source in sources for part in str(source["srcset"]).split(", ")]
            for name, width in [*named, (str(image["src"]), "")]:
                with Image.open(page.parent / name) as file:
                    assert not width or f"{file.width}w" == width
                    assert file.format == {"avif": "AVIF", "webp": "WEBP", "png": "PNG", "jpg": "JPEG"}[name.rpartition(".")[2]]
                    assert name.endswith((".avif", ".webp")) is bool(width)
                    assert not file.getexif() and "xmp" not in file.info
                    assert abs(file.width / file.height - ratio) < 0.01
                seen += 1
            assert all(source["sizes"] for source in sources)
    assert seen > 20


@pytest.mark.long
def test_a_wide_photograph_has_three_widths_and_a_phone_is_told_of_the_small_ones(site: Path) -> None:
    first, hedge, leaf, decorative = pictures_of(site / "classes/one-lotion.html")
    widths = [re.findall(r" (\d+)w", str(source["srcset"])) for source in first.find_all("source")]
    assert widths == [["480", "960"]] * 2 + [["480", "960", "1600"]] * 2
    assert first.find_all("source")[0]["media"] == "(max-width: 43.99rem)"
    assert [re.findall(r" (\d+)w", str(source["srcset"])) for source in leaf.find_all("source")] == [["480", "700"]] * 4
    images = [picture.find("img") for picture in (first, hedge, leaf)]
    assert [image.get("loading") for image in images if isinstance(image, Tag)] == [None, "lazy", "lazy"]
    assert [image.get("title") for image in images if isinstance(image, Tag)] == [None, "In June", None]
    assert str(decorative).count('alt=""') == 1
    assert [image["alt"] for image in images if isinstance(image, Tag)] == ["The bench & its scales", "A hedge", "A leaf"]


@pytest.mark.long
def test_in_a_row_a_phone_is_told_of_the_smallest(site: Path) -> None:
    (picture,) = pictures_of(site / "gallery.html")
    assert re.findall(r" (\d+)w", str(picture.find_all("source")[0]["srcset"])) == ["480"]
    parts = parts_of("gallery.html", (site / "gallery.html").read_text(encoding="utf-8"))
    bench = "pictures/classes/one-lotion/bench--jpg--480"
    assert [kinds for kinds in parts if "bench" in kinds[0]] == [(f"{bench}.avif", f"{bench}.webp")]


@pytest.mark.long
def test_what_is_hard_to_pack_takes_no_more_than_its_width_is_worth() -> None:
    hard, easy = leaves(1200, 900), cloth(1200, 900)
    for kind in (".webp", ".avif"):
        assert len(picture_at(hard, ".jpg", 480, kind)) < 30_000
        assert len(picture_at(easy, ".jpg", 480, kind)) < 10_000
        with Image.open(io.BytesIO(picture_at(easy, ".jpg", 480, kind))) as image:
            assert image.size == (480, 360)
        assert picture_at(easy, ".jpg", 480, kind) == picture_at(easy, ".jpg", 480, kind)


def test_a_library_without_avif_publishes_nothing_and_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(features, "check", lambda _: False)
    with pytest.raises(PictureError, match="without AVIF"):
        picture_at(cloth(500, 400), ".jpg", 480, ".avif")
    assert picture_at(cloth(500, 400), ".jpg", 480, ".webp")


@pytest.mark.parametrize(("own", "widths"), [(300, (300,)), (480, (480,)), (700, (480, 700)), (960, (480, 960)), (1600, (480, 960, 1600))])
def test_no_photograph_is_made_larger_than_it_is(own: int, widths: tuple[int, ...]) -> None:
    assert PictureFile(Size(own, own), is_photograph=True).widths == widths


def test_a_drawing_says_how_large_it_is(tmp_path: Path) -> None:
    lay_out(None, tmp_path / "studio")
    drawn = {
        "boxed.svg": 'viewBox="0 0 160.4 120"',
        "sized.svg": 'width="40px" height="30"',
        "untold.svg": 'width="100%" height="10mm"',
        "odd.svg": 'viewBox="0 0 a b"',
    }
    for name, said in drawn.items():
        (tmp_path / "studio/pages" / name).write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {said}/>', encoding="utf-8")
    studio = pipeline.check(tmp_path / "studio", on=date(2027, 1, 1)).studio
    assert studio is not None
    sizes = {name: studio.pictures[f"pages/{name}"].size for name in drawn}
    assert sizes == {"boxed.svg": Size(160, 120), "sized.svg": Size(40, 30), "untold.svg": None, "odd.svg": None}


@pytest.mark.long
@pytest.mark.usefixtures("pages_alone")
def test_a_page_that_is_too_heavy_for_a_phone_is_not_published(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    studio, output = tmp_path / "studio", tmp_path / "out"
    lay_out(None, studio)
    about = studio / "pages/about.md"
    words = about.read_text(encoding="utf-8")
    for number in range(7):
        Image.effect_noise((480, 360), 90 + number).convert("RGB").save(studio / f"pages/hedge-{number}.jpg", quality=80)
        words += f"\n\n![A hedge](hedge-{number}.jpg)\n"
    about.write_text(words, encoding="utf-8")
    assert cli.main(["publish", str(studio), "--to", str(output), "--today", DAY]) != 0
    said = " ".join(capsys.readouterr().err.split())
    assert f"More than {MOST // 1000} KB would be loaded on a phone for: about.html" in said
    assert "hedge-" in said
    assert "Nothing was written" in said
    assert not output.exists()
