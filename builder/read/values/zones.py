"""Time zones by their names in the IANA database, and countries by the two letters of ISO 3166-1."""

import re
from functools import cache
from zoneinfo import available_timezones

from builder.read.text.text_error import TextError, quoted
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

# Names in the database that are no place: other spellings, and offsets without a summer time.
_NO_PLACE = ("Etc/", "SystemV/", "US/", "posix/", "right/", "posixrules")
# Letters that people write and that are no country of the standard, with what they mean.
_NO_COUNTRY = {"UK": "GB", "EU": "the country itself, for example IE"}


@cache
def _zones() -> dict[str, str]:
    """Return the zones of places by their folded names."""
    return {fold(name): name for name in sorted(available_timezones()) if "/" in name and not name.startswith(_NO_PLACE)}


def parse_zone(text: str) -> str:
    """Read the name of a time zone, a space standing for an underscore too. Raises TextError."""
    found = _zones().get(fold(text)) or _zones().get(fold(text.replace(" ", "_")))
    if found is None:
        remedy = f'Write the zone of a place, as the time zone database has it: "America/New_York".{did_you_mean(text, _zones().values())}'
        raise TextError("word-unknown", f"{quoted(text)} is not a time zone known here.", remedy)
    return found


def parse_country(text: str) -> str:
    """Read the two letters of a country. Raises TextError."""
    letters = text.upper()
    if not re.fullmatch("[A-Z]{2}", letters) or letters in _NO_COUNTRY:
        wanted = _NO_COUNTRY.get(letters, "its two letters in ISO 3166-1, for example US, CA, GB or IE")
        raise TextError("word-unknown", f"{quoted(text)} is not the code of a country.", f"Write {wanted}.")
    return letters
