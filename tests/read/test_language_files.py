"""A PO file becomes a language, or findings with their lines; what is not fit to be said is not said."""

import shutil
from collections.abc import Sequence
from datetime import datetime, time, tzinfo
from gettext import NullTranslations
from pathlib import Path
from types import SimpleNamespace
from unittest.mock import patch

import pytest
from babel.messages import catalog
from hypothesis import given
from hypothesis import strategies as st

from builder.library import CONTENT
from builder.model.finding import Finding
from builder.model.label.language import Language
from builder.read.label.languages import read_languages
from builder.read.studios import read_studio
from builder.read.text.text_files import TextFolder
from builder.start.language_file import language_file
from tests.findings_studio import SOUND
from tests.making import sure
from tests.messages import messages
from tests.studios import sound_studio

HEAD = """msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\\n"
"Language: {code}\\n"
"Plural-Forms: {plurals};\\n"

"""
# gettext manual, "Plural forms" (read): two forms as in French, three as in Polish.
FRENCH = HEAD.format(code="fr_CA", plurals="nplurals=2; plural=(n > 1)")
POLISH = HEAD.format(code="pl_PL", plurals="nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2)")


def read(folder: Path, text: str, name: str = "polish") -> tuple[Language | None, list[tuple[str, int]]]:
    """Read one file; give its language, if it is one, and the names of what is found with their lines."""
    (folder / "languages").mkdir(exist_ok=True)
    (folder / "languages" / f"{name}.po").write_text(text, encoding="utf-8")
    found: list[Finding] = []
    languages = read_languages(TextFolder(folder, found), "languages")
    return next(iter(languages.values()), None), [(one.name, one.place.line) for one in found]


def test_forms_contexts_and_texts(tmp_path: Path) -> None:
    jars = (
        'msgid "{count} jar"\nmsgid_plural "{count} jars"\nmsgstr[0] "słoik"\nmsgstr[1] "{count} słoiki"\nmsgstr[2] "{count} słoików"\n\n'
    )
    language, found = read(
        tmp_path, POLISH + jars + 'msgctxt "label"\nmsgid "Batch"\nmsgstr "Partia"\n\nmsgid "Olive oil"\nmsgstr "oliwa"\n'
    )
    assert found == [] and (sure(language).name, sure(language).locale) == ("Polish", "pl_PL")
    said = [sure(language).messages.ngettext("{count} jar", "{count} jars", n) for n in (1, 2, 5, 22)]
    assert said == ["słoik", "{count} słoiki", "{count} słoików", "{count} słoiki"]
    assert sure(language).on_label("Batch") == "Partia" and sure(language).messages.gettext("Batch") == "Batch"
    assert sure(language).text("OLIVE oil") == "oliwa" and sure(language).text("Batch") == ""
    assert sure(language).holds == {("", "{count} jar"), ("label", "Batch"), ("", "Olive oil")}


def test_the_same_file_is_the_same_language_whenever_it_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class OnAnotherDay(datetime):
        @classmethod
        def now(cls, tz: tzinfo | None = None) -> "OnAnotherDay":
            return cls(2031, 5, 6, 7, 8, tzinfo=tz)

    text = FRENCH + 'msgid "Olive oil"\nmsgstr "huile d’olive"\n'
    language, _ = read(tmp_path, text)
    monkeypatch.setattr(catalog, "datetime", SimpleNamespace(datetime=OnAnotherDay, time=time))
    assert str(catalog.Catalog().creation_date).startswith("2031-05-06")
    assert read(tmp_path, text)[0] == language


@pytest.mark.parametrize(
    "text",
    [
        '#, fuzzy\nmsgid "Pot"\nmsgstr "garnek"\n',
        'msgid "Pot"\nmsgstr ""\n',
        '#~ msgid "Pot"\n#~ msgstr "garnek"\n',
        'msgid "{count} pot"\nmsgid_plural "{count} pots"\nmsgstr[0] "garnek"\nmsgstr[1] "{count} garnki"\nmsgstr[2] ""\n',
    ],
)
def test_what_is_not_translated_yet_is_not_held(tmp_path: Path, text: str) -> None:
    language, found = read(tmp_path, POLISH + text)
    assert found == [] and sure(language).holds == frozenset()


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (POLISH + 'msgid "Pot"\nmsgstr garnek\n', [("language-broken", 8)]),
        (POLISH + 'msgid "Pot"\nmsgtr "garnek"\n', [("language-broken", 8)]),
        (POLISH + 'msgid "Pot"\nmsgstr "gar"nek"\n', [("language-broken", 8)]),
        (POLISH.replace("pl_PL", "xx_YY"), [("language-broken", 0)]),
        (POLISH.replace("n==1", "n=="), [("language-broken", 0)]),
        (POLISH + 'msgid "{a} of {b}"\nmsgstr "{a}"\n', [("language-values-differ", 7)]),
        (POLISH + 'msgid "a pot"\nmsgstr "{pot}"\n', [("language-values-differ", 7)]),
        (
            POLISH + 'msgid "{n} pot"\nmsgid_plural "{n} pots"\nmsgstr[0] "garnek"\nmsgstr[1] "{n}"\nmsgstr[2] "{n}"\n',
            [("language-values-differ", 7)],
        ),
    ],
)
def test_what_is_wrong_is_found_with_its_line(tmp_path: Path, text: str, found: Sequence[tuple[str, int]]) -> None:
    assert read(tmp_path, text) == (None, found)


def test_english_has_no_file(tmp_path: Path) -> None:
    assert read(tmp_path, HEAD.format(code="en", plurals="nplurals=2; plural=(n != 1)"), "english") == (None, [("language-broken", 0)])


def test_a_file_of_the_studio_stands_over_ours_and_leaves_ours_as_it_is(tmp_path: Path) -> None:
    shutil.copytree(SOUND, tmp_path / "studio")
    (tmp_path / "studio" / "shelf" / "languages").mkdir(parents=True)
    (tmp_path / "studio" / "shelf" / "languages" / "french.po").write_text(
        FRENCH + 'msgctxt "label"\nmsgid "Batch"\nmsgstr "No de lot"\n\nmsgid "Olive oil"\nmsgstr "huile d’olives"\n', encoding="utf-8"
    )
    studio, found = read_studio(tmp_path / "studio", CONTENT)
    french = studio.languages["French"]
    assert found == []
    assert (french.on_label("Batch"), french.on_label("Made at")) == ("No de lot", "Fabriqué chez")
    assert (french.text("olive oil"), french.text("coconut oil")) == ("huile d’olives", "huile de coco")
    ours = sound_studio()[0].languages["French"]
    assert (ours.on_label("Batch"), ours.text("olive oil")) == ("Lot", "huile d’olive")


LINES = st.lists(
    st.sampled_from(
        ["", "# a", "#, fuzzy", 'msgid "a"', 'msgid ""', 'msgstr "b"', 'msgstr[1] "c"', 'msgid_plural "d"', 'msgctxt "e"', '"f\\n"']
    ),
    max_size=12,
)


@given(lines=LINES, head=st.sampled_from(["", FRENCH, FRENCH.replace("n > 1", "n >"), FRENCH.replace("nplurals=2", "nplurals=x")]))
def test_whatever_stands_in_it_is_a_language_or_a_finding(
    tmp_path_factory: pytest.TempPathFactory, lines: Sequence[str], head: str
) -> None:
    language, found = read(tmp_path_factory.mktemp("any"), head + "\n".join(lines))
    assert (language is None) == bool(found)
    assert language is None or isinstance(language.messages, NullTranslations)


def test_a_new_file_holds_every_message_with_the_forms_of_the_language_and_what_ours_says(tmp_path: Path) -> None:
    polish = sure(language_file("polish", "pl_PL"))
    assert language_file("elvish", "zz_q") is None and 'msgstr[2] ""' in polish
    language, found = read(tmp_path, polish)
    assert (found, sure(language).holds, sure(language).locale) == ([], frozenset(), "pl_PL")
    (tmp_path / "other").mkdir()
    french, found = read(tmp_path / "other", sure(language_file("french", "fr_CA")), "french")
    assert found == [] and sure(french).on_label("Batch") == "Lot" and sure(french).text("olive oil") == "huile d’olive"
    every = {(one.context or "", one.id if isinstance(one.id, str) else one.id[0]) for one in messages() if one.id}
    assert every <= sure(french).holds and polish.count("\nmsgid ") == len(every) + 1


def test_a_file_is_opened_as_often_whatever_is_found_in_it(tmp_path: Path) -> None:
    def opened(many: int) -> int:
        messages = (f'msgid "{{one}} {number}"\nmsgstr "{{other}} {number}"\n\n' for number in range(many))
        (tmp_path / "languages").mkdir(exist_ok=True)
        (tmp_path / "languages" / "polish.po").write_text(POLISH + "".join(messages), encoding="utf-8")
        folder = TextFolder(tmp_path, [])
        with patch.object(TextFolder, "text", autospec=True, side_effect=TextFolder.text) as text:
            read_languages(folder, "languages")
        assert len(folder.findings) == many
        return text.call_count

    assert opened(40) == opened(2)
