"""Every template says what it takes, is used, and refuses a name that it does not know."""

import re
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from builder.compose.templates import Templates
from builder.library import LAYOUTS

TEMPLATES = sorted(path.relative_to(LAYOUTS).as_posix() for path in LAYOUTS.rglob("*.html"))
COMPOSE = Path(__file__).parents[2] / "builder" / "compose"


@pytest.mark.parametrize("name", TEMPLATES)
def test_the_first_line_says_what_a_template_takes(name: str) -> None:
    first = (LAYOUTS / name).read_text(encoding="utf-8").splitlines()[0]
    assert re.fullmatch(r"\{# Takes: .+ #\}", first)


def test_every_template_is_used() -> None:
    sources = [path.read_text(encoding="utf-8") for path in (*COMPOSE.rglob("*.py"), *LAYOUTS.rglob("*.html"))]
    assert [name for name in TEMPLATES if not any(f'"{name}"' in source for source in sources)] == []


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_template_does_no_arithmetic_and_sorts_nothing(name: str) -> None:
    for expression in re.findall(r"\{\{.*?\}\}|\{%.*?%\}", (LAYOUTS / name).read_text(encoding="utf-8")):
        assert not re.search(r"[*/]|\||sort|round", re.sub(r'"[^"]*"|\|safe|\|join\(|\|length', "", expression)), expression


def test_a_name_that_a_view_lacks_is_refused(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("{{ view.nothing }}", encoding="utf-8")
    with pytest.raises(UndefinedError):
        Templates((tmp_path,)).render("page.html", object())


def test_text_is_escaped(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("{{ view }}", encoding="utf-8")
    assert Templates((tmp_path,)).render("page.html", "<script>") == "&lt;script&gt;"
