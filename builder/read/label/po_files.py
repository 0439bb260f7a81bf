"""A gettext PO file becomes a catalogue of messages; a line that is none of such a file is a finding.

language-broken: a line that cannot be read, or a head that cannot.
"""

import re
from io import BytesIO, StringIO

from babel import Locale, UnknownLocaleError
from babel.messages.catalog import Catalog
from babel.messages.pofile import PoFileError, read_po, write_po

from builder.model.finding import stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.read.text.text_files import TextFolder

FINDS = (FindingKind("language-broken", STOP, "The file of a language cannot be read."),)

HEAD = r"""# Write here who translated it, and whether a speaker of the language has read it.
# What is worked out is checked in any language. The rules about what a lesson says know English words alone: a lesson in another
# language is not searched for unsafe steps, so somebody who knows the trade reads it twice.
msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\n"
"Language: {code}\n"
"Plural-Forms: {plurals}\n"

"""
# Nothing, a remark, or a text in quotes with the word before it that says what it is.
_LINE = re.compile(r"""\s*(#.*|((msgctxt|msgid|msgid_plural|msgstr|msgstr\[\d+\])\s*)?"([^"\\]|\\.)*"\s*)?""")


def read_catalog(folder: TextFolder, file: str) -> Catalog | None:
    """Read a file; None, with a finding, where it cannot be read."""
    text = folder.text(file)
    if text is None:
        return None
    unlike = next((number for number, line in enumerate(text.split("\n"), 1) if not _LINE.fullmatch(line)), 0)
    if unlike:
        _refuse_line(folder, file, unlike)
        return None
    try:
        return read_po(StringIO(text), abort_invalid=True)
    except PoFileError as error:
        _refuse_line(folder, file, error.lineno)
    except ValueError as error:
        refuse(folder, file, f"This file cannot be read as a PO file: {error}.", "Mend its first lines, up to the first empty one.")
    return None


def new_file(content: TextFolder, file: str, code: str) -> str | None:
    """Return the text of a file with every message, and the translations of the one that ships; None where no language has this code."""
    try:
        made = Catalog(Locale.parse(code), charset="utf-8")
    except (ValueError, UnknownLocaleError):
        return None
    every, ours = read_catalog(content, "languages/messages.pot"), read_catalog(content, file) if content.has(file) else None
    if ours and ours.locale == made.locale:
        made = ours  # It counts as ours does, in whose forms its messages are.
    for message in every or ():
        if message.id:
            known = ours.get(message.id, message.context) if ours else None
            made.add(message.id, known.string if known else None, message.locations, context=message.context)
    text = BytesIO()
    write_po(text, made, width=0, omit_header=True, include_lineno=False)
    return HEAD.format(code=made.locale, plurals=made.plural_forms) + text.getvalue().decode("utf-8")


def refuse(folder: TextFolder, file: str, wrong: str, remedy: str, line: int = 0) -> None:
    """Find that a file cannot be used, for what is wrong in one of its lines or in the whole."""
    places = places_in(folder, file)
    folder.findings.append(stop("language-broken", places[line] if line < len(places) else places[0], wrong, remedy))


def places_in(folder: TextFolder, file: str) -> list[Place]:
    """Return the place of a file as a whole, and then that of each of its lines, so that a line is found by its number."""
    whole, lines = folder.place(file), (folder.text(file) or "").split("\n")
    return [whole, *(Place(whole.file, number, 1, max(len(line), 1)) for number, line in enumerate(lines, start=1))]


def _refuse_line(folder: TextFolder, file: str, line: int) -> None:
    wrong = "This line cannot be read as one of a PO file."
    remedy = 'Write it as the lines around it are: msgid or msgstr, and a text in straight quotes, with \\" for a quote inside of it.'
    refuse(folder, file, wrong, remedy, line)
