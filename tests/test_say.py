"""The language that is spoken: messages by their English, values by name, plural forms."""

from gettext import NullTranslations

from builder.words.say import say, say_count, say_in, speaking


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
