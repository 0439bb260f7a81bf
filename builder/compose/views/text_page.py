"""What `pages/text.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame, Link


@dataclass(frozen=True)
class TextPageView:
    """A page of text."""

    frame: Frame
    title: str
    text_html: str
    also: tuple[Link, ...] = ()
