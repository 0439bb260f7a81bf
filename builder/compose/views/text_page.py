"""What `pages/text.html` shows."""

from dataclasses import dataclass

from builder.compose.views.frame import PageFrame


@dataclass(frozen=True)
class TextPageView:
    """A page of text."""

    frame: PageFrame
    title: str
    text_html: str
