"""The principal display panel of a container: the side that a buyer sees. Its area decides how large the type has to be.

A flat side counts whole; of a cylinder or tube 40 % of height times circumference count; a lid counts where it is larger than that
(16 CFR 500.21(a), read; 21 CFR 701.10). A container that nobody has measured is taken at the largest panel that its capacity allows, so
that the type is rather too tall.

Decided: a container that nobody has measured has the largest panel that its capacity allows. Why: type is rather too tall than too small.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import pi

from builder.model.recipe.container import Container
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Length
from builder.model.remembered import remembered

PI = Fraction(pi)
SHARE_OF_A_ROUND_SIDE = "share of a round side that is its panel"


@dataclass(frozen=True)
class Panel:
    """The area of the panel in mm2, and whether it comes from measures of the container."""

    area: Fraction
    measured: bool


@remembered(128)
def panel_of(container: Container, constants: Mapping[str, Figure]) -> Panel | None:
    """Return the panel of a container; None where neither its measures nor its capacity say anything of it."""
    share = constants[SHARE_OF_A_ROUND_SIDE].typical / 100
    outside = container.outside
    flat = _product(outside.width, outside.height)
    side = _product(outside.around, outside.height, factor=share)
    lid = _product(outside.lid, outside.lid, factor=PI / 4)
    known = [area for area in (flat, side, lid) if area is not None]
    if known:
        return Panel(max(known), measured=True)
    if container.inside is not None:
        a, b, _ = sorted((edge.millimetres for edge in container.inside.edges), reverse=True)
        return Panel(a * b, measured=False)
    largest = _largest(container, constants, share)
    return Panel(largest, measured=False) if largest is not None else None


def _product(one: Length | None, other: Length | None, factor: Fraction = Fraction(1)) -> Fraction | None:
    return one.millimetres * other.millimetres * factor if one is not None and other is not None else None


def _largest(container: Container, constants: Mapping[str, Figure], share: Fraction) -> Fraction | None:
    """Return the largest panel that a capacity allows: that of the most slender cylinder, the lid of the flattest, a thin pouch."""
    if container.capacity is None:
        return None
    outer = container.capacity.millilitres * 1000 * constants["outside of a container to its capacity"].typical
    slender, flattest = constants["most slender container"].typical, constants["flattest round container"].typical
    side = share * PI * slender * diameter(outer, slender) ** 2
    if container.shape in (ContainerForm.CYLINDER, ContainerForm.TUBE):
        return side
    if container.shape == ContainerForm.ROUND_LID:
        return PI / 4 * diameter(outer, flattest) ** 2
    if container.shape == ContainerForm.CAVITY:
        return container.capacity.millilitres * 1000 / constants["thinnest bar"].typical
    return outer / constants["thinnest pouch"].typical if container.shape == ContainerForm.BAG else None


def diameter(cubic_millimetres: Fraction, slenderness: Fraction) -> Fraction:
    """Return the diameter of a cylinder in millimetres by its volume and its height divided by its diameter."""
    return Fraction(float(4 * cubic_millimetres / (PI * slenderness)) ** (1 / 3))
