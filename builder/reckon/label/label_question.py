"""Which one figure of a supplier would settle most of what is open on a label."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from builder.model.label.declaration import Polytope
from builder.model.label.ingredient_list import Question
from builder.reckon.label.label_order import Order, Source
from builder.reckon.label.shares import shares_at_most

Pairs = Sequence[tuple[str, str]]

# So many open pairs are enough to choose a question by.
MOST_PAIRS = 8


def find_question(order: Order, pairs: Pairs, words: Mapping[str, str]) -> Question | None:
    """Return the figure that settles most open pairs if it turns out in the middle of what it can be; None if no blend has a say.

    `words` are what the names are called.
    """
    pairs = pairs[:MOST_PAIRS]
    found = []
    for number, source in enumerate(order.sources):
        if len(source.names) == 1 or not any(name in pair for pair in pairs for name in source.names):
            continue
        for part, polytopes in _answers(source):
            if part is not None and not any(source.names[part] in pair for pair in pairs):
                continue
            sources = [*order.sources[:number], replace(source, polytopes=polytopes), *order.sources[number + 1 :]]
            told = Order(sources, free_at_one=order.free_at_one)
            settled = sum(told.may_precede(*pair) or told.may_precede(*reversed(pair)) for pair in pairs)
            found.append(Question(source.of, words[source.names[part]] if part is not None else "", settled))
    in_question = {words[name] for pair in pairs for name in pair}
    return max(found, key=lambda one: (one.settles, one.part in in_question, bool(one.part)), default=None)


def _answers(source: Source) -> Iterator[tuple[int | None, tuple[Polytope, ...]]]:
    """Yield what is left of the polytopes once a figure is known: the share of each part in turn, then the place of the line."""
    for part in range(len(source.names)):
        weights = [Fraction(number == part) for number in range(len(source.names))]
        high = max(shares_at_most(polytope, weights)[part] for polytope in source.polytopes)
        low = min(shares_at_most(polytope, [-weight for weight in weights])[part] for polytope in source.polytopes)
        polytopes = tuple(one for polytope in source.polytopes if (one := polytope.with_share(part, (low + high) / 2)).is_possible)
        if low < high and polytopes:
            yield part, polytopes
    if len(source.polytopes) > 1:
        yield None, (source.polytopes[len(source.polytopes) // 2],)
