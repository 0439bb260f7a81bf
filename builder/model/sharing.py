"""The picture that stands for a page where somebody passes it on (Open Graph)."""

from dataclasses import dataclass

from builder.model.label.logo import Logo

# Points. Those who show such pictures cut them to about this form.
WIDTH, HEIGHT = 1200, 630


@dataclass(frozen=True)
class Shape:
    """A closed run of points, each between 0 and 1 in a square; `fill` is six digits of a colour, the edge is in ink."""

    points: tuple[tuple[float, float], ...]
    fill: str


@dataclass(frozen=True)
class SharingPicture:
    """What is drawn, at a path of the site: the studio's name and tagline, the title of a class, the mark of a recipe.

    The title is empty where the picture stands for the studio itself; `heart` is the middle of the mark and its radius. The `logo` stands
    above them.
    """

    path: str
    studio: str
    tagline: str
    title: str
    mark: tuple[Shape, ...] = ()
    heart: tuple[float, float, float] | None = None
    logo: Logo | None = None
