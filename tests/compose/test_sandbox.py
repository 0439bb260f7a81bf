"""Whatever a template asks for, filling it in comes to an end, and is told with its line."""

import time
from pathlib import Path

import pytest

from builder.compose.templates import TemplateFaultError, Templates
from builder.library import LAYOUTS

ENDLESS = (
    '{% extends "own.html" %}',
    '{% include "own.html" %}',
    '{% set other = "own.html" %}{% include other %}',
    '{% import "own.html" as own %}',
    '{% from "own.html" import own %}',
    "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}",
    "{% macro m(n) %}{% if n %}{{ m(n - 1) }}{{ m(n - 1) }}{% endif %}{% endmacro %}{{ m(60) }}",
    "{% for one in [1] recursive %}{{ loop([1]) }}{% endfor %}",
    "{% for one in range(1000000000) %}x{% endfor %}",
    "{% for one in range(-1000000000) %}x{% endfor %}",
    "{% for one in range(9000) %}{% for other in range(9000) %}{% endfor %}{% endfor %}",
    '{{ "x" * 1000000000 }}',
    "{{ [1] * 1000000000 }}",
    '{% set n = namespace(x="a") %}{% for one in range(90) %}{% set n.x = n.x ~ n.x %}{% endfor %}',
    "{% set n = namespace(x=[1]) %}{% for one in range(90) %}{% set n.x = n.x + n.x %}{% endfor %}",
    "{% set n = namespace(x=9) %}{% for one in range(90) %}{% set n.x = n.x * n.x %}{% endfor %}",
    '{{ "x"|center(1000000000) }}',
    '{{ "x".ljust(1000000000) }}',
    '{{ [1]|batch(1000000000, "x")|list }}',
    "{{ [1]|slice(1000000000)|list }}",
)
NOT_DONE = ("{{ 10 ** 10 }}", '{{ "%999999999d" % 1 }}', '{{ "{:>999999999}".format(1) }}', "{{ lipsum(1000000) }}")
TOO_DEEP = (
    "{{ " + "(" * 3_000 + "1" + ")" * 3_000 + " }}",
    "{{ 1" + " + 1" * 5_000 + " }}",
    "{{ view" + "|upper" * 3_000 + " }}",
    "{% for one in [1] %}" * 30 + "{% endfor %}" * 30,
    "{% if view %}" * 300 + "{% endif %}" * 300,
)


def templates(folder: Path, **texts: str) -> Templates:
    for name, text in texts.items():
        (folder / f"{name}.html").write_text(f"<p>\n{text}", encoding="utf-8")
    return Templates((folder, LAYOUTS))


@pytest.mark.parametrize("text", [*ENDLESS, *NOT_DONE])
def test_what_takes_too_much_is_told_with_its_line(text: str, tmp_path: Path) -> None:
    begun = time.process_time()
    with pytest.raises(TemplateFaultError) as told:
        templates(tmp_path, own=text).render("own.html", "x")
    assert (told.value.fault.template, told.value.fault.line, told.value.fault.endless) == ("own.html", 2, text in ENDLESS)
    assert time.process_time() - begun < 5


@pytest.mark.parametrize("text", TOO_DEEP)
def test_what_is_too_deep_is_told(text: str, tmp_path: Path) -> None:
    fault = templates(tmp_path, own=text).fault_in("own.html")
    assert fault and (fault.template, fault.said.partition(",")[0]) == ("own.html", "too much in it stands within one another")


@pytest.mark.parametrize("first", ["first", "second"])
def test_two_that_take_in_each_other_are_told(first: str, tmp_path: Path) -> None:
    made = templates(tmp_path, first='{% include "second.html" %}', second='{% include "first.html" %}')
    with pytest.raises(TemplateFaultError) as told:
        made.render(f"{first}.html", "x")
    assert told.value.fault.endless and told.value.fault.line == 2


def test_one_that_extends_what_cannot_be_read_has_no_fault_of_its_own(tmp_path: Path) -> None:
    made = templates(tmp_path, own='{% extends "other.html" %}\n{% block main %}{% endblock %}', other="{% if %}")
    assert made.fault_in("own.html") is None
    assert made.fault_in("other.html")


def test_what_anybody_writes_is_filled_in(tmp_path: Path) -> None:
    text = (
        '{{ "_" * 40 }}{% for row in view|batch(3, "-") %}{{ row|join("~") }}{% endfor %}{% for one in range(1, 4) %}{{ one }}{% endfor %}'
        '{% macro m(n) %}{{ n ~ "!" }}{% if n %}{{ m(n - 1) }}{% endif %}{% endmacro %}{{ m(2) }}{{ 2027|string }}{{ "a".center(3) }}'
    )
    assert templates(tmp_path, own=text).render("own.html", "abcd") == "<p>\n" + "_" * 40 + "a~b~cd~-~-1232!1!0!2027 a "


def test_each_document_is_counted_anew(tmp_path: Path) -> None:
    made = templates(tmp_path, own="{% for one in range(90000) %}x{% endfor %}")
    for _ in range(20):
        assert len(made.render("own.html", "x")) == 90_004
