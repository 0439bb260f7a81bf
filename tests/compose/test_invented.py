"""What a new studio has in place of its own address is printed on no label, and addresses that are somebody's are."""

from dataclasses import replace

import pytest

from builder.compose.label.label_texts import NOT_YET, maker
from builder.start.starters import region_start
from builder.tasks.start import _MAIL
from builder.words.invented import is_invented_address, is_invented_contact
from tests.studios import sound_studio

PROFILE = sound_studio()[0].profile


@pytest.mark.parametrize("region", ["US", "EU", "UK", "Canada"])
def test_the_address_of_a_new_studio_is_invented(region: str) -> None:
    assert is_invented_address(region_start(region).address)
    assert is_invented_contact(_MAIL)


# RFC 2606, section 3 (reserved second-level names) and names that only look like them.
@pytest.mark.parametrize(("text", "invented"), [
    ("hello@example.org", True), ("hello@mail.example.com", True), ("https://www.example.net/", True), ("example.org", True),
    ("hello@loft.example", False), ("hello@myexample.org", False), ("hello@example.org.uk", False), ("hello@example.co", False),
])  # fmt: skip
def test_addresses_that_nobody_can_have(text: str, *, invented: bool) -> None:
    assert is_invented_contact(text) is invented


def test_a_label_says_what_is_to_be_written() -> None:
    profile = replace(PROFILE, name="Loft", address=("1 Example Street", "Example Town, ST 00000"), contact={"email": _MAIL})
    assert maker(profile) == f"Loft: {NOT_YET}, address and mail to be written into studio.yaml"
    mended = replace(profile, address=("3 Weir Lane", "Netherbrook"))
    assert maker(mended) == f"Loft: {NOT_YET}, mail to be written into studio.yaml"
    assert maker(replace(mended, contact={"email": "hello@loft.example"})) == "Loft, 3 Weir Lane, Netherbrook, hello@loft.example"
