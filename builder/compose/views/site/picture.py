"""What a picture of a page shows."""

from dataclasses import dataclass


@dataclass(frozen=True)
class PictureView:
    """A picture: its address and what it shows. `html` is the element, from which a browser takes the width that it needs."""

    address: str
    alt: str
    html: str
