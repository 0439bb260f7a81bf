"""Texts of fields that are no amounts: words of closed lists, yes and no, dates, addresses, and names of what was read before."""

import re
from collections.abc import Iterable, Mapping
from datetime import date, datetime, time
from enum import StrEnum
from typing import Generic, TypeVar

from builder.model.finding_kind import STOP, FindingKind
from builder.model.keeping.durability import Durability
from builder.model.label.language import OWN
from builder.model.library import ANY
from builder.model.recipe.figure import Source, SourceKind
from builder.model.recipe.product import Product
from builder.model.remembered import remembered
from builder.read.known import NamesKnown
from builder.read.text.text_error import TextError, quoted
from builder.rules.durability import durability_in
from builder.words.fold import fold
from builder.words.nearest import did_you_mean
from builder.words.outward import is_mail_address, is_web_address

FINDS = (
    FindingKind("date-unreadable", STOP, "A date or a time cannot be read."),
    FindingKind("keeps-unreadable", STOP, "It cannot be read how long something keeps or cures."),
    FindingKind("mail-address-unreadable", STOP, "A mail address cannot be one."),
    FindingKind("source-unknown", STOP, "A figure names a source that does not exist."),
    FindingKind("web-address-unreadable", STOP, "A web address cannot be one."),
    FindingKind("word-unknown", STOP, "A word stands where only certain words have a meaning."),
    FindingKind("yes-or-no", STOP, "Neither yes nor no stands where one of them is wanted."),
)

E = TypeVar("E", bound=StrEnum)
_DATE = re.compile(r"(\d{4})-(\d\d)-(\d\d)(?:[ T](\d\d):(\d\d))?", re.ASCII)
# Wide on purpose: what lies outside is a slip of the pen.
YEARS = range(1900, 3000)
WRITE_A_DATE = 'Write year, month and day in figures, and the time if there is one, from 00:00 to 23:59: "2027-03-06 09:30".'


def text_of(given: object) -> str:
    """Return the text of a field, which must not be empty. Raises TextError."""
    if not isinstance(given, str):
        what = "a list" if isinstance(given, list) else "a set of named values"
        colon = ", in quotes where it has a colon in it." if isinstance(given, dict) else ""
        wrong = f"A single text is wanted here, and {what} stands here."
        raise TextError("wrong-kind-of-value", wrong, f"Write one text{colon or ' after the colon.'}")
    if not given.strip():
        raise TextError(
            "field-missing", "Nothing is written here.", "Write it, in quotes where it begins with #; what is not needed may be left out."
        )
    return given.strip()


def find_source(key: str, known: NamesKnown) -> Source:
    """Return the source that a text names. Raises TextError."""
    if known.unread_sources & {fold(key), ANY}:
        return Source(key, key, SourceKind.UNREAD)
    if key not in known.sources:
        remedy = f"Correct the name, or describe the source in sources.yaml.{did_you_mean(key, known.sources)}"
        raise TextError("source-unknown", f"No source is called {quoted(key)}.", remedy)
    return known.sources[key]


def find_product(text: str, known: NamesKnown) -> Product:
    """Return the kind of product that a text names, without regard to case. Raises TextError."""
    by_key = _products_by_key(known)
    product = by_key.get(fold(text)) or by_key.get(fold(known.kinds_meant.get(fold(text), "")))
    if product is None:
        near = did_you_mean(text, known.products)
        own = "Or describe a kind of your own in shelf/products.yaml, like one of these: `stillroom reference products.yaml`."
        remedy = f"Write one of these: {', '.join(known.products)}.{near} {own}"
        raise TextError("word-unknown", f"{quoted(text)} is not a kind of product known here.", remedy)
    return product


@remembered(8)
def _products_by_key(known: NamesKnown) -> Mapping[str, Product]:
    return {fold(name): kind for name, kind in known.products.items()}


def find_region(text: str, known: NamesKnown) -> str:
    """Return the name of a region as `regions.yaml` has it, without regard to case."""
    return word_of(*known.regions)(text)


def find_language(text: str, known: NamesKnown) -> str:
    """Return the name of a language: English, or one of which there is a file."""
    return word_of(OWN, *known.languages)(text)


def find_oil(text: str, known: NamesKnown) -> str:
    """Return the name of an oil as the table of constituents has it. Raises TextError."""
    if fold(text) not in known.oils:
        remedy = f"`stillroom list oils` shows the names; or leave this line out.{did_you_mean(text, known.oils.values())}"
        raise TextError("word-unknown", f"{quoted(text)} is not an oil in the table of constituents.", remedy)
    return known.oils[fold(text)]


class WordOf:
    """Reads one word of a closed list, without regard to case."""

    def __init__(self, *words: str) -> None:
        """Take the words that may stand there."""
        self.words = words
        self._known = {fold(word): word for word in words}

    def __call__(self, text: str) -> str:
        """Return the word as the list has it."""
        if fold(text) not in self._known:
            remedy = f"Write one of these: {', '.join(self.words)}.{did_you_mean(text, self.words)}"
            raise TextError("word-unknown", f"{quoted(text)} is not one of the words that may stand here.", remedy)
        return self._known[fold(text)]


class MemberOf(Generic[E]):
    """Reads one member of an enumeration by its word."""

    def __init__(self, members: type[E], only: Iterable[E] = ()) -> None:
        """Take the enumeration, and those of its members that may stand there, if not all may."""
        self.words = tuple(only) or tuple(members)
        self._members, self._word = members, WordOf(*self.words)

    def __call__(self, text: str) -> E:
        """Return the member."""
        return self._members(self._word(text))


class EitherOf:
    """Reads one of two words, without regard to case: whether it is the first."""

    def __init__(self, word: str, other: str) -> None:
        """Take the two words."""
        self.words, self._word = (word, other), WordOf(word, other)

    def __call__(self, text: str) -> bool:
        """Tell whether the first of them stands there."""
        return self._word(text) == self.words[0]


word_of, member_of, either_of = WordOf, MemberOf, EitherOf


def parse_yes_or_no(text: str) -> bool:
    """Read `yes` or `no`. Raises TextError."""
    if fold(text) not in ("yes", "no"):
        raise TextError("yes-or-no", f"{quoted(text)} is neither yes nor no.", "Write yes or no.")
    return fold(text) == "yes"


def parse_cancelled(text: str) -> str | None:
    """Read whether a date is cancelled: `yes`, `no`, or yes by its reason. Raises TextError."""
    if fold(text) in ("true", "false", "on", "off", "y", "n"):
        raise TextError("yes-or-no", f"{quoted(text)} is neither yes nor no.", "Write yes or no, or the reason for which it is cancelled.")
    return {"yes": "", "no": None}.get(fold(text), text)


def parse_date(text: str) -> datetime:
    """Read a day, with or without a time of day."""
    match = _DATE.fullmatch(text)
    if not match:
        raise _unreadable(f"{quoted(text)} cannot be read as a date.")
    year, month, day, hour, minute = (int(part or 0) for part in match.groups())
    try:
        on = date(year, month, day)
    except ValueError:
        raise _unreadable(f"{quoted(text)} is not a day of the calendar.") from None
    if on.year not in YEARS:
        raise _unreadable(f"{quoted(text)} lies in a year in which nothing here was or will be done.")
    try:
        return datetime.combine(on, time(hour, minute))
    except ValueError:
        raise _unreadable(f"{quoted(text)} does not end in a time of the day.") from None


def _unreadable(wrong: str) -> TextError:
    return TextError("date-unreadable", wrong, WRITE_A_DATE)


def parse_keeps(text: str) -> Durability:
    """Read how long something keeps."""
    return _lasts(text, "does not say how long it keeps", 'Write for example "6 weeks" or "3 months".')


def parse_words_of_keeping(text: str) -> str:
    """Read how long a product keeps, in words that begin with that."""
    remedy = (
        "Write first, in figures, how many days, weeks, months or years, of a range the shorter end; then what else there is to say: "
        '"6 months", "12 months after the cure", or in French "12 mois".'
    )
    _lasts(text, "does not begin with a length of time, so that nothing is worked out from it", remedy)
    return text


def parse_words_of_cure(text: str) -> str:
    """Read how long a soap cures, in words that begin with that."""
    remedy = 'Write in figures how many days, weeks or months, of a range the longer end: "6 weeks".'
    _lasts(text, "does not begin with a length of time, so that the day on which the soap is ready is not known", remedy)
    return text


def _lasts(text: str, wrong: str, remedy: str) -> Durability:
    lasts = durability_in(text)
    if lasts is None or lasts == Durability(0, 0):
        raise TextError("keeps-unreadable", f"{quoted(text)} {wrong}.", remedy)
    return lasts


def parse_day(text: str) -> date:
    """Read a day; a time of day beside it counts for nothing."""
    return parse_date(text).date()


def parse_currency(text: str) -> str:
    """Read a currency by its code of three letters. Raises TextError."""
    if not re.fullmatch("[A-Z]{3}", text):
        raise TextError(
            "word-unknown", f"{quoted(text)} is not the code of a currency.", 'Write its three capital letters, for example "USD" or "EUR".'
        )
    return text


def parse_mail_address(text: str) -> str:
    """Read an address for electronic mail. Raises TextError."""
    if not is_mail_address(text):
        raise TextError("mail-address-unreadable", f"{quoted(text)} is no mail address.", 'Write it as in "hello@example.org".')
    return text


def parse_web_address(text: str) -> str:
    """Read the address of a web page. Raises TextError."""
    if not is_web_address(text):
        raise TextError(
            "web-address-unreadable", f"{quoted(text)} is not a web address.", 'Write it in full, for example "https://example.org".'
        )
    return text
