"""What a container is to a label."""

from enum import StrEnum


class ContainerForm(StrEnum):
    """Round with a label around it, with a lid that bears one, flat, or the mould of a bar or a loaf."""

    CYLINDER = "cylinder"
    TUBE = "tube"
    ROUND_LID = "round lid"
    BAG = "bag"
    CAVITY = "cavity"
    RECTANGLE = "rectangle"
