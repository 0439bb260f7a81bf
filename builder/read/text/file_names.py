"""The names of files, which become web addresses: small letters, figures and hyphens.

Names of devices, with any ending, are no names of files on Windows (Microsoft, "Naming Files, Paths, and Namespaces", from memory).
"""

import re
import unicodedata

_PLAIN = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_OF_PICTURE = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9._-]*[A-Za-z0-9_-])?")
_OF_A_DEVICE = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d)", re.IGNORECASE)
# Letters that people spell out where they cannot be typed; others lose their marks.
_SPELLED_OUT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "æ": "ae", "ø": "oe", "œ": "oe", "ł": "l", "đ": "d", "þ": "th"})


def is_plain_name(stem: str) -> bool:
    """Tell whether a name without its ending can stand in a web address as it is."""
    return bool(_PLAIN.fullmatch(stem))


def is_picture_name(stem: str) -> bool:
    """Tell whether the name of a picture without its ending can stand in a web address as it is; no page is called by it."""
    return bool(_OF_PICTURE.fullmatch(stem))


def is_of_a_device(stem: str) -> bool:
    """Tell whether Windows takes a name, without its ending, for that of a device."""
    return bool(_OF_A_DEVICE.fullmatch(stem.split(".")[0].rstrip()))


def plain_name(stem: str) -> str:
    """Return a plain name that is near to one that is not."""
    letters = unicodedata.normalize("NFC", stem).lower().translate(_SPELLED_OUT)
    without_marks = "".join(sign for sign in unicodedata.normalize("NFKD", letters) if not unicodedata.combining(sign))
    plain = "-".join(re.findall(r"[a-z0-9]+", without_marks)) or "another-name"
    return f"the-{plain}" if is_of_a_device(plain) else plain
