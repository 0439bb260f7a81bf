"""Every page is HTML by the letter of the standard."""

import pytest

from tests.site.kinds import every_page
from tests.site.nu import complaints

WRONG = '<!DOCTYPE html><html lang="en"><title>x</title><p><div></p><img src="a b">'


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """Give what is said of the site, and of a page that is wrong on purpose, at one start of the checker."""
    page = tmp_path_factory.mktemp("wrong") / "wrong-on-purpose.html"
    page.write_text(WRONG, encoding="utf-8")
    return complaints(*every_page(), page)


@pytest.mark.long
def test_every_page_of_the_example_is_valid(said: list[str]) -> None:
    assert [one for one in said if not one.startswith("wrong-on-purpose.html:")] == []


@pytest.mark.long
def test_the_checker_checks(said: list[str]) -> None:
    of_it = " ".join(one for one in said if one.startswith("wrong-on-purpose.html:"))
    assert "No “p” element in scope" in of_it
    assert "img" in of_it
