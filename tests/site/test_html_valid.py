"""Every page is HTML by the letter of the standard; without `--long` one of each kind."""

import pytest

from tests.site.kinds import chosen
from tests.site.nu import complaints

WRONG = '<!DOCTYPE html><html lang="en"><title>x</title><p><div></p><img src="a b">'


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """Give what is said of the site, and of a page that is wrong on purpose, at one start of the checker."""
    page = tmp_path_factory.mktemp("wrong") / "wrong-on-purpose.html"
    page.write_text(WRONG, encoding="utf-8")
    return complaints(*chosen(), page)


@pytest.mark.long(sample=True)
def test_every_page_of_the_example_is_valid(said: list[str]) -> None:
    assert [one for one in said if not one.startswith("wrong-on-purpose.html:")] == []


def test_the_checker_checks(said: list[str]) -> None:
    of_it = " ".join(one for one in said if one.startswith("wrong-on-purpose.html:"))
    assert "No “p” element in scope" in of_it
    assert "img" in of_it
