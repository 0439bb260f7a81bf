"""What is published of a picture: upright, no larger than needed, and without a word of where, when and with what it was made.

The tags are those of Exif 2.3 (CIPA DC-008), from memory: 0x0112 orientation (6: "the 0th row is the visual right-hand side of the image,
and the 0th column is the visual top"), 0x010F maker, 0x8825 the place. What an SVG may do beside drawing is chapter 15 (scripting) and 16
(linking) of SVG 2.
"""

import io
import re
import shutil
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from PIL import Image, ImageCms, PngImagePlugin

from builder import cli, pipeline
from builder.pictures import LONGEST, PictureError, clean_picture
from tests.published import named, sheets_pressed
from tests.test_findings import FINDINGS, lay_out

MAKER, MODEL, WHEN = "Telltale Works", "Pocket 9", "2027:01:02 03:04:05"
RED, BLUE = (255, 0, 0), (0, 0, 255)


def photograph(size: tuple[int, int] = (400, 300), kind: str = "JPEG", **more: Any) -> bytes:
    """Make a photograph that lies on its side: red where the top of the scene is, at the column of points on the left."""
    image = Image.new("RGB", size, BLUE)
    image.paste(RED, (0, 0, size[0] // 2, size[1]))
    exif = Image.Exif()
    exif[0x0112], exif[0x010F], exif[0x0110], exif[0x0132] = 6, MAKER, MODEL, WHEN
    exif.get_ifd(0x8825).update({1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 18.0)})
    written = io.BytesIO()
    image.save(written, kind, exif=exif, **more)
    return written.getvalue()


def is_near(point: Any, colour: tuple[int, int, int]) -> bool:
    return all(abs(one - other) < 12 for one, other in zip(point[:3], colour, strict=True))


@pytest.mark.parametrize(("kind", "ending"), [("JPEG", ".jpg"), ("JPEG", ".jpeg"), ("WEBP", ".webp"), ("PNG", ".png")])
def test_a_photograph_stands_upright_and_tells_nothing(kind: str, ending: str) -> None:
    before = photograph(kind=kind)
    assert Image.open(io.BytesIO(before)).getexif().get_ifd(0x8825)
    assert MAKER.encode() in before
    after = clean_picture(before, ending).data
    with Image.open(io.BytesIO(after)) as image:
        assert image.format == kind
        assert image.size == (300, 400)
        assert is_near(image.convert("RGB").getpixel((150, 20)), RED)
        assert is_near(image.convert("RGB").getpixel((150, 380)), BLUE)
        assert not dict(image.getexif())
        assert not image.getexif().get_ifd(0x8825)
        assert not {"exif", "icc_profile", "comment", "xmp", "photoshop"} & set(image.info)
    for told in (b"Exif", MAKER.encode(), MODEL.encode(), WHEN.encode()):
        assert told not in after


def test_the_same_picture_gives_the_same_bytes() -> None:
    before = photograph()
    first = clean_picture(before, ".jpg").data
    clean_picture.cache_clear()
    assert clean_picture(before, ".jpg").data == first


def test_a_large_photograph_becomes_as_large_as_a_page_needs() -> None:
    with Image.open(io.BytesIO(clean_picture(photograph((5000, 1000)), ".jpg").data)) as image:
        assert image.size == (LONGEST // 5, LONGEST)


def test_words_in_a_png_and_a_comment_in_a_jpeg_are_left_out() -> None:
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", "A. Person, 5 Home Street")
    words.add_itxt("XML:com.adobe.xmp", "<x>5 Home Street</x>")
    written = io.BytesIO()
    Image.new("RGBA", (10, 10), (0, 255, 0, 0)).save(written, "PNG", pnginfo=words)
    assert b"Home Street" in written.getvalue()
    cleaned = clean_picture(written.getvalue(), ".png").data
    assert b"Home Street" not in cleaned
    assert Image.open(io.BytesIO(cleaned)).getchannel("A").getpixel((0, 0)) == 0, "what is transparent stays so"
    jpeg = photograph(comment=b"5 Home Street")
    assert b"Home Street" in jpeg
    assert b"Home Street" not in clean_picture(jpeg, ".jpg").data


@pytest.mark.parametrize("mode", ["L", "LA", "P", "1", "CMYK", "I;16"])
def test_every_usual_kind_of_points_can_be_read(mode: str) -> None:
    kind, ending = ("JPEG", ".jpg") if mode == "CMYK" else ("PNG", ".png")
    written = io.BytesIO()
    whites: dict[str, float | tuple[float, ...]] = {"LA": (255, 255), "CMYK": (0, 0, 0, 0), "I;16": 65535, "1": 1}
    Image.new(mode, (20, 10), whites.get(mode, 255)).save(written, kind, **({"icc_profile": icc()} if mode == "L" else {}))
    with Image.open(io.BytesIO(clean_picture(written.getvalue(), ending).data)) as image:
        assert image.size == (20, 10)
        assert mode == "P" or is_near(image.convert("RGB").getpixel((5, 5)), (255, 255, 255))


def icc() -> bytes:
    return ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


@pytest.mark.parametrize("data", [b"", b"no picture at all", photograph()[:200], b"\x89PNG\r\n\x1a\n" + b"\0" * 40])
@pytest.mark.parametrize("ending", [".jpg", ".png", ".webp", ".svg"])
def test_what_is_no_picture_is_told(data: bytes, ending: str) -> None:
    with pytest.raises(PictureError, match=r"\.$"):
        clean_picture(data, ending)


def drawing(inside: str, attributes: str = "") -> bytes:
    return (
        '<?xml version="1.0"?><?xml-stylesheet href="http://far.example/s.css"?>'
        '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://far.example/svg.dtd">'
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
        'xmlns:ink="http://far.example/ink" viewBox="0 0 9 9" ink:export="/home/a.person/secret.png" '
        f"{attributes}><!-- A. Person --><metadata>A. Person</metadata>{inside}"
        '<rect id="box" width="5" height="5" fill="url(#shade)"/></svg>'
    ).encode()


@pytest.mark.parametrize(
    ("inside", "attributes", "told"),
    [
        ("<script>steal()</script>", "", "<script>"),
        ("<script xlink:href='http://far.example/x.js'/>", "", "<script>"),
        ("", 'onload="steal()"', "onload="),
        ("<g onclick='steal()' ONMOUSEOVER='steal()'/>", "", "onclick="),
        ("<image xlink:href='http://far.example/spy.png'/>", "", "<image>"),
        ("<image href='data:image/png;base64,AAAA'/>", "", "<image>"),
        ("<use href='http://far.example/a.svg#b'/>", "", "links to elsewhere"),
        ("<use xlink:href='data:image/svg+xml,steal'/>", "", "links to elsewhere"),
        ("<a href='javascript:steal()'><path d='M0 0'/></a>", "", "links to elsewhere"),
        ("<foreignObject><p xmlns='http://www.w3.org/1999/xhtml'>steal</p></foreignObject>", "", "<foreignObject>"),
        ("<set attributeName='onload' to='steal()'/>", "", "<set>"),
        ("<animate attributeName='href' to='javascript:steal()'/>", "", "<animate>"),
        ("<style>@import 'http://far.example/s.css';</style>", "", "<style>"),
        ("<style>rect { fill: url( 'http://far.example/p' ) }</style>", "", "<style>"),
        ("<path style='background:url(http://far.example/p)' d='M0 0'/>", "", "style="),
        ("<path fill='url(http://far.example/p#x)' d='M0 0'/>", "", "fill="),
        ("", 'xml:base="http://far.example/"', ""),
    ],
)
def test_a_drawing_draws_and_does_nothing_else(inside: str, attributes: str, told: str) -> None:
    picture = clean_picture(drawing(inside, attributes), ".svg")
    text = picture.data.decode()
    assert not re.search(r"far\.example|steal|javascript|script|data:|person|Person|/home/", text, re.IGNORECASE)
    assert not re.search(r"\son\w+=", text, re.IGNORECASE)
    assert set(picture.left_out) == {told} - {""} | ({"ONMOUSEOVER="} if "ONMOUSEOVER" in inside else set())
    box = ElementTree.fromstring(text).find("{http://www.w3.org/2000/svg}rect")
    assert box is not None
    assert box.attrib == {"id": "box", "width": "5", "height": "5", "fill": "url(#shade)"}
    if "<a " in inside:
        assert "<path" in text
    assert clean_picture(picture.data, ".svg").data == picture.data


def test_a_drawing_that_unfolds_is_not_read() -> None:
    with pytest.raises(PictureError, match="ENTITY"):
        clean_picture(b'<!DOCTYPE svg [<!ENTITY a "aaaa">]><svg xmlns="http://www.w3.org/2000/svg">&a;</svg>', ".svg")


def plain_drawing(inside: str, box: str = "0 0 9 9") -> bytes:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}">{inside}</svg>'.encode()


STANDS_FOR_TEN = "".join(f'<g id="a{n}">{f"""<use href="#a{n + 1}"/>""" * 10}</g>' for n in range(12)) + '<use id="a12" href="#a0"/>'


@pytest.mark.parametrize(
    ("inside", "told"),
    [
        ("<g>" * 3_000 + "</g>" * 3_000, "more than 100 groups"),
        ("".join(f'<use id="a{n}" href="#a{n + 1}"/>' for n in range(3_000)), "more than 100 groups"),
        (STANDS_FOR_TEN, "more than 20,000 shapes"),
        (f'<path d="M0 0{"l1.5-.5" * 210_000}"/>', "or 200,000 points"),
        (f'<defs><polygon id="a" points="{"1,2 " * 110_000}"/></defs><use href="#a"/>', "or 200,000 points"),
        ("<g/>" * 2_000_000, "larger than 5 MB"),
    ],
    ids=["groups in groups", "one for the other", "one for ten", "a long path", "a long path twice", "large"],
)
def test_a_drawing_that_nothing_could_draw_is_told(inside: str, told: str) -> None:
    with pytest.raises(PictureError) as error:
        clean_picture(plain_drawing(inside), ".svg")
    assert told in error.value.wrong


def test_a_drawing_of_many_points_and_shapes_is_read() -> None:
    assert clean_picture(plain_drawing(f'<path d="M0 0{"l1.5-.5" * 90_000}"/>' + '<path d="M0 0h5"/>' * 9_000), ".svg").left_out == ()


@pytest.mark.parametrize("inside", ['<g id="a"><use href="#a"/></g>', '<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'])
def test_a_shape_that_stands_for_itself_draws_nothing_more(inside: str) -> None:
    assert clean_picture(plain_drawing(inside), ".svg").left_out == ()


def test_a_drawing_of_no_size_that_there_is_says_none() -> None:
    assert clean_picture(plain_drawing("<g/>", f"0 0 {'9' * 400} 9"), ".svg").size is None


@pytest.mark.long(sample=True)
def test_what_is_published_of_a_studio_tells_nothing(tmp_path: Path) -> None:
    """Pages, sheets and the pictures beside them: none holds the photograph as it came from the camera."""
    studio, output = tmp_path / "studio", tmp_path / "out"
    lay_out(None, studio)
    shutil.rmtree(studio / "classes/one-bar")
    (studio / "classes/one-lotion/bench.jpg").write_bytes(photograph((800, 600)))
    (studio / "classes/one-lotion/drawn.svg").write_bytes(drawing("<script>steal()</script>"))
    lesson = studio / "classes/one-lotion/lesson.md"
    pictures = "\n\n![The bench](bench.jpg)\n\n![Drawn](drawn.svg)\n"
    lesson.write_text(lesson.read_text(encoding="utf-8") + pictures, encoding="utf-8")
    about = studio / "classes/one-lotion/class.yaml"
    about.write_text(about.read_text(encoding="utf-8") + "\npicture: {file: bench.jpg, alt: The bench}\n", encoding="utf-8")
    found = [finding.name for finding in pipeline.check(studio, on=date(2027, 1, 1)).findings]
    assert found == ["picture-in-part"]
    with sheets_pressed(named("teacher.pdf")):
        assert cli.main(["publish", str(studio), "--to", str(output), "--today", "2027-01-01"]) == 0
    files = [path for path in output.rglob("*") if path.is_file()]
    shown = [path for path in files if path.name.startswith("bench--jpg--")]
    assert {(path.relative_to(output).parts[0], path.name.removeprefix("bench--jpg--")) for path in shown} == {
        (root, name) for root in ("site", "print") for name in ("480.avif", "600.avif", "480.webp", "600.webp", "600.jpg")
    }
    for path in shown:
        with Image.open(path) as image:
            assert image.width == int(re.findall(r"[0-9]+", path.name)[-1])
            assert abs(image.height / image.width - 800 / 600) < 0.01
            assert is_near(image.convert("RGB").getpixel((image.width // 2, 50)), RED)
            assert not dict(image.getexif())
            assert not {"exif", "icc_profile", "comment", "xmp", "photoshop"} & set(image.info)
    for path in files:
        data = path.read_bytes()
        for told in (MAKER.encode(), MODEL.encode(), b"GPS", b"steal()"):
            assert told not in data, f"{path.relative_to(output)} tells {told!r}"
    sheet = next(output.glob("print/one-lotion/*/teacher.pdf")).read_bytes()
    assert b"/DCTDecode" in sheet, "the sheet shows the photograph"
    assert not re.search(rb"Exif\0\0", sheet)


@pytest.mark.parametrize("case", ["picture-unreadable", "picture-in-part"])
def test_findings_on_pictures_name_the_file(case: str, tmp_path: Path) -> None:
    lay_out(FINDINGS / case, tmp_path / "studio")
    (finding,) = pipeline.check(tmp_path / "studio", on=date(2027, 1, 1)).findings
    assert Path(finding.place.file).suffix in (".svg", ".jpg")
