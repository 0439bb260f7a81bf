"""A page of the reference: what it is called, its title, and its text in Markdown."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Page:
    """One page. `key` is by what it is asked for and addressed; links in `text` lead to `KEY.html`."""

    key: str
    title: str
    text: str
