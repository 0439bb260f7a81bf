"""Addresses that begin with the host: what leaves the site, such as a calendar or a search engine's note, cannot use a relative one."""

from urllib.parse import quote

from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.words.outward import outward


def absolute(edition: Edition, there: Address) -> str:
    """Return the whole address of a page of the site; empty where the studio has not said where its site will be."""
    public = outward(edition.studio.profile.public_address.rstrip("/"))
    return f"{public}/{quote(there.path)}" if public else ""
