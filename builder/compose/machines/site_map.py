"""The list of all pages of the site, for search engines: sitemaps.org, version 0.9."""

from collections.abc import Iterable
from xml.etree import ElementTree

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.machines.xml import as_text
from builder.model.document import Document, Folder

_NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
_MAP = "site-map.xml"


def site_map(edition: Edition, documents: Iterable[Document]) -> Document | None:
    """List every page of the site that is among the documents; None where the studio has no public address."""
    if not edition.studio.profile.public_address:
        return None
    pages = [one.path for one in documents if one.folder is Folder.SITE and one.path.endswith(".html")]
    root = ElementTree.Element("urlset", {"xmlns": _NAMESPACE})
    for path in sorted(path for path in pages if path != addresses.NOT_FOUND.path):
        address = absolute(edition, Address(Folder.SITE, path))
        ElementTree.SubElement(ElementTree.SubElement(root, "url"), "loc").text = address
    return Document(Folder.SITE, _MAP, as_text(root))
