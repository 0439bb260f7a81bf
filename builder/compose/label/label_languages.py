"""The languages of a label side by side: words joined by a stroke, each once, and each text set as its language sets it.

A day is written in figures, year first (ISO 8601), where more than one language has to read it.

Decided: INCI names, name and address stand once. Why: the law excepts INCI names (s. 18); C2 asks for no second language of name and place
(C.R.C. c. 417 ss. 12-13).

Decided: a day is written year first where a label has two languages; "Best before / Meilleur avant". Why: `03/06` is read in two ways; no
date is asked for on a cosmetic, and the words are those of food (common practice, no source).
"""

from collections.abc import Iterable, Sequence
from datetime import date

from builder.compose.dates.dates import decimal_sign, length_in_words, plain_date
from builder.compose.recipe.wording import NBSP, keep_together
from builder.model.label.language import Language
from builder.rules.durability import plain_length_in


def joined(texts: Iterable[str]) -> str:
    """Write the same thing in each language, what is alike once; no line begins with the stroke."""
    return f"{NBSP}/ ".join(dict.fromkeys(text for text in texts if text))


def said(languages: Sequence[Language], message: str) -> str:
    """Return a word of the labels in each language."""
    return joined(language.on_label(message) for language in languages)


def not_for_sale(languages: Sequence[Language]) -> str:
    """Return in each language, one after the other, that nothing was tested for sale."""
    return " ".join(dict.fromkeys(language.on_label("Made by hand in a class. Not tested for sale.") for language in languages))


def colon_of(languages: Sequence[Language]) -> str:
    """Return the colon after words in several languages: that of the last one."""
    return glued(languages[-1].on_label(":"), languages[-1])


def glued(text: str, language: Language) -> str:
    """Set a text as its language sets it."""
    return text if language.is_own else keep_together(text)


def day(on: date, languages: Sequence[Language], locale: str) -> str:
    """Write a day so that readers of all the languages take it alike."""
    return on.isoformat() if len(languages) > 1 else plain_date(on, locale).replace(" ", NBSP)


def length_of_time(written: str, own: str, language: Language) -> str:
    """Return a length of time in a language: as the studio has written it there, or the number with its unit."""
    length = plain_length_in(own or written)
    if length is None or (own and language.is_own):
        return glued(own, language)
    number, unit = length
    return length_in_words(number, unit, language.locale)


def in_figures(net: str, languages: Sequence[Language]) -> str:
    """Write net contents with the decimal sign of each language; the symbols of the units are alike in all."""
    return joined(net.replace(".", decimal_sign(language.locale)) for language in languages)
