"""A file of `content/languages/`, or of the studio's own `shelf/languages/`, becomes a language.

It is a gettext PO file, named after its language, of messages by their English; `messages.pot` beside those that ship holds every message.
What is marked as fuzzy, or has one form too few, is not translated yet.

Decided: messages lie in PO files, and not in files of ours. Why: translators know them, and their editors count what is missing.

Decided: a studio speaks another language once its file holds every message, and English until then. Why: a sheet that changes its language
at its dangers is worse than one in English.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from io import BytesIO
from pathlib import PurePosixPath

from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import write_mo

from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import CAUTION, STOP, FindingKind
from builder.model.label.language import AMERICAN, ENGLISH, LABEL, OWN, Language
from builder.model.label.messages import Messages
from builder.model.label.region import Region
from builder.model.place import Place
from builder.model.studio import Profile
from builder.read.label.po_files import places_in, read_catalog, refuse
from builder.read.text.text_files import TextFolder
from builder.words.fold import fold
from builder.words.glued import glued
from builder.words.listed import listed
from builder.words.say import HOLE

FINDS = (
    FindingKind("language-incomplete", CAUTION, "Pages and sheets stay in English, since the file of their language lacks messages."),
    FindingKind("language-values-differ", STOP, "A message in another language does not hold the values that its English holds."),
)

PLURALS = "Write its Plural-Forms as the gettext manual lists them for each language, for example `nplurals=2; plural=(n != 1);`."
# So many messages that are missing are shown.
SHOWN = 3


def read_languages(folder: TextFolder, at: str) -> dict[str, Language]:
    """Read the languages of a folder by their names; what is wrong in a file is found, and the file left out."""
    languages = (_read_language(folder, name) for name in folder.files(at, ".po"))
    return {one.name: one for one in languages if one}


def over(ours: Mapping[str, Language], own: Mapping[str, Language]) -> dict[str, Language]:
    """Return all languages; what the studio's own file lacks, ours of that language says."""
    return {**ours, **{name: _over(ours[name], language) if name in ours else language for name, language in own.items()}}


def _over(ours: Language, own: Language) -> Language:
    messages = own.messages.before(ours.messages) if isinstance(own.messages, Messages) else ours.messages
    return replace(own, messages=messages, holds=ours.holds | own.holds, texts={**ours.texts, **own.texts})


def spelled_in(region: Region) -> Language:
    """Return English as the region spells it."""
    return AMERICAN if region.locale == AMERICAN.locale else ENGLISH


def spoken(profile: Profile, languages: Mapping[str, Language], content: TextFolder, findings: list[Finding]) -> Language:
    """Return the language of pages and sheets; while it lacks a message English as the region spells it, with a finding."""
    own = languages[OWN]
    language = languages.get(profile.language, own)
    every = read_catalog(content, "languages/messages.pot") if not language.is_own else None
    on_pages = (_key(message) for message in every or () if message.id and message.context != LABEL)
    missing = sorted((english for context, english in on_pages if (context, english) not in language.holds), key=_words_first)
    if not missing:
        return language
    shown = ", ".join(f'"{_one_line(english)}"' for english in missing[:SHOWN])
    more = " and others" if len(missing) > SHOWN else ""
    wrong = f"Pages and sheets are in English: the file of {language.name} does not have all that they say. It lacks {shown}{more}."
    remedy = (
        f"Translate them in shelf/languages/{language.file}, which `stillroom add language` begins. Or leave out `language:`: "
        "labels have the languages of their region all the same."
    )
    findings.append(caution("language-incomplete", profile.at("language"), wrong, remedy))
    return own


def _read_language(folder: TextFolder, file: str) -> Language | None:
    name = PurePosixPath(file).stem.replace("-", " ").capitalize()
    catalog = read_catalog(folder, file)
    if catalog is None:
        return None
    if name == OWN:
        wrong = "English is the language in which everything is written; it has no file."
        refuse(folder, file, wrong, "Name the file after the language that it holds, or remove it.")
        return None
    if catalog.locale is None:
        wrong = "The head of this file does not say which language it is, by its code."
        refuse(folder, file, wrong, 'Write it as in `"Language: fr_CA\\n"`: the code of the language, and that of the country.')
        return None
    places = places_in(folder, file)
    differing = [one for message in catalog if message.id for one in _differing(message, places[message.lineno or 0])]
    folder.findings.extend(differing)
    try:
        return None if differing else _language(name, catalog)
    except ValueError as error:
        refuse(folder, file, f"The head of this file does not say how the language counts: {error}.", PLURALS)
        return None


def _language(name: str, catalog: Catalog) -> Language:
    compiled = BytesIO()
    for message in catalog:
        forms = tuple(map(glued, _forms(message.string)))
        message.string = forms if isinstance(message.id, tuple) else "".join(forms)
    # Where a file bears no date, the library writes the minute in which it is read: two readings would be two values.
    catalog.creation_date = datetime(2000, 1, 1, tzinfo=UTC)
    write_mo(compiled, catalog)
    done = [message for message in catalog if message.id and _is_translated(message, catalog.num_plurals)]
    texts = {fold(message.id): _forms(message.string)[0] for message in done if isinstance(message.id, str) and not message.context}
    return Language(name, str(catalog.locale), Messages(compiled.getvalue()), frozenset(map(_key, done)), texts)


def _differing(message: Message, place: Place) -> Iterator[Finding]:
    """Find the forms whose names in braces are not those of the English; the number alone may be left out of one of several forms."""
    english = _names(*_forms(message.id))
    for form in _forms(message.string):
        differ = english ^ _names(form)
        if form and differ - ({"count"} if isinstance(message.id, tuple) else set()):
            wrong = f'"{_one_line(form)}" does not hold the same values as its English, "{_one_line(_key(message)[1])}".'
            names = listed(f"{{{name}}}" for name in sorted(english)) or "none"
            yield stop("language-values-differ", place, wrong, f"The names in braces have to be these: {names}.")


def _key(message: Message) -> tuple[str, str]:
    return message.context or "", _forms(message.id)[0]


def _forms(said: str | Sequence[str] | None) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said or ())


def _names(*texts: str) -> set[str]:
    return {name for text in texts for name in HOLE.findall(text)}


def _is_translated(message: Message, plurals: int) -> bool:
    forms = _forms(message.string)
    return not message.fuzzy and all(forms) and len(forms) == (plurals if isinstance(message.id, tuple) else 1)


def _words_first(text: str) -> tuple[bool, str]:
    return not text[:1].isalpha(), text


def _one_line(text: str) -> str:
    return " ".join(text.split())
