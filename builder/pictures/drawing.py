"""A drawing (SVG), written anew from the elements and attributes that draw, and from nothing else.

A drawing can hold programs, names of the computer's folders, and things that a reader's browser would fetch from elsewhere.
"""

import re
from collections.abc import Mapping
from math import isfinite
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
# More shapes than anybody draws, and elements within one another: of one shape that stands for ten others, each of which stands for ten
# more, and so on, there are soon more than any machine can draw. The PDF engine takes 0.1 to 0.2 ms for a shape and 0.01 ms for a point of
# its outline, so that a sheet with a drawing of so many shapes takes four seconds.
_MOST_SHAPES, _POINTS_OF_A_SHAPE, _DEEPEST, _MOST_BYTES = 20_000, 10, 100, 5_000_000


def clean_drawing(data: bytes) -> Picture:
    """Return what of a drawing draws. Raises PictureError where it cannot be read."""
    if len(data) > _MOST_BYTES:
        raise PictureError("This drawing is larger than 5 MB, far more than a page can show.")
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
    if _shapes_in(root, {one.get("id"): one for one in root.iter() if one.get("id")}, {}) > _MOST_SHAPES:
        points = _MOST_SHAPES * _POINTS_OF_A_SHAPE
        raise PictureError(f"This drawing has more than {_MOST_SHAPES:,} shapes or {points:,} points, more than a page can show.")
    ElementTree.register_namespace("", SVG)
    ElementTree.register_namespace("xlink", XLINK)
    return Picture(ElementTree.tostring(root, encoding="utf-8", xml_declaration=True), _size(root), tuple(left_out))


def _keep_what_draws(element: ElementTree.Element, left_out: dict[str, None], depth: int = 0) -> None:
    _see_depth(depth)
    for name in list(element.attrib):
        _judge_attribute(element, name, left_out)
    for child in list(element):
        namespace, _, name = str(child.tag).removeprefix("{").rpartition("}")
        if (namespace, name) == (SVG, "a"):
            # What is drawn within a link is drawn without it.
            child.tag, name = f"{{{SVG}}}g", "g"
        if namespace == SVG and name in _DRAWS and not (name == "style" and _ELSEWHERE.search("".join(child.itertext()))):
            _keep_what_draws(child, left_out, depth + 1)
            continue
        if namespace == SVG and name not in _SILENT:
            left_out[f"<{name}>"] = None
        _remove(element, child)


def _shapes_in(
    element: ElementTree.Element, named: Mapping[str | None, ElementTree.Element], known: dict[ElementTree.Element, int], depth: int = 0
) -> int:
    """Count what an element draws, with what it stands for; what stands for itself draws nothing more. Many points are more shapes."""
    _see_depth(depth)
    if element not in known:
        known[element] = 0
        meant = named.get((element.get("href") or element.get(f"{{{XLINK}}}href") or "").removeprefix("#"))
        drawn = (*element, *([] if meant is None else [meant]))
        points = len(_NUMBER.findall(element.get("d") or element.get("points") or "")) // 2
        known[element] = 1 + points // _POINTS_OF_A_SHAPE + sum(_shapes_in(one, named, known, depth + 1) for one in drawn)
    return known[element]


def _see_depth(depth: int) -> None:
    if depth > _DEEPEST:
        raise PictureError(f"In this drawing more than {_DEEPEST} groups stand within one another.")


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
    sides = [round(number) for side in (box[2:] if len(box) == 4 else given) if isfinite(number := float(side))]
    return Size(sides[0], sides[1]) if len(sides) == 2 and min(sides) > 0 else None
