"""Which one figure of a supplier would settle most of what is open on a label."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from builder.model.label.declaration import Polytope
from builder.model.label.ingredient_list import Question
from builder.model.remembered import remembered
from builder.reckon.label.label_order import Order
from builder.reckon.label.shares import most_of_parts

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
        for part, polytopes in _answers(source.polytopes):
            if part is not None and not any(source.names[part] in pair for pair in pairs):
                continue
            sources = [*order.sources[:number], replace(source, polytopes=polytopes), *order.sources[number + 1 :]]
            told = Order(sources, free_at_one=order.free_at_one)
            settled = sum(told.may_precede(*pair) or told.may_precede(*reversed(pair)) for pair in pairs)
            found.append(Question(source.of, words[source.names[part]] if part is not None else "", settled))
    in_question = {words[name] for pair in pairs for name in pair}
    return max(found, key=lambda one: (one.settles, one.part in in_question, bool(one.part)), default=None)


@remembered(256)
def _answers(polytopes: tuple[Polytope, ...]) -> tuple[tuple[int | None, tuple[Polytope, ...]], ...]:
    """Return what is left of the polytopes once a figure is known: the share of each part in turn, then the place of the line."""
    answers: list[tuple[int | None, tuple[Polytope, ...]]] = []
    for part in range(len(polytopes[0].low)):
        low, high = (sign * most_of_parts(polytopes, frozenset((part,)), sign) for sign in (-1, 1))
        left = tuple(one for polytope in polytopes if (one := polytope.with_share(part, (low + high) / 2)).is_possible)
        if low < high and left:
            answers.append((part, left))
    if len(polytopes) > 1:
        answers.append((None, (polytopes[len(polytopes) // 2],)))
    return tuple(answers)
