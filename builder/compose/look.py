"""The studio's own look on pages: its colours as a style that stands in the page, and its logo.

Decided: the colours stand in each page and not in a file beside it. Why: they are a few lines, and a page that is open while the site is
replaced never has the colours of another day.
"""

from base64 import b64encode
from hashlib import sha256

from builder.compose.edition import Edition
from builder.compose.templates import OWN_SCREEN
from builder.compose.views.frame import OwnStyle
from builder.model.own_document import Look
from builder.rules.look.palette import palette


def own_style(css: str) -> OwnStyle:
    """Return a style with the sum by which the policy of the page lets it in."""
    return OwnStyle(css, f"sha256-{b64encode(sha256(css.encode()).digest()).decode()}")


def look_css(edition: Edition) -> str:
    """Return what the studio adds to the styles of pages: its colours, then its own style; empty where there is neither."""
    return _colours(edition.studio.profile.look) + edition.templates.own_style(OWN_SCREEN).replace("</", "<\\/")


def _colours(look: Look) -> str:
    """Return the style of the colours by day and by night, for screens alone."""
    colours = palette(look)
    if not colours.day:
        return ""
    day, night = (":root{" + ";".join(f"--{name}:{colour}" for name, colour in some.items()) + "}" for some in (colours.day, colours.night))
    return f"@media screen{{{day}}}@media screen and (prefers-color-scheme:dark){{{night}}}"
