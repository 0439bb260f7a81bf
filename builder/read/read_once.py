"""What is read again in a process is what it was before, where what it was read from is the same."""

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

from builder.model.finding import Finding
from builder.model.remembered import remembered

P = ParamSpec("P")
T = TypeVar("T")
Reader = Callable[Concatenate[list[Finding], P], T]


def read_once(most: int) -> Callable[[Reader[P, T]], Reader[P, T]]:
    """Remember the last `most` values that a reader makes, each with what it finds: it finds that again whenever it is asked.

    The reader takes the list to which findings are added, then what it reads; of that it is known as `remembered` knows arguments.
    """

    def decorate(read: Reader[P, T]) -> Reader[P, T]:
        @remembered(most)
        @wraps(read)
        def made(*args: P.args, **kwargs: P.kwargs) -> tuple[T, tuple[Finding, ...]]:
            findings: list[Finding] = []
            return read(findings, *args, **kwargs), tuple(findings)

        @wraps(read)
        def reading(findings: list[Finding], /, *args: P.args, **kwargs: P.kwargs) -> T:
            value, found = made(*args, **kwargs)
            findings.extend(found)
            return value

        return reading

    return decorate
