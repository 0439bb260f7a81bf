"""A telephone number as people write it becomes one that every telephone can dial: with + and the code of its country (ITU-T E.164).

Decided: what may be a part of a number is not completed by a guess; it is shown without a link. Why: a link that calls a stranger is worse
than none.
"""

import re
from collections.abc import Iterable
from enum import Enum

from builder.model.dates.calling_code import CallingCode
from builder.model.studio import Studio

# What people write between figures; a zero in brackets is the trunk that is not dialled after a code (common practice).
_NUMBER = re.compile(r"\+?[\s().\-/\u2010-\u2013]*\d(?:[\s().\-/\u2010-\u2013]*\d)+")
_OPTIONAL_TRUNK = re.compile(r"\(\s*0\s*\)")
# ITU-T E.164, 6: a number has at most 15 figures, its code among them. Shorter than 7 is no number that is dialled from abroad.
_MOST, _LEAST = 15, 7


class Undialled(Enum):
    """Why a number cannot be dialled from anywhere as it is written."""

    NOT_A_NUMBER = "more than a number"
    NO_COUNTRY = "no country"
    LENGTH = "not whole"


def dialled(studio: Studio, number: str) -> str | Undialled:
    """Return a number with + and the code of its country, figures alone; or why that cannot be told."""
    if not _NUMBER.fullmatch(number.strip()):
        return Undialled.NOT_A_NUMBER
    home = home_code(studio)
    figures = "".join(re.findall(r"\d", number))
    is_from_abroad = number.strip().startswith("+")
    if not is_from_abroad and home and figures.startswith(home.abroad):
        is_from_abroad, figures = True, figures.removeprefix(home.abroad)
    if is_from_abroad:
        return _from_abroad(studio.calling_codes, figures, without="0" if _OPTIONAL_TRUNK.search(number) else "")
    if not home:
        return Undialled.NO_COUNTRY
    return _at_home(home, figures)


def home_code(studio: Studio) -> CallingCode | None:
    """Return the row of the country where classes are held; without a place, that of a region of one country."""
    country, region = studio.profile.venue.country if studio.profile.venue else "", studio.profile.region
    found = (one for one in studio.calling_codes if (one.country == country if country else one.region == region))
    return next(found, None)


def _at_home(home: CallingCode, figures: str) -> str | Undialled:
    """Turn a number as it is written at home: with its trunk, or as long as every number of the country is."""
    has_trunk = bool(home.trunk) and figures.startswith(home.trunk)
    whole = figures.removeprefix(home.trunk)
    is_whole = has_trunk or not home.trunk or home.shortest == home.longest
    return f"+{home.code}{whole}" if is_whole and home.shortest <= len(whole) <= home.longest else Undialled.LENGTH


def _from_abroad(codes: Iterable[CallingCode], figures: str, without: str) -> str | Undialled:
    """Turn a number that begins with a code; of a country that is not known it has to be as long as any number may be."""
    row = max((one for one in codes if figures.startswith(one.code)), key=lambda one: len(one.code), default=None)
    if row is None:
        return f"+{figures}" if _LEAST <= len(figures) <= _MOST and figures[0] != "0" else Undialled.LENGTH
    whole = figures.removeprefix(row.code)
    whole = whole.removeprefix(row.trunk or without)
    return f"+{row.code}{whole}" if row.shortest <= len(whole) <= row.longest else Undialled.LENGTH
