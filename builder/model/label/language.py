"""A language of a label: its words and the texts of the stock in it; and what a recipe says in another language than English."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.words.fold import fold

# The language in which stock and studios are written.
OWN = "English"


@dataclass(frozen=True)
class Language:
    """One file of `content/languages/`. `locale` is that of its lengths of time, `words` the fixed ones of a label by their keys.

    `texts` are texts of the stock in this language, by the folded English.
    """

    name: str
    locale: str = "en"
    words: Mapping[str, str] = field(default_factory=dict)
    texts: Mapping[str, str] = field(default_factory=dict)

    @property
    def is_own(self) -> bool:
        """Say whether it is the language in which everything is written."""
        return self.name == OWN

    def text(self, english: str) -> str:
        """Give a text of the stock in this language; empty where it has none."""
        return english if self.is_own else self.texts.get(fold(english), "")


@dataclass(frozen=True)
class Translation:
    """What a label takes from a recipe, in one language. `options` are what students choose or leave out, by the folded English."""

    name: str = ""
    directions: str = ""
    storage: str = ""
    keeps: str = ""
    label_cautions: tuple[str, ...] = ()
    options: Mapping[str, str] = field(default_factory=dict)

    @property
    def texts(self) -> tuple[str, ...]:
        """Give everything that it says."""
        return (self.name, self.directions, self.storage, self.keeps, *self.label_cautions, *self.options.values())


ENGLISH = Language(OWN)
