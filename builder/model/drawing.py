"""A drawing of the project that a lesson can call for, and the small ones before the words in a list of tools."""

from dataclasses import dataclass

READING = "{reading}"  # Stands in a drawing where a scale shows the amount of the step.


@dataclass(frozen=True)
class Drawing:
    """One drawing: what stands beneath it, what it shows for those who do not see it, the SVG, and words of steps that it fits.

    Each entry of `fits` is a set of words that all stand in one sentence, in any order.
    """

    name: str
    caption: str
    alt: str
    svg: str
    fits: tuple[frozenset[str], ...] = ()

    @property
    def shows_reading(self) -> bool:
        """Tell whether a scale in it shows an amount."""
        return READING in self.svg


@dataclass(frozen=True)
class ToolDrawing:
    """The small drawing of a tool: the SVG, and what one of it is called, between commas."""

    name: str
    names: str
    svg: str
