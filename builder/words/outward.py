"""Addresses that lead out of the site: the one door through which all of them pass, whoever wrote them.

A browser does whatever an address says: `javascript:` runs a program, `data:` shows a page that is none of ours. So what may be meant is
listed here, and everything else is refused.

Decided: every address that leads out passes `words/outward.py`, where it is read and again where a link is made. Why: one list of what is
allowed, none of what is not.
"""

import re

# RFC 3986 for the web, RFC 6068 for mail, RFC 3966 for the telephone.
_WEB = re.compile(r"https?://(?:[^\s/?#@<>\"'`\\:]+\.)+[^\s/?#@<>\"'`\\:.]+\.?(?::\d+)?(?:[/?#][^\s<>\"`\\]*)?", re.IGNORECASE)
_MAIL = re.compile(r"[^\s@<>()\"'`\\:,;?&/%#]+@(?:[^\s@<>()\"'`\\:,;?&/%#.]+\.)+[^\s@<>()\"'`\\:,;?&/%#.]+")
_LETTER = re.compile(r"(?:[a-z]+=[\w%.~+-]*(?:&[a-z]+=[\w%.~+-]*)*)?", re.ASCII | re.IGNORECASE)
_TELEPHONE = re.compile(r"\+?\d(?:[().-]*\d)+")
_WITHIN_PAGE = re.compile(r"#[^\s<>\"`\\]*")


class UnsafeAddressError(ValueError):
    """An address was about to be published that leads nowhere known: a mistake in our code, since what is read has been judged."""


def is_web_address(text: str) -> bool:
    """Tell whether a text is the whole address of a web page."""
    return _is_plain(text) and _WEB.fullmatch(text) is not None


def is_mail_address(text: str) -> bool:
    """Tell whether a text is an address for electronic mail."""
    return _is_plain(text) and _MAIL.fullmatch(text) is not None


def is_outward(address: str) -> bool:
    """Tell whether a page may link to an address as it is written: a web page, a mail address, a number, or a place on the same page."""
    scheme, _, rest = address.partition(":")
    if scheme.casefold() == "mailto":
        to, _, letter = rest.partition("?")
        return is_mail_address(to) and _LETTER.fullmatch(letter) is not None
    if scheme.casefold() == "tel":
        return _TELEPHONE.fullmatch(rest) is not None
    return is_web_address(address) or (_is_plain(address) and _WITHIN_PAGE.fullmatch(address) is not None)


def outward(address: str) -> str:
    """Return an address that may be published. Raises UnsafeAddressError for any other."""
    if address and not is_outward(address):
        raise UnsafeAddressError(f"{address!r} is no address that a page may lead to")
    return address


def _is_plain(text: str) -> bool:
    """Tell whether a text holds no sign that nobody sees; browsers pass over those and read on."""
    return text.isprintable()
