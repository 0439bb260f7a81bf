"""The names of the PDF library that are not public and that this stage rests on.

They are five: `_page_box`, the boxes of a page as they were laid out, its text before its margins; `mark`, what a cell has become in the
tags of the PDF; `_build_box_tree`, what makes the tags of a box; `split_first_line`, what breaks a text into lines; and `SVGImage.draw`,
with its tree and `add_group` and `draw_x_object` of its streams. No other module writes them; `tests/press/test_private_names.py` and
`test_drawn_once.py` tell when a version of the library has them otherwise.

Decided: a text that fits a line but for the space at its end is kept whole, in place of the library's own break. Why: where a number in
bold did not fit after it, the library left the first word of such a text on a line by itself.

Decided: how a text breaks in one style and width is remembered. Why: of three texts two have been broken before, for another size of the
sheet or on another sheet, and shaping them is a sixth of all laying out.

Decided: a drawing of one size is put into a PDF as a form the first time, and shown again from there, whether it is a file or stands in
the HTML each time. Why: the library draws an SVG anew wherever it stands: a border some fifty times for each box, the front of a label on
each label.
"""

from collections.abc import Callable, Iterator
from copy import copy
from typing import Any
from weakref import WeakKeyDictionary
from xml.etree import ElementTree

# What the library's break of a line gives: the layout of the text first, where it goes on third.
LAYOUT, GOES_ON = 0, 2
# What it reads of a style, but for `white_space`.
TEXT_STYLE = (
    "direction",
    "font_family",
    "font_feature_settings",
    "font_kerning",
    "font_language_override",
    "font_size",
    "font_stretch",
    "font_style",
    "font_variant_alternates",
    "font_variant_caps",
    "font_variant_east_asian",
    "font_variant_ligatures",
    "font_variant_numeric",
    "font_variant_position",
    "font_variation_settings",
    "font_weight",
    "hyphenate_character",
    "hyphenate_limit_chars",
    "hyphenate_limit_zone",
    "hyphens",
    "lang",
    "letter_spacing",
    "overflow_wrap",
    "tab_size",
    "text_decoration_line",
    "word_break",
    "word_spacing",
)
# So many broken texts are remembered, some 10 MB.
LINES_KEPT = 20_000
Split = Callable[..., Any]


def boxes_of(page: Any, *, placeholders: bool = False) -> Iterator[Any]:
    """Yield all boxes of a page that has been laid out; with placeholders also the ones that are placed by themselves."""
    yield from page._page_box.descendants(placeholders=placeholders)


def room_below(page: Any) -> float:
    """Return which share of a page's height is empty beneath its text. What goes on on the next page is as high as the rest of this one."""
    whole = page._page_box
    if not whole.height:
        return 0.0
    begin = whole.content_box_y()
    within = whole.children[0].descendants()
    end = max((box.position_y + box.margin_height() for box in within if not getattr(box, "children", ())), default=begin)
    return float(1 - (end - begin) / whole.height)


def set_scope(box: Any, scope: str) -> None:
    """Mark in the tags whether a header cell heads its row or its column; a box that is in no tag has nothing to say it in."""
    mark = getattr(box, "mark", None)
    if mark is not None:
        mark["A"]["Scope"] = f"/{scope}"


def note_what_tags_are_made_of() -> None:
    """Note on each element of the tags of which element of the HTML it was made (`made_of`). Calling it again changes nothing."""
    from weasyprint.pdf import tags

    build = tags._build_box_tree
    if getattr(build, "notes", False):
        return

    def build_box_tree(box: Any, *others: Any) -> Iterator[Any]:
        for made in build(box, *others):
            if not hasattr(made, "made_of"):
                # What is placed by itself stands in for its box.
                made.made_of = getattr(box, "_box", box).element
            yield made

    build_box_tree.notes = True  # type: ignore[attr-defined]
    tags._build_box_tree = build_box_tree


def made_of(tagged: Any) -> Any:
    """Return the element of the HTML that an element of the tags was made of; None where it was made of none, such as a text in it."""
    return getattr(tagged, "made_of", None)


def break_lines() -> None:
    """Break lines as this stage wants them, each text of a style and a width once. Calling it again changes nothing."""
    from weasyprint.layout import inline, preferred

    split = inline.split_first_line
    if getattr(split, "is_ours", False):
        return
    inline.split_first_line = remembering(keeping_lines_whole(split))
    preferred.split_first_line = remembering(split)


def keeping_lines_whole(split: Split) -> Split:
    """Break no line because the space after its text is too much, which leaves a word alone."""

    def split_first_line(text: str, style: Any, context: Any, width: float | None, *others: Any, **named: Any) -> Any:
        found = split(text, style, context, width, *others, **named)
        one_word = found[GOES_ON] is not None and " " not in text.encode()[: found[GOES_ON]].decode().strip()
        if not (one_word and width is not None and text.endswith(" ")):
            return found
        fits = split(text.rstrip(" "), style, context, width, *others, **named)[GOES_ON] is None
        return split(text, style, context, None, *others, **named) if fits else found

    return split_first_line


def remembering(split: Split) -> Split:
    """Remember how each text was broken, for as long as the fonts last that it is set in."""
    known: WeakKeyDictionary[Any, dict[Any, Any]] = WeakKeyDictionary()

    def split_first_line(text: str, style: Any, context: Any, width: float | None, *others: Any, **named: Any) -> Any:
        lines = known.setdefault(style.font_config, {})
        key = (text, _text_style(style), style["white_space"], width, others, *named.items())
        found = lines.get(key)
        if found is None:
            if len(lines) >= LINES_KEPT:
                lines.clear()
            found = lines[key] = split(text, style, context, width, *others, **named)
        # Who draws a line writes on its layout.
        return (copy(found[LAYOUT]), *found[LAYOUT + 1 :])

    split_first_line.is_ours = True  # type: ignore[attr-defined]
    return split_first_line


def _text_style(style: Any) -> str:
    """Return what breaking a line reads of a style, which no layout changes but for `white_space`."""
    noted = vars(style)
    if "text_style" not in noted:
        noted["text_style"] = str([style[name] for name in TEXT_STYLE])
    return str(noted["text_style"])


def draw_once() -> None:
    """Draw every SVG of one size once for each PDF. Calling it again changes nothing."""
    from weasyprint.images import SVGImage

    anew = SVGImage.draw
    if getattr(anew, "shows_again", False):
        return

    def draw(self: Any, stream: Any, width: float, height: float, style: Any) -> None:
        forms = vars(stream._resources).setdefault("forms_shown_again", {})
        key = (ElementTree.tostring(self._svg.tree._etree_node), width, height)
        if key not in forms:
            form = stream.add_group(0, 0, width, height)
            # A plain form: as a group of transparency of its own it would have to be flattened for some printers.
            del form.extra["Group"]
            anew(self, form, width, height, style)
            forms[key] = form.id
        stream.draw_x_object(forms[key])

    draw.shows_again = True  # type: ignore[attr-defined]
    SVGImage.draw = draw
