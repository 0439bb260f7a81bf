"""The language that is spoken: messages by their English, values by name, plural forms."""

from gettext import NullTranslations
from pathlib import Path

import pytest

from builder.compose.templates import TemplateFaultError, Templates
from builder.library import LAYOUTS
from builder.words.say import message, say, say_count, say_in, speaking


class Shouting(NullTranslations):
    """A language of capitals that has one word of its own."""

    def gettext(self, message: str) -> str:
        return "GANZ {b} VOR {a}" if message == "{a} before {b}" else message.upper()

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return (msgid1 if n == 1 else msgid2).replace("jar", "JAR")

    def pgettext(self, context: str, message: str) -> str:
        return f"{message} <{context}>"


def test_english_is_what_stands_in_the_code() -> None:
    assert say("{a} before {b}", a="lye", b="oil") == "lye before oil"
    assert say("as it is, {braces} too") == "as it is, {braces} too"
    assert [say_count("{count} jar", "{count} jars", n) for n in (0, 1, 2)] == ["0 jars", "1 jar", "2 jars"]
    assert say_in("a colour", "orange") == "orange"


def test_another_language_has_its_own_order_and_forms_and_ends_with_its_block() -> None:
    with speaking(Shouting()):
        assert say("{a} before {b}", a="lye", b="oil") == "GANZ oil VOR lye"
        assert say_count("{count} jar", "{count} jars", 3) == "3 JARs"
        assert say_in("a colour", "orange") == "orange <a colour>"
    assert say("quiet") == "quiet"


def test_a_text_of_a_table_is_said_later() -> None:
    table = {1: message("first")}
    with speaking(Shouting()):
        assert say(table[1]) == "FIRST"


def test_braces_hold_names_and_reach_into_no_value() -> None:
    assert say("{a.__class__} {a[0]} {a!r} {a:>9} {a}", a="lye") == "{a.__class__} {a[0]} {a!r} {a:>9} lye"
    with pytest.raises(KeyError):
        say("{b}", a="lye")


def rendered(folder: Path, text: str, **values: object) -> str:
    """Fill in a template of the studio's own."""
    (folder / "own.html").write_text(text, encoding="utf-8")
    return Templates((folder, LAYOUTS)).render("own.html", values)


def test_templates_speak_too_and_say_is_text_there(tmp_path: Path) -> None:
    text = """{% set a %}<b>{{ view.a }}</b>{% endset %}{{ say("{a} before {b}", a=a, b=view.b) }} & {{ say("5 > 4") }}"""
    assert rendered(tmp_path, text, a="lye", b="<oil>") == "<b>lye</b> before &lt;oil&gt; & 5 &gt; 4"
    with speaking(Shouting()):
        assert rendered(tmp_path, text, a="lye", b="<oil>") == "GANZ &lt;oil&gt; VOR <b>lye</b> & 5 &gt; 4"
        assert rendered(tmp_path, """{{ say_in("a colour", "orange") }}""") == "orange &lt;a colour&gt;"
        assert (
            rendered(tmp_path, """{{ say_count("{count} jar of {what}", "{count} jars of {what}", 2, what="A&B") }}""")
            == "2 JARs of A&amp;B"
        )


def test_a_message_without_its_value_is_a_fault_of_the_template(tmp_path: Path) -> None:
    with pytest.raises(TemplateFaultError):
        rendered(tmp_path, """{{ say("{a}", b="lye") }}""")
