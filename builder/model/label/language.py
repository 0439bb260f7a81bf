"""A language of labels, pages and sheets; and what a recipe says of its label in another language than English."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from gettext import NullTranslations

from builder.model.label.messages import AmericanEnglish, Untranslated
from builder.words.fold import fold

# The context of the words that stand on labels, where several languages stand side by side.
LABEL = "label"
# The language in which the library and studios are written.
OWN = "English"


@dataclass(frozen=True)
class Language:
    """One file of `content/languages/`, or English, which has none. `locale` is that of its dates, numbers and lengths of time.

    `messages` are all by their English, `holds` the context and the English of those that it has. `texts` are those without a context, by
    the folded English: what a studio writes is found in any case.
    """

    name: str
    locale: str
    messages: NullTranslations = field(default_factory=Untranslated)
    holds: frozenset[tuple[str, str]] = frozenset()
    texts: Mapping[str, str] = field(default_factory=dict)

    @property
    def is_own(self) -> bool:
        """Tell whether it is the language in which everything is written."""
        return self.name == OWN

    @property
    def file(self) -> str:
        """Return the name of its file in a folder of languages."""
        return f"{self.name.casefold().replace(' ', '-')}.po"

    def on_label(self, message: str) -> str:
        """Return a fixed word of labels in this language."""
        return self.messages.pgettext(LABEL, message)

    def text(self, english: str) -> str:
        """Return a text of the library in this language; empty where it has none."""
        return self.messages.gettext(english) if self.is_own else self.texts.get(fold(english), "")


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
        """Return everything that it says."""
        return (self.name, self.directions, self.storage, self.keeps, *self.label_cautions, *self.options.values())


ENGLISH = Language(OWN, "en_US")
# The same in American spelling, by its Unicode locale.
AMERICAN = Language(OWN, "en_US", AmericanEnglish())
