"""Where documents go, and the links between them."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.model.document import Folder


def test_links_are_relative_and_name_a_file():
    page = addresses.class_page("first")
    assert page.link_to(addresses.CATALOGUE) == "../index.html"
    assert addresses.CATALOGUE.link_to(page) == "classes/first.html"
    assert page.link_to(addresses.picture(Folder.SITE, "classes/first/a b.svg")) == "../pictures/classes/first/a%20b.svg"


def test_a_link_can_lead_into_the_other_root():
    assert Address(Folder.PRINT, "first/sheet.html").link_to(addresses.CATALOGUE) == "../../site/index.html"


def test_the_welcome_text_is_the_catalogue():
    assert addresses.text_page("welcome") == addresses.CATALOGUE


def test_a_size_becomes_part_of_a_file_name():
    assert addresses.plain_name("1 1/2 kg of oils") == "1-1-2-kg-of-oils"
