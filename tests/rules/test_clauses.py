"""Where a clause says something: at its own words, or as a whole where they stand in another order."""

import re

import pytest

from builder.model.teaching.prose import Sentence
from builder.rules.clauses import Clause


@pytest.mark.parametrize(("in_another_order", "span"), [(False, (24, 28)), (True, (16, 31))])
def test_what_stands_in_another_order_is_marked_as_a_whole(span: tuple[int, int], *, in_another_order: bool) -> None:
    words = " slowly, stir it. "
    clause = Clause(Sentence(f"When it is cool{words}"), words, 15, in_another_order)
    found = re.search("stir", words)
    assert found is not None and clause.span(found) == span
