"""Every page is HTML by the letter of the standard, also where a studio writes what no page expects."""

from pathlib import Path

from tests.published import published
from tests.site.nu import complaints


def test_every_page_of_the_example_is_valid() -> None:
    assert complaints(published()[0] / "site") == []


def test_the_checker_checks(tmp_path: Path) -> None:
    page = tmp_path / "wrong.html"
    page.write_text('<!DOCTYPE html><html lang="en"><title>x</title><p><div></p><img src="a b">', encoding="utf-8")
    said = " ".join(complaints(page))
    assert "No “p” element in scope" in said
    assert "img" in said
