"""What the sentences of a lesson call an ingredient beside braces, and whether they tell people to put it in.

Decided: an ingredient counts as put in where a step names it, or where an order does by a word that no ingredient in braces answers to
("stir in the preservative"), or by "everything else". Why: "each fat needs its lye" puts no oil in; a false alarm on a lesson in words
costs trust.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from builder.model.recipe.ingredient import CountsAs, Ingredient
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.teaching.lesson import Part
from builder.model.teaching.prose import Sentence
from builder.rules.clauses import Clause, clauses_of, explains, stands
from builder.rules.grammar.verbs import PUTS_IN, verbs_that
from builder.words.fold import fold

# What a kind of ingredient, or what it counts as, is called beside the word for it.
_CALLED: Mapping[str, tuple[str, ...]] = {
    IngredientKind.ALKALI: ("lye",),
    IngredientKind.ANTIOXIDANT: ("vitamin e",),
    IngredientKind.COLOURANT: ("colour", "color", "pigment", "mica", "dye"),
    IngredientKind.EMULSIFIER: ("wax",),
    IngredientKind.ESSENTIAL_OIL: ("scent", "fragrance"),
    IngredientKind.EXFOLIANT: ("grain", "scrub"),
    IngredientKind.FLAVOUR: ("flavor", "scent"),
    IngredientKind.FRAGRANCE: ("scent",),
    IngredientKind.HERB: ("flower", "petal", "leave"),
    IngredientKind.LIQUID: ("lye",),
    IngredientKind.LOTION_BASE: ("base",),
    IngredientKind.SOAP_BASE: ("base",),
}
_FATS = ("oil", "fat")
# Kinds whose word tells nothing by itself; oils and fats are called by `_FATS`.
_NO_KINDS = (IngredientKind.OIL, CountsAs.FAT, IngredientKind.OTHER)
# Words of a name that tell nothing about which ingredient is meant.
_COMMON = (
    "acid", "blend", "butter", "essential", "extract", "fragrance", "from", "powder", "pure", "refined", "seed", "sodium", "sweet", "water",
    "white", "with",
)  # fmt: skip

# An order to put in what follows unless it is cleared away, and what is said of a thing that goes in.
_PUT_IN = re.compile(
    rf"\b(?:{'|'.join(verbs_that(PUTS_IN))}|include|work)(?:e?s|\w?ed|\w?ing)?\b"
    r"|\b(?:first|in|last|lastly|next|now|then) (?:come|goe?)s?\b"
)
_CLEARS = re.compile(r"\b(?:bin|clean|clear|dry|empty|pack|rinse|scrape|throw|tidy|wash|wipe)\b")
_GOES_IN = re.compile(r"[^.,]*?\b(?:goes?|comes?|joins?|follows?|(?:is|are) (?:added|stirred|mixed|weighed))\b")
_BOTH = r"\b(?:all|both|other|remaining|rest)(?: of)?(?: the| your)?(?: \w+)? "
# Everything at once; "put everything away" and "add the rest of the lye" are none.
_WHOLE = re.compile(
    r"\b(?:everything(?! away| back| out| ready| on the| in(?:to)? the sink| (?:that )?you)"
    r"|all(?: of)? (?:the |your )?(?:(?:other|remaining|dry) )?(?:ingredients|powders|liquids|things)"
    r"|(?:other|remaining|dry) ingredients|the others"
    r"|the rest(?!,? (?:in the same|a (?:spoon|little)|little by|bit by|slowly|of the (?!ingredients|recipe)|away|back|out)))\b"
)
_BY_A_SHEET = re.compile(
    r"\bmake (?:the|one|a|your) (?:whole|full) batch\b"
    r"|\b(?:as|by|from|follow) (?:on |in )?(?:the |your )?(?:take-?home sheet|bench card)s?\b"
)


@dataclass(frozen=True)
class Call:
    """An ingredient of a recipe with the phases that it stands in."""

    card: Ingredient
    phases: frozenset[str]

    @property
    def names(self) -> tuple[str, ...]:
        """Return its names, folded."""
        return tuple(fold(name) for name in (self.card.name, *self.card.also_called))

    @property
    def words(self) -> frozenset[str]:
        """Return what it shares with others: words of its names, its kind and what that is called, its phases; folded, no plural s."""
        of_names = {word for name in self.names for word in re.findall(r"\w{4,}", name) if word not in _COMMON}
        kinds = {kind for kind in (self.card.kind, self.card.counts_as.value) if kind not in _NO_KINDS}
        called = {word for kind in kinds for word in _CALLED.get(kind, ())} | set(_FATS if self.card.counts_as.is_oil else ())
        return frozenset(word.removesuffix("s") for word in (*of_names, *kinds, *called, *self.phases))


@dataclass(frozen=True)
class Instructions:
    """What some parts of a lesson say, to look in for what they tell people to put in: all sentences, and those of the steps among them."""

    sentences: tuple[Sentence, ...]
    steps: tuple[Sentence, ...]

    @classmethod
    def of(cls, parts: Iterable[Part]) -> "Instructions":
        """Take the sentences of parts."""
        parts = tuple(parts)
        return cls(
            tuple(sentence for part in parts for sentence in part.sentences),
            tuple(sentence for part in parts for step in part.steps for sentence in step.sentences),
        )

    @property
    def put_everything_in(self) -> bool:
        """Tell whether they put in all that is left, or go by a sheet."""
        return any(_orders(_WHOLE, one) or _says(_BY_A_SHEET, one) for one in self.sentences)

    def put_in(self, call: Call, taken: frozenset[str]) -> bool:
        """Tell whether they put an ingredient in: by a name in a step, or by an order with a name, or with a word of it.

        `taken` are the words by which an ingredient in braces can be meant. Of these only "the other oils" and the like count.
        """
        names = _any_of(call.names)
        own, shared = _any_of((*call.names, *(call.words - taken))), call.words & taken
        ordered = [own, *([_any_of(shared, _BOTH)] if shared else [])]
        return any(_says(names, one) for one in self.steps) or any(_orders(said, one) for said in ordered for one in self.sentences)


def _any_of(said: Iterable[str], after: str = r"(?<!essential )\b") -> re.Pattern[str]:
    """Look for any of some words, the longest first. "Essential oils" are no oils."""
    longest_first = sorted(said, key=lambda one: (-len(one), one))
    return re.compile(rf"{after}(?:{'|'.join(map(re.escape, longest_first))})s?\b")


def _says(pattern: re.Pattern[str], sentence: Sentence) -> bool:
    """Tell whether a sentence says a thing and means it: what it denies, supposes or asks does not count."""
    return any(stands(clause, match) for clause in _folded(sentence) for match in pattern.finditer(clause.words))


def _orders(pattern: re.Pattern[str], sentence: Sentence) -> bool:
    """Tell whether a sentence tells people to put a thing in."""
    return any(
        stands(clause, match) and (_is_put_in(clause.words[: match.start()]) or _GOES_IN.match(clause.words, match.end()))
        for clause in _folded(sentence)
        if not explains(clause)
        for match in pattern.finditer(clause.words)
    )


def _is_put_in(before: str) -> bool:
    """Tell whether words lead up to a thing that is put in, by the last verb among them."""
    orders = list(_PUT_IN.finditer(before))
    return bool(orders) and not _CLEARS.search(before, orders[-1].end())


def _folded(sentence: Sentence) -> Iterator[Clause]:
    return (replace(clause, words=fold(clause.words)) for clause in clauses_of(sentence))
