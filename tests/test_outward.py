"""The one door for addresses that lead out.

What has to be refused are the schemes and disguises of the OWASP notes on scripting, from memory.
"""

import re
from datetime import date
from pathlib import Path
from xml.etree import ElementTree

import pytest

from builder import pipeline
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.document import Document
from builder.words.outward import UnsafeAddressError, is_outward, outward
from tests.making import sure
from tests.page_text import attributes_of
from tests.test_findings import lay_out

SOUND = (
    "https://wrenlow.example", "http://a.example:8080/shop?x=1&y=2#top", "https://bücher.example/straße", "https://a.example/x_(y)",
    "mailto:hello@wrenlow.example", "mailto:a.b+c@mail.example?subject=A%20class&body=Hello", "tel:+1-802-555-0142", "tel:112", "#top",
)  # fmt: skip
UNSOUND = (
    "javascript:steal()", "JaVaScRiPt:steal()", " javascript:steal()", "java\tscript:steal()", "java\nscript:steal()",
    "\x01javascript:steal()", "javascript&colon;steal()", "data:text/html,<script>steal()</script>", "vbscript:steal()",
    "file:///etc/passwd", "ftp://a.example/", "blob:https://a.example/1", "//far.example/x", "/\\far.example", "https:far.example",
    "https:///far.example", "https://a.example\" onclick=\"steal()", "https://user@a.example", "https://a.example\u202e/moc",
    "mailto:a@b", "mailto:a@b.example,c@d.example", "mailto:a@b.example?x=<y>", "tel:steal()", "tel:", "wrenlow.example", "",
)  # fmt: skip


@pytest.mark.parametrize("address", SOUND)
def test_usual_addresses_pass(address: str) -> None:
    assert is_outward(address)
    assert outward(address) == address


@pytest.mark.parametrize("address", UNSOUND)
def test_nothing_else_does(address: str) -> None:
    assert not is_outward(address)
    if address:
        with pytest.raises(UnsafeAddressError):
            outward(address)


def attributes_in(document: Document) -> list[dict[str, str]]:
    """Return the attributes of every element of a document: XML by a parser of XML, anything else as a browser reads HTML."""
    if document.path.endswith(".xml"):
        return [element.attrib for element in ElementTree.fromstring(document.html).iter()]
    return attributes_of(document.html)


def test_no_page_links_anywhere_else(tmp_path: Path) -> None:
    """Whatever a studio writes where addresses go: no link of any document has a scheme but those of the door."""
    studio = tmp_path / "studio"
    lay_out(None, studio)
    profile = studio / "studio.yaml"
    contact = '{email: teacher@test.example, phone: "javascript:steal()", web: "https://test.example"}'
    text = profile.read_text(encoding="utf-8").replace("{email: teacher@test.example}", contact)
    profile.write_text(f"{text}\npublic address: https://test.example/classes\n", encoding="utf-8")
    links = "\n\n[Ours](https://far.example/a) <https://far.example/b> [mail](mailto:a@far.example) [one](class:one-bar) [up](#top)\n"
    for name in ("classes/one-lotion/lesson.md", "pages/about.md"):
        (studio / name).write_text((studio / name).read_text(encoding="utf-8") + links, encoding="utf-8")
    outcome = pipeline.check(studio, on=date(2027, 1, 1))
    assert [one.name for one in outcome.findings] == ["phone-not-dialled"]
    made = compose_documents(*editions(sure(outcome.studio), outcome.plans, (), (LAYOUTS,), today=date(2027, 1, 1))).documents
    seen = set()
    for document in made:
        for attributes in attributes_in(document):
            assert not [name for name in attributes if name.startswith("on")]
            for address in (attributes[name] for name in ("href", "src", "action", "xlink:href") if name in attributes):
                scheme = re.match(r"[a-z][a-z0-9+.-]*:", address, re.IGNORECASE)
                if address.startswith("data:image/svg+xml;base64,") and attributes.get("rel") == "icon":
                    continue  # the icon of the page for what is not there, which lies at any depth
                assert scheme is None or is_outward(address), f"{document.path}: {address}"
                seen.add(scheme.group() if scheme else "")
        assert 'href="javascript' not in document.html
    assert seen == {"", "https:", "mailto:"}
