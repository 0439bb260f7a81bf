"""Where documents go, and the links between them."""

from dataclasses import replace
from datetime import date

import pytest

from builder.compose import addresses, document_table
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.document_table import DOCUMENTS
from builder.compose.edition import Edition
from builder.compose.publication import compose_documents, editions
from builder.library import LAYOUTS
from builder.model.document import Folder


def test_links_are_relative_and_name_a_file() -> None:
    page = addresses.class_page("first")
    assert page.link_to(addresses.HOME) == "../index.html"
    assert addresses.HOME.link_to(page) == "classes/first.html"
    assert page.link_to(addresses.picture(Folder.SITE, "classes/first/a b.svg")) == "../pictures/classes/first/a%20b.svg"


def test_a_link_can_lead_into_the_other_root() -> None:
    assert Address(Folder.PRINT, "first/sheet.html").link_to(addresses.HOME) == "../../site/index.html"


def test_the_welcome_text_stands_on_the_home_page() -> None:
    assert addresses.text_page("welcome") == addresses.HOME


def test_a_size_becomes_part_of_a_file_name() -> None:
    assert addresses.plain_name("1 1/2 kg of oils") == "1-1-2-kg-of-oils"
    assert addresses.plain_name("1½ kg") == "1-1-2-kg"


def test_sizes_and_containers_that_are_written_alike_are_told_apart() -> None:
    names = addresses.distinct_names(["1 kg", "1½ kg", "1 1/2 kg", "1  kg", "15 kg", "1 kg"])
    assert names == ("1-kg", "1-1-2-kg", "1-1-2-kg-2", "1-kg-2", "15-kg", "1-kg-3")


def test_two_documents_with_one_address_are_never_made(edition: Edition, monkeypatch: pytest.MonkeyPatch) -> None:
    # Where capital letters do not tell files apart, they are one file.
    kinds = (replace(DOCUMENTS[0], path=path, template=None, compose=lambda *_: Composed("")) for path in ("same.html", "Same.html"))
    monkeypatch.setattr(document_table, "DOCUMENTS", tuple(kinds))
    with pytest.raises(ValueError, match=r"one address: site/same\.html"):
        compose_documents(*editions(edition.studio, edition.plans, (), (LAYOUTS,), date(2027, 1, 1)))
