"""The rules that filter the lists without a program: a stylesheet made from what every date and class answers.

A rule hides what does not give the answer that is chosen. What is left is never counted: for each date and class one rule says when it is
left, namely while no answer is chosen that it does not give. Where nothing is, a sentence says so, and what comes nearest is shown
(`nearest.py`). The file grows with the number of dates, not with that of the answers that can be chosen together.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.site.choices import Offered, Question, offered, questions
from builder.compose.site.nearest import near_classes, near_dates, rules_of_nearest
from builder.model.studio import Studio


def compose_rules(edition: Edition, studio: Studio, here: Address) -> Composed | None:  # noqa: ARG001
    """Write the rules; None where there is nothing to choose by."""
    asked, dates = questions(edition), offered(edition)
    classes = [Offered(plan, None) for _, plan in edition.classes]
    if not asked:
        return None
    most = max(len(near_dates(edition)), len(near_classes(edition)))
    nearest = rules_of_nearest(asked, most)
    rules = [*_hidden(asked), *_nothing_left(asked, dates, classes), *_empty_months(asked, dates), *nearest]
    return Composed("\n".join(rules) + "\n")


def _hidden(asked: Sequence[Question]) -> Iterator[str]:
    for value in (value for question in asked for value in question.values):
        yield f"main:has(#{value.key}:checked) .asked:not(.{value.key}) {{ display: none; }}"


def _nothing_left(asked: Sequence[Question], dates: Iterable[Offered], classes: Iterable[Offered]) -> Iterator[str]:
    """Hide the sentence for nothing found while something is left."""
    for selector in sorted({_left(asked, one) for one in dates}):
        yield f"{selector} .of-dates .none-left {{ display: none; }}"
    of_classes = [question for question in asked if not question.of_dates]
    for selector in sorted({_left(of_classes, one) for one in classes}):
        yield f"{selector} .of-classes .none-left {{ display: none; }}"


def _empty_months(asked: Sequence[Question], dates: Iterable[Offered]) -> Iterator[str]:
    """Hide the heading of a month of which nothing is left."""
    months: dict[str, dict[str, None]] = defaultdict(dict)
    for one in dates:
        if one.date is not None:
            months[f"{one.date.on:%Y-%m}"][_against(asked, one)] = None
    for month, against in months.items():
        if all(against):
            chain = "".join(f":has({some})" for some in against)
            yield f"main{chain} .in-{month} {{ display: none; }}"


def _left(asked: Iterable[Question], one: Offered) -> str:
    against = _against(asked, one)
    return f"main:not(:has({against}))" if against else "main"


def _against(asked: Iterable[Question], one: Offered) -> str:
    """Return the answers that, chosen, hide a date or a class."""
    return ", ".join(f"#{value.key}:checked" for question in asked for value in question.values if not value.matches(one))
