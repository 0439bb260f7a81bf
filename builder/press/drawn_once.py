"""A drawing that stands on a sheet many times is drawn into it once, and shown from there.

The library draws an SVG anew wherever it stands: a border around a box some fifty times for each box, the front of a label on each label.
This puts a drawing of one size into the PDF as a form the first time, and has it shown again after that, whether it is a file or stands in
the HTML each time. It takes the place of `SVGImage.draw`, which is not among the library's public names, as its tree and `add_group` and
`draw_x_object` of its streams are not; `tests/press/test_drawn_once.py` tells when they change.

Decided: a drawing is put into a PDF once as a form, in place of the library's `SVGImage.draw`. Why: a border was drawn fifty times for
each box; a test tells when the library's names change.
"""

from typing import Any
from xml.etree import ElementTree


def draw_once() -> None:
    """Let every SVG of one size be drawn once for each PDF. Calling it again changes nothing."""
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
