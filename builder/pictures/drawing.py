"""A drawing (SVG), written anew from the elements and attributes that draw, and from nothing else.

A drawing can hold programs, names of the computer's folders, and things that a reader's browser would fetch from elsewhere.
"""

import re
from xml.etree import ElementTree

from builder.model.picture import Size
from builder.pictures.picture import Picture, PictureError

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
_NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
_LENGTH = re.compile(r"(\d+(?:\.\d+)?)(?:px)?")
_ELSEWHERE = re.compile(r"url\(\s*(?!['\"]?#)|@import|image-set|\bsrc\(|javascript:|data:|expression\(|\\", re.IGNORECASE)


def clean_drawing(data: bytes) -> Picture:
    """Return what of a drawing draws. Raises PictureError where it cannot be read."""
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
    return Picture(ElementTree.tostring(root, encoding="utf-8", xml_declaration=True), _size(root), tuple(left_out))


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


def _size(root: ElementTree.Element) -> Size | None:
    """Return the size in points of a screen, of which browsers take the proportions; None where the drawing does not say."""
    box = _NUMBER.findall(root.get("viewBox", ""))
    given = [side[1] for side in map(_LENGTH.fullmatch, (root.get("width", ""), root.get("height", ""))) if side]
    sides = [round(float(side)) for side in (box[2:] if len(box) == 4 else given)]
    return Size(sides[0], sides[1]) if len(sides) == 2 and min(sides) > 0 else None
