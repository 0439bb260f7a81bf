"""A woven cloth from a recipe: stripes as broad as the shares, there and back again, across and along. Lengths in millimetres."""

from collections.abc import Iterator

from builder.compose.ornament.portrait import Portrait
from builder.compose.ornament.svg import WHITE, mm
from builder.compose.ornament.tints import paler, tint_of

# The length after which the cloth begins anew, the narrowest stripe, how many ingredients have one, how much of the length stays bare.
SETT, NARROW, MOST, BARE = 21.0, 0.5, 5, 0.46
CLOTH, STRIPE, CROSSING = 0.82, 0.45, 0.0  # How much paler than the accent the ground is, a stripe, and where two cross.

Stripe = tuple[float, float]


def cloth(portrait: Portrait, x: float, y: float, width: float, height: float) -> str:
    """Weave a rectangle: a pale ground, the stripes down and across it, darker where they cross; from its middle out."""
    tint = tint_of(portrait)
    down, over = (list(_stripes(portrait, long)) for long in (width, height))
    columns = "".join(f"M{mm(x + at)} {mm(y)}h{mm(wide)}v{mm(height)}h-{mm(wide)}z" for at, wide in down)
    rows = "".join(f"M{mm(x)} {mm(y + at)}h{mm(width)}v{mm(wide)}h-{mm(width)}z" for at, wide in over)
    both = "".join(f"M{mm(x + left)} {mm(y + top)}h{mm(wide)}v{mm(high)}h-{mm(wide)}z" for left, wide in down for top, high in over)
    ground = f"M{mm(x)} {mm(y)}h{mm(width)}v{mm(height)}h-{mm(width)}z"
    layers = ((ground, CLOTH), (columns + rows, STRIPE), (both, CROSSING))
    return "".join(f'<path d="{path}" fill="{paler(tint, pale)}"/>' for path, pale in layers if path)


def disc(x: float, y: float, radius: float) -> str:
    """Draw the white patch on which the mark lies."""
    return f'<circle cx="{mm(x)}" cy="{mm(y)}" r="{mm(radius)}" fill="{WHITE}"/>'


def _stripes(portrait: Portrait, long: float) -> Iterator[Stripe]:
    """Yield where each stripe begins and how wide it is: the broadest in the middle, then narrower ones to both sides, again and again."""
    shares = [float(part.share) ** 0.5 for part in portrait.parts[:MOST]]
    free = SETT * (1 - BARE) - NARROW * len(shares)
    widths = [NARROW + free * share / sum(shares) for share in shares]
    # A stripe of the middle, and each other one on both sides of it at half its width.
    ordered = [(0.0, widths[0])]
    gap, at = SETT * BARE / (2 * len(widths)), widths[0] / 2
    for wide in widths[1:]:
        at += gap
        ordered += [(at + wide / 4, wide / 2), (-at - wide / 4, wide / 2)]
        at += wide / 2
    count = int(long / SETT / 2) + 1
    for again in range(-count, count + 1):
        for middle, wide in ordered:
            left, right = (max(0.0, min(long, long / 2 + again * SETT + middle + half)) for half in (-wide / 2, wide / 2))
            if right - left > 0.05:
                yield left, right - left
