"""What a person wrote of their allergies, in terms of the cards: families, kinds, words of names, and words that nothing here knows.

The words are those of `content/allergy_words.yaml`, the families of the cards, also in the language of the studio, and every name of an
ingredient, of a part of one or of a fragrance allergen. Whatever a text holds is taken in; whatever is left over is unclear, so that a
`not` or a `but` is asked about.

Decided: a word of an allergy that nothing knows is a finding of its own, and `not` and `but` are such words. Why: a word passed over
would look like nothing found.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from builder.model.label.labelling import Allergen
from builder.model.recipe.ingredient import Ingredient
from builder.model.remembered import remembered
from builder.model.roster.allergy import AllergyWords, Says
from builder.model.studio import Studio
from builder.reckon.roster.word_forms import Words, runs_of, words_of
from builder.words.fold import fold

_BETWEEN = re.compile(r"[,;/+&\n]|\b(?:and|or|plus|et|ou)\b", re.IGNORECASE)
# Nobody writes so many words of one allergy, and the time that the runs of a text take grows with their square.
_MOST_WORDS = 40


def vocabulary_of(studio: Studio) -> "Vocabulary":
    """Return all words that are known to a studio, made once."""
    return _vocabulary(studio.allergy_words, studio.ingredients, studio.allergens, studio.speaks.texts)


@remembered(4)
def _vocabulary(
    known: tuple[AllergyWords, ...], ingredients: Mapping[str, Ingredient], allergens: tuple[Allergen, ...], spoken: Mapping[str, str]
) -> "Vocabulary":
    return Vocabulary(known, ingredients, allergens, spoken)


@dataclass(frozen=True)
class Term:
    """One thing that a person wrote. `names` are runs of words that stand in names; `unclear` are words that nothing here knows."""

    written: str
    families: tuple[str, ...]
    kinds: tuple[str, ...]
    but_not: tuple[Words, ...]
    names: tuple[Words, ...]
    unclear: tuple[str, ...]
    minds: tuple[str, ...]


class Vocabulary:
    """All words that are known."""

    def __init__(
        self,
        known: tuple[AllergyWords, ...],
        ingredients: Mapping[str, Ingredient],
        allergens: tuple[Allergen, ...],
        spoken: Mapping[str, str] = MappingProxyType({}),
    ) -> None:
        """Take in the words of the table, the families and every name; `spoken` are texts in another language by their folded English."""
        rows = [(words_of(text), row) for row in known for text in row.words]
        self.rows = {words: row for words, row in rows if row.says is Says.AN_ALLERGEN}
        self.silent = {word for words, row in rows if row.says is Says.NOTHING for word in words}
        self.too_much = {word for words, row in rows if row.says is Says.TOO_MUCH for word in words}
        self.none = {words for words, row in rows if row.says is Says.NO_ALLERGY}
        cards = tuple({id(card): card for card in ingredients.values()}.values())
        families = {family for card in cards for family in card.allergens}
        self.families = {words_of(spoken.get(fold(family), family)): family for family in families} | {
            words_of(one): one for one in families
        }
        texts = {text for card in cards for text in names_of(card)}
        texts |= {name for one in allergens for name in (*one.counts, *one.oils)}
        self.runs = {run for text in texts for _, run in runs_of(words_of(text))}

    def terms(self, text: str) -> Iterator[Term]:
        """Yield what a person wrote, thing by thing; nothing where they wrote that there is nothing."""
        if words_of(text) in self.none:
            return
        for part in _BETWEEN.split(text):
            words = words_of(part)
            if words and words not in self.none:
                yield self._term(" ".join(part.split()), words)

    def _term(self, written: str, words: Words) -> Term:
        head = words[:_MOST_WORDS]
        rows: dict[int, AllergyWords] = {}
        families: list[str] = []
        names: list[Words] = []
        meant: set[int] = set()
        named: set[int] = set()
        for begin, run in runs_of(head):
            span = set(range(begin, begin + len(run)))
            # A word of a longer entry is not looked for by itself: wool alcohols are no other alcohols.
            if meant.issuperset(span):
                continue
            if run in self.rows:
                rows[id(self.rows[run])] = self.rows[run]
            if run in self.families:
                families.append(self.families[run])
            if not named.issuperset(span) and run in self.runs and not set(run) <= self.too_much | self.silent:
                names.append(run)
                named |= span
            if run in self.rows or run in self.families:
                meant |= span
        left = [word for number, word in enumerate(head) if number not in meant | named and word not in self.silent]
        return Term(
            written=written,
            families=tuple(dict.fromkeys([*families, *(family for row in rows.values() for family in row.families)])),
            kinds=tuple(dict.fromkeys(kind for row in rows.values() for kind in row.kinds)),
            but_not=tuple(words_of(text) for row in rows.values() for text in row.but_not),
            names=tuple(names),
            unclear=(*left, *(["\u2026"] if len(words) > _MOST_WORDS else [])),
            minds=tuple(dict.fromkeys(row.mind for row in rows.values() if row.mind)),
        )


def names_of(card: Ingredient) -> tuple[str, ...]:
    """Return every name of an ingredient: its own, those it is also called by, and those of its parts."""
    stated = tuple(card.allergen_statement.contains) if card.allergen_statement else ()
    return (card.name, *card.also_called, *card.label_names, *stated)
