"""What is remembered by identity is what would be worked out again; an argument that is only equal is another argument."""

from collections.abc import Callable, Sequence
from typing import Any

from builder.model.remembered import remembered

Call = tuple[tuple[Any, ...], dict[str, bool]]


def counted(most: int) -> tuple[Callable[..., Sequence[Any]], list[Call]]:
    """Return a function that remembers so many results and gives its arguments back, and the calls that reached it."""
    calls: list[Call] = []

    @remembered(most)
    def work(*given: Any, **named: bool) -> list[Any]:
        calls.append((given, named))
        return [given, named]

    return work, calls


def test_the_same_values_are_worked_out_once() -> None:
    work, calls = counted(4)
    one, other = [1], {"two": 2}
    assert work(one, other) is work(one, other)
    assert len(calls) == 1


def test_equal_values_that_are_not_the_same_are_worked_out_again() -> None:
    work, calls = counted(4)
    work([1])
    work([1])
    assert len(calls) == 2


def test_texts_and_whole_numbers_are_known_by_what_they_are() -> None:
    work, calls = counted(4)
    assert work("".join(["a", "b"]), 1, None) is work("ab", 1, None)
    assert work("ab", 2, None) is not work("ab", 1, None)
    assert len(calls) == 2


def test_no_number_is_taken_for_a_value_of_that_identity() -> None:
    work, _ = counted(4)
    value = [1]
    assert work(value)[0] == (value,)
    assert work(id(value))[0] == (id(value),)


def test_the_name_of_an_argument_counts() -> None:
    work, _ = counted(8)
    assert work(from_solid=True)[1] == {"from_solid": True}
    assert work(cooked=True)[1] == {"cooked": True}
    assert work(True)[1] == {}


def test_no_new_value_takes_the_place_of_one_that_is_gone() -> None:
    """The arguments are kept, or a new list could get the address of the old one and with it its result."""
    work, _ = counted(1000)
    assert all(work([number])[0] == ([number],) for number in range(1000))


def test_only_the_last_are_kept() -> None:
    work, calls = counted(2)
    for text in ("a", "b", "a", "c", "a", "b"):
        work(text)
    # Of a, b, a, c the a was asked for after the b, so that b went.
    assert [given for (given,), _ in calls] == ["a", "b", "c", "b"]
