"""The outside of a container that nobody has measured: of its shape and capacity, the least that usual ones have in each direction.

A slender bottle is narrow and a stout one is low, so that a label as wide as the one allows and as high as the other allows sits on both.
All lengths in millimetres, volumes in cubic millimetres.

Decided: labels of a container that nobody has measured are of the size that sits on every usual one of its capacity and shape. Why: a label
that is rather too small looks like one, a label that goes over an edge comes off; who measures gets labels as large as there is room for.
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from math import sqrt

from builder.model.recipe.container import Container, Outside
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Figure
from builder.model.recipe.quantity import Length
from builder.model.remembered import remembered
from builder.rules.label.panel import PI, diameter

ROUND = {
    ContainerForm.CYLINDER: "usual height of a bottle to its diameter",
    ContainerForm.TUBE: "usual height of a tube to its diameter",
    ContainerForm.ROUND_LID: "usual height of a jar or tin to its diameter",
}
FLAT = {
    ContainerForm.CAVITY: ("usual thickness of a bar", "usual width of a bar to its height"),
    ContainerForm.BAG: ("usual thickness of a pouch", "usual width of a pouch to its height"),
}


@remembered(128)
def with_usual_outside(container: Container, constants: Mapping[str, Figure]) -> Container:
    """Return a container as far as it was measured, and for the rest with the least that usual ones have."""
    least, known = _least(container, constants), container.outside
    if least is None:
        return container
    outside = Outside(
        height=known.height or least.height,
        around=known.around or least.around,
        width=known.width or least.width,
        lid=known.lid or least.lid,
    )
    return replace(container, outside=outside)


def _least(container: Container, constants: Mapping[str, Figure]) -> Outside | None:
    if container.inside is not None:
        _, middle, longest = sorted(container.inside.edges, key=lambda edge: edge.millimetres)
        return Outside(height=middle, width=longest)
    if container.capacity is None:
        return None
    volume = container.capacity.millilitres * 1000
    if container.shape in ROUND:
        stout, slender = _both(constants[ROUND[container.shape]])
        across, height = diameter(volume, slender), stout * diameter(volume, stout)
        return Outside(height=Length(height), around=Length(PI * across), lid=_lid(container, across))
    if container.shape in FLAT:
        thickness, proportion = (constants[name] for name in FLAT[container.shape])
        face, (narrow, broad) = float(volume / thickness.highest), _both(proportion)
        width, height = (Fraction(sqrt(face * float(part))) for part in (narrow, 1 / broad))
        return Outside(height=Length(height), width=Length(width))
    return None


def _lid(container: Container, across: Fraction) -> Length | None:
    return Length(across) if container.shape is ContainerForm.ROUND_LID else None


def _both(figure: Figure) -> tuple[Fraction, Fraction]:
    return figure.low, figure.highest
