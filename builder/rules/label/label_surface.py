"""Where labels can sit on a container: around its side, on its lid, or on a flat face, as far as these have been measured.

A label stands upright, since its lines run with the base on which the container rests (21 CFR 701.13(f), from memory); only a bar or a
box lies on any side. Several labels go around the side one after the other, or one on each face: a lid and the underside count as two.
"""

from collections.abc import Mapping
from fractions import Fraction

from builder.model.label.label_sheet import LabelSheet
from builder.model.recipe.container import Container
from builder.model.recipe.container_form import ContainerForm
from builder.model.recipe.figure import Figure
from builder.rules.label.panel import PI, SHARE_OF_A_ROUND_SIDE, panel_of

FACES = 2
IS_ROUND = (ContainerForm.CYLINDER, ContainerForm.TUBE, ContainerForm.ROUND_LID)
LIES_ON_ANY_SIDE = (ContainerForm.CAVITY, ContainerForm.RECTANGLE)


def sits(container: Container, sheet: LabelSheet, labels: int) -> bool | None:
    """Tell whether so many labels of a sheet sit on a container; None where too little of it is known. A tag hangs on anything."""
    if sheet.hole is not None:
        return True
    ways = {"side": _around, "lid": _on_lid, "face": _on_face}
    found = {where: way(container, sheet, labels) for where, way in ways.items()}
    if any(found.values()):
        return True
    return None if any(found[where] is None for where in _surfaces_of(container)) else False


def surface_of(container: Container) -> Fraction | None:
    """Return all of the outside that could bear a label, in mm2, rather too much than too little: the side and both ends, or both faces.

    None where it has not been measured, or where a bar's or a box's thickness is not known.
    """
    outside = container.outside
    if container.shape == ContainerForm.BAG and outside.width and outside.height:
        return 2 * outside.width.millimetres * outside.height.millimetres
    if container.shape not in IS_ROUND or outside.height is None or outside.around is None:
        return None
    around = outside.around.millimetres
    across = max(around / PI, outside.lid.millimetres if outside.lid else Fraction(0))
    return around * outside.height.millimetres + PI * across**2 / 2


def could_sit(container: Container, sheet: LabelSheet, labels: int, constants: Mapping[str, Figure]) -> bool:
    """Tell whether so many labels can sit on a container of which too little is measured: on the largest of its capacity.

    The largest panel is a part of the whole side, so that no label which any container of that capacity could bear is refused.
    """
    panel = panel_of(container, constants)
    if panel is None or panel.measured or sheet.hole is not None or container.shape is ContainerForm.RECTANGLE:
        return True
    whole = panel.area / (constants[SHARE_OF_A_ROUND_SIDE].typical / 100)
    return labels * sheet.width.millimetres * sheet.height.millimetres <= whole


def _surfaces_of(container: Container) -> tuple[str, ...]:
    """Return the surfaces that a container of its shape can bear a label on; all of them have to be too small before that is said."""
    if container.shape in (ContainerForm.CYLINDER, ContainerForm.TUBE):
        return ("side",)
    return ("side", "lid") if container.shape == ContainerForm.ROUND_LID else ("face",)


def _around(container: Container, sheet: LabelSheet, labels: int) -> bool | None:
    """Tell whether labels lie around the side; around a bar they go the short way, and are as high as it is wide."""
    outside = container.outside
    height, around = outside.width if container.shape in LIES_ON_ANY_SIDE else outside.height, outside.around
    if height is None or around is None:
        return None
    return sheet.height.millimetres <= height.millimetres and sheet.width.millimetres * labels <= around.millimetres


def _on_lid(container: Container, sheet: LabelSheet, labels: int) -> bool | None:
    lid = container.outside.lid
    if lid is None:
        return None
    width, height = sheet.width.millimetres, sheet.height.millimetres
    across = width**2 if sheet.is_round else width**2 + height**2
    return labels <= FACES and across <= lid.millimetres**2


def _on_face(container: Container, sheet: LabelSheet, labels: int) -> bool | None:
    width, height = container.outside.width, container.outside.height
    if width is None or height is None:
        return None
    label, face = (sheet.width.millimetres, sheet.height.millimetres), (width.millimetres, height.millimetres)
    if container.shape in LIES_ON_ANY_SIDE:
        label, face = (min(label), max(label)), (min(face), max(face))
    return labels <= FACES and label[0] <= face[0] and label[1] <= face[1]
