"""The logo of a studio as a label or a sharing picture shows it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Logo:
    """A picture by its path in the studio folder, its width to its height; `see_through`: what is behind it shows."""

    file: str
    proportion: float
    see_through: bool = True
