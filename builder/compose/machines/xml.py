"""XML as text; characters that it cannot hold are left out."""

import re
from xml.etree import ElementTree

# What XML 1.0 has no way to write; a browser would refuse the whole file for one of them.
_NO_CHARACTER = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def as_text(root: ElementTree.Element) -> str:
    """Write an element with a declaration before it and a line end after it; its attribute `xmlns` is the namespace of all in it."""
    for element in root.iter():
        element.text = _NO_CHARACTER.sub("", element.text) if element.text else element.text
    ElementTree.indent(root, space="")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{ElementTree.tostring(root, encoding="unicode")}\n'
