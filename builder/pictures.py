"""The one door to pictures: the bytes of a studio's picture become those that are published, or why they cannot.

A photograph tells where and when it was taken and with what; a drawing can hold programs, names of the computer's folders, and things that
a reader's browser would fetch from elsewhere. Neither is passed on. A photograph is turned upright, made no larger than a page needs, and
written anew from its points alone. A drawing is written anew from the elements and attributes that draw, and from nothing else.
The same bytes give the same bytes.
"""

import io
import re
import warnings
from dataclasses import dataclass
from functools import lru_cache
from xml.etree import ElementTree

from PIL import Image, ImageCms, ImageOps

# The longest side in points: a page is 190 mm wide, where that is 214 points to the inch.
LONGEST = 1600
FORMATS = {".jpg": "JPEG", ".jpeg": "JPEG", ".png": "PNG", ".webp": "WEBP"}
QUALITY = {"JPEG": {"quality": 85}, "WEBP": {"quality": 85, "method": 4}, "PNG": {"compress_level": 6}}

SVG, XLINK, XML = "http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink", "http://www.w3.org/XML/1998/namespace"
# What draws (SVG 2). Left out are programs, what moves by itself, pages within the drawing, and links.
_DRAWS = frozenset(
    re.findall(
        r"\w+",
        """
        svg g defs symbol use title desc path rect circle ellipse line polyline polygon text tspan textPath linearGradient radialGradient
        stop clipPath mask pattern marker switch style filter feBlend feColorMatrix feComponentTransfer feComposite feConvolveMatrix
        feDiffuseLighting feDisplacementMap feDistantLight feDropShadow feFlood feFuncA feFuncB feFuncG feFuncR feGaussianBlur feMerge
        feMergeNode feMorphology feOffset fePointLight feSpecularLighting feSpotLight feTile feTurbulence
        """,
    )
)
# What may be left out without a word: it draws nothing.
_SILENT = frozenset({"metadata", "view"})
_ELSEWHERE = re.compile(r"url\(\s*(?!['\"]?#)|@import|image-set|\bsrc\(|javascript:|data:|expression\(|\\", re.IGNORECASE)


class PictureError(Exception):
    """A picture of which nothing can be made; `wrong` says why, in a sentence."""

    def __init__(self, wrong: str) -> None:
        """Hold the sentence."""
        super().__init__(wrong)
        self.wrong = wrong


@dataclass(frozen=True)
class Picture:
    """A picture as it is published; `left_out` names what of it draws but is not passed on, each once."""

    data: bytes
    left_out: tuple[str, ...] = ()


@lru_cache(maxsize=32)
def clean_picture(data: bytes, ending: str) -> Picture:
    """Make of a picture what is published; the ending of its name says its kind. Raises PictureError where it cannot be read."""
    kind = ending.lower()
    return _clean_drawing(data) if kind == ".svg" else Picture(_clean_photograph(data, FORMATS[kind]))


def _clean_photograph(data: bytes, kind: str) -> bytes:
    try:
        with warnings.catch_warnings():
            # A picture of a few kilobytes can unfold to gigabytes.
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            # What Pillow merely finds odd in a file that it can read is no concern of the studio.
            warnings.simplefilter("ignore", UserWarning)
            with Image.open(io.BytesIO(data), formats=sorted(set(FORMATS.values()))) as opened:
                opened.draft("RGB", (2 * LONGEST, 2 * LONGEST))
                upright = ImageOps.exif_transpose(opened)
                plain = _in_usual_colours(upright)
        plain.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS)
        if kind == "JPEG" and plain.mode != "RGB":
            plain = _on_white(plain)
        # A picture made from the points alone has nothing else to pass on.
        bare = Image.new(plain.mode, plain.size)
        bare.paste(plain)
        written = io.BytesIO()
        bare.save(written, kind, **QUALITY[kind])
        return written.getvalue()
    except (Image.DecompressionBombWarning, Image.DecompressionBombError):
        raise PictureError("This picture has more points than any page can show.") from None
    except (OSError, ValueError, SyntaxError, EOFError, OverflowError, MemoryError):
        raise PictureError("This file cannot be read as a picture: it is damaged, or of another kind than its ending says.") from None


def _in_usual_colours(image: Image.Image) -> Image.Image:
    """Give the points in the colours that every screen takes for granted (sRGB), with transparency where there is any."""
    mode = "RGBA" if image.has_transparency_data else "RGB"
    profile = image.info.get("icc_profile")
    if profile and image.mode in ("RGB", "RGBA", "CMYK", "L"):
        try:
            given = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            made = ImageCms.profileToProfile(image, given, ImageCms.createProfile("sRGB"), outputMode=mode)
        except (ImageCms.PyCMSError, OSError, ValueError):
            made = None
        if made is not None:
            return made
    return image.convert(mode)


def _on_white(image: Image.Image) -> Image.Image:
    ground = Image.new("RGB", image.size, "white")
    ground.paste(image, mask=image.getchannel("A") if "A" in image.getbands() else None)
    return ground


def _clean_drawing(data: bytes) -> Picture:
    if b"<!ENTITY" in data or b"\0" in data:
        raise PictureError("This drawing is not in UTF-8, or it defines words of its own (<!ENTITY), which can unfold to anything.")
    try:
        root = ElementTree.fromstring(data)
    except (ElementTree.ParseError, ValueError, LookupError):
        raise PictureError("This file cannot be read as a drawing (SVG).") from None
    if root.tag != f"{{{SVG}}}svg":
        raise PictureError("This file is no drawing: an SVG file begins with an element `svg` of its namespace.")
    left_out: dict[str, None] = {}
    _keep_what_draws(root, left_out)
    ElementTree.register_namespace("", SVG)
    ElementTree.register_namespace("xlink", XLINK)
    return Picture(ElementTree.tostring(root, encoding="utf-8", xml_declaration=True), tuple(left_out))


def _keep_what_draws(element: ElementTree.Element, left_out: dict[str, None]) -> None:
    for name in list(element.attrib):
        _judge_attribute(element, name, left_out)
    for child in list(element):
        namespace, _, name = str(child.tag).removeprefix("{").rpartition("}")
        if (namespace, name) == (SVG, "a"):
            # What is drawn within a link is drawn without it.
            child.tag, name = f"{{{SVG}}}g", "g"
        if namespace == SVG and name in _DRAWS and not (name == "style" and _ELSEWHERE.search("".join(child.itertext()))):
            _keep_what_draws(child, left_out)
            continue
        if namespace == SVG and name not in _SILENT:
            left_out[f"<{name}>"] = None
        _remove(element, child)


def _judge_attribute(element: ElementTree.Element, name: str, left_out: dict[str, None]) -> None:
    """Take an attribute away that does something, leads elsewhere, or is a note of the program that drew."""
    value = element.attrib[name]
    namespace, _, local = name.removeprefix("{").rpartition("}")
    inward = local != "href" or value.strip().startswith("#")
    is_ours = namespace in ("", XLINK) or (namespace == XML and local in ("lang", "space"))
    if is_ours and inward and not local.casefold().startswith("on") and not _ELSEWHERE.search(value):
        return
    if is_ours:
        left_out[f"{local}=" if inward else "links to elsewhere"] = None
    del element.attrib[name]


def _remove(element: ElementTree.Element, child: ElementTree.Element) -> None:
    """Take a child away and keep the text behind it."""
    if child.tail and child.tail.strip():
        before = list(element)[: list(element).index(child)]
        if before:
            before[-1].tail = (before[-1].tail or "") + child.tail
        else:
            element.text = (element.text or "") + child.tail
    element.remove(child)
