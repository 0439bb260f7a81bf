"""A picture as it is published, and why there is none."""

from dataclasses import dataclass

from builder.model.picture import Size


class PictureError(Exception):
    """A picture of which nothing can be made; `wrong` says why, in a sentence."""

    def __init__(self, wrong: str) -> None:
        """Hold the sentence."""
        super().__init__(wrong)
        self.wrong = wrong


@dataclass(frozen=True)
class Picture:
    """A picture as it is published, and how large it is (None where a drawing does not say).

    `left_out` names what of it draws but is not passed on, each once. `see_through`: something behind a photograph shows.
    """

    data: bytes
    size: Size | None
    left_out: tuple[str, ...] = ()
    see_through: bool = False
