"""The studio's own look on pages: its colours as a style that stands in the page, and its logo.

Decided: the colours stand in each page and not in a file beside it. Why: they are a few lines, and a page that is open while the site is
replaced never has the colours of another day.
"""

from base64 import b64encode
from hashlib import sha256
from urllib.parse import quote

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.templates import OWN_SCREEN
from builder.compose.views.frame import OwnStyle
from builder.model.label.own_font import OWN_TITLES
from builder.model.own_document import Look
from builder.rules.look.palette import palette


def own_style(css: str) -> OwnStyle:
    """Return a style with the sum by which the policy of the page lets it in."""
    return OwnStyle(css, f"sha256-{b64encode(sha256(css.encode()).digest()).decode()}")


def look_css(edition: Edition, here: Address | None = None) -> str:
    """Return what the studio adds to the styles of pages: its colours, its font, then its own style; empty where there is none.

    `here` is the page; None for one that may be shown at any depth, which has no font of its own.
    """
    font = edition.studio.title_font
    titles = title_css(here.link_to(addresses.title_font(here.folder, font.ending))) if here and font and font.shows else ""
    return _colours(edition.studio.profile.look) + titles + edition.templates.own_style(OWN_SCREEN).replace("</", "<\\/")


def title_css(file: str) -> str:
    """Return the style by which titles are set in a font of the studio's own; what it lacks comes from the usual one."""
    face = f'@font-face{{font-family:"{OWN_TITLES}";src:url("{quote(file)}");font-display:swap}}'
    return f'{face}h1,h2,.studio{{font-family:"{OWN_TITLES}",var(--text-face);font-weight:normal;font-style:normal}}'


def _colours(look: Look) -> str:
    """Return the style of the colours by day and by night, for screens alone."""
    colours = palette(look)
    if not colours.day:
        return ""
    day, night = (":root{" + ";".join(f"--{name}:{colour}" for name, colour in some.items()) + "}" for some in (colours.day, colours.night))
    return f"@media screen{{{day}}}@media screen and (prefers-color-scheme:dark){{{night}}}"
