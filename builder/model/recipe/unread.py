"""What stands in a file and cannot be read.

Decided: what cannot be read whole is made all the same, with `UNREAD` in place of what cannot be. Why: a rule that never asks for that says
all it has to say, one that asks falls silent, and no list says which rule needs which key.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, NoReturn


class UnreadError(Exception):
    """Somebody asked for what cannot be read."""


class _Unread:
    """The one value that stands for what cannot be read. It can be handed on, and what is in it too; whoever looks at it is stopped."""

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):
            raise AttributeError(name)
        return self

    def __reduce__(self) -> str:
        return "UNREAD"

    def _stop(self, *_: object) -> NoReturn:
        raise UnreadError

    __bool__ = __call__ = __len__ = __iter__ = __contains__ = __getitem__ = _stop
    __eq__ = __ne__ = __lt__ = __le__ = __gt__ = __ge__ = __hash__ = _stop
    __add__ = __radd__ = __sub__ = __rsub__ = __mul__ = __rmul__ = __truediv__ = __rtruediv__ = __neg__ = __abs__ = _stop
    __str__ = __repr__ = __format__ = __int__ = __float__ = __index__ = _stop
    __class__ = __dataclass_fields__ = property(_stop)


UNREAD: Any = _Unread()


@contextmanager
def as_far_as_read() -> Iterator[None]:
    """Do what stands in the block until it asks for what cannot be read; any other error stays one.

    What is written in C refuses it by its type, and names that.
    """
    try:
        yield
    except UnreadError:
        pass
    except TypeError as error:
        if _Unread.__name__ not in str(error):
            raise
