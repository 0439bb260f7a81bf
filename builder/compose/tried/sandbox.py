"""What a template may do: show what its view holds, and no more of it than somebody could read.

A loop in a loop in a loop, a macro that asks for itself twice or a text a thousand million times as long would take minutes, or all of the
memory. What goes round in circles ends where the interpreter's own depth does.

Decided: what is made is counted, not how long it takes. Why: what is refused on one machine is refused on every other.
"""

from collections.abc import Callable, Iterable, Sized
from dataclasses import fields, is_dataclass
from functools import cache, wraps
from types import BuiltinMethodType
from typing import Any

from jinja2 import nodes
from jinja2.compiler import CodeGenerator, Frame
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment

# Signs of text that one document may be made of, and as how many of them a block counts that is carried out, such as one round of a loop.
MOST, BLOCK = 5_000_000, 10


class EndlessError(Exception):
    """A template asks for more than any document shows."""


class _Counting(CodeGenerator):
    """Lets each block count that is carried out, and each text that is put together."""

    def blockvisit(self, nodes: Iterable[nodes.Node], frame: Frame) -> None:
        self.writeline(f"environment.count({BLOCK})")
        super().blockvisit(nodes, frame)

    def visit_Concat(self, node: nodes.Concat, frame: Frame) -> None:  # noqa: N802
        self.write("environment.counted(")
        super().visit_Concat(node, frame)
        self.write(")")


class Sandbox(ImmutableSandboxedEnvironment):
    """Where templates are filled in. What makes texts from patterns is left out: how long they come out is not seen beforehand."""

    code_generator_class = _Counting
    intercepted_binops = frozenset(("*", "**", "+", "%"))

    def __init__(self, **options: Any) -> None:
        """Take out what has no bounds, and bound what makes much of little."""
        super().__init__(**options)
        self._left = MOST
        self.filters = {name: self._bounded(one) for name, one in self.filters.items() if name != "format"}
        self.globals = {name: one for name, one in self.globals.items() if name != "lipsum"} | {"range": self._range}

    def begin(self) -> None:
        """Count anew, for the next document."""
        self._left = MOST

    def count(self, signs: int) -> None:
        """Count what is made next. Raises EndlessError where that would be too much."""
        if signs > self._left:
            raise EndlessError
        self._left -= signs

    def counted(self, made: Any) -> Any:
        """Count what has been put together."""
        self.count(len(made) if isinstance(made, str | list) else 0)
        return made

    def getattr(self, obj: Any, attribute: str) -> Any:
        """Return a field of a view without looking into whether it may be seen: it is there to be shown, half a million times."""
        if attribute in _shown_of(obj.__class__):
            return getattr(obj, attribute)
        if isinstance(obj, str) and attribute in ("format", "format_map"):
            return self.undefined(obj=obj, name=attribute)
        return super().getattr(obj, attribute)

    def call(self, context: Context, called: Any, /, *values: Any, **named: Any) -> Any:
        """Count the numbers that a method of a text is called with."""
        if isinstance(called, BuiltinMethodType):
            self._count_whole_numbers((*values, *named.values()))
        return super().call(context, called, *values, **named)

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        """Count what comes of two values, a product before it is made. Raises TypeError."""
        if operator == "**" or (operator == "%" and isinstance(left, str)):
            raise TypeError
        if operator == "*":
            self.count(_extent(left) * _extent(right))
        return self.counted(super().call_binop(context, operator, left, right))

    def _bounded(self, one: Callable[..., Any]) -> Callable[..., Any]:
        """Count the numbers that stand behind the name of a filter, such as a width."""
        behind = 2 if hasattr(one, "jinja_pass_arg") else 1

        @wraps(one)
        def bounded(*values: Any, **named: Any) -> Any:
            self._count_whole_numbers((*values[behind:], *named.values()))
            return one(*values, **named)

        return bounded

    def _range(self, *ends: int) -> range:
        found = range(*ends)
        self._count_whole_numbers((found.stop - found.start,))
        return found

    def _count_whole_numbers(self, values: Iterable[Any]) -> None:
        self.count(sum(abs(one) for one in values if isinstance(one, int)))


def _extent(value: object) -> int:
    return len(value) if isinstance(value, Sized) else abs(value) if isinstance(value, int) else 0


@cache
def _shown_of(kind: type) -> frozenset[str]:
    """Return the names of the fields of a kind of view that are for everybody."""
    return frozenset(one.name for one in fields(kind) if not one.name.startswith("_")) if is_dataclass(kind) else frozenset()
