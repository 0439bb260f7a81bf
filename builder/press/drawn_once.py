"""A drawing that stands on a sheet many times is drawn into it once, and shown from there.

The library draws an SVG anew wherever it stands, and a border around a box some fifty times for each box. This puts a drawing of one
size into the PDF as a form the first time, and has it shown again after that. It takes the place of `SVGImage.draw`, which is not among the
library's public names, as `add_group` and `draw_x_object` of its streams are not; `tests/press/test_drawn_once.py` tells when they change.

Decided: a drawing is put into a PDF once as a form, in place of the library's `SVGImage.draw`. Why: a border was drawn fifty times for
each box; a test tells when the library's names change.
"""

from typing import Any


def draw_once() -> None:
    """Let every SVG of one size be drawn once for each PDF. Calling it again changes nothing."""
    from weasyprint.images import SVGImage

    anew = SVGImage.draw
    if getattr(anew, "shows_again", False):
        return

    def draw(self: Any, stream: Any, width: float, height: float, style: Any) -> None:
        forms = self.__dict__.setdefault("_forms", {})
        key = (id(stream._resources), width, height)
        if key not in forms:
            form = stream.add_group(0, 0, width, height)
            # A plain form: as a group of transparency of its own it would have to be flattened for some printers.
            del form.extra["Group"]
            anew(self, form, width, height, style)
            # The resources are kept with it, so that no others can come to have their place in memory.
            forms[key] = (form.id, stream._resources)
        stream.draw_x_object(forms[key][0])

    draw.shows_again = True  # type: ignore[attr-defined]
    SVGImage.draw = draw
