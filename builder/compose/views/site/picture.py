"""What a picture of a page shows."""

from dataclasses import dataclass


@dataclass(frozen=True)
class PictureView:
    """A picture: its address and what it shows."""

    address: str
    alt: str
