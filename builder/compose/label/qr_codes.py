"""The QR code of an address, as a drawing (ISO/IEC 18004: a quiet zone of four modules on each side)."""

import segno

from builder.compose.label_layout.label_pages import place
from builder.compose.views.labels import QrView
from builder.words.say import say

QUIET = 4
LEAST_SIDE, LEAST_MODULE = 16.0, 0.5


def qr_side(address: str) -> float:
    """Return the side of the code of an address with its quiet zone, in millimetres: the code itself is at least 16 mm wide."""
    modules = len(segno.make_qr(address, error="m").matrix)
    return max(LEAST_SIDE / modules, LEAST_MODULE) * (modules + 2 * QUIET)


def view_qr(address: str, x: float, y: float) -> QrView:
    """Draw the code of an address with the corner of its quiet zone there, in millimetres from the corner of the position."""
    matrix = segno.make_qr(address, error="m").matrix
    side = qr_side(address)
    dark = (
        f"M{QUIET + column} {QUIET + row}h1v1h-1z" for row, modules in enumerate(matrix) for column, module in enumerate(modules) if module
    )
    return QrView(place(x, y, side, side), len(matrix) + 2 * QUIET, "".join(dark), say("QR code of {address}", address=address))
