"""One change at a time in the source of a module: a comparison, a number, a sign, `and`, `or`, `not`, `True`.

What a call takes for granted of its arguments (`strict=True`) is left as it is: nothing that comes out shows it.
"""

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import CodeType

_OTHER: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.In: ast.NotIn,
    ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.And: ast.Or, ast.Or: ast.And,
}  # fmt: skip
_SUMS = ("Lt", "LtE", "Gt", "GtE", "Add", "Sub", "Mult", "Div")


@dataclass(frozen=True)
class Change:
    """The line of a change, what is there, and what makes it in the tree that it was found in."""

    line: int
    what: str
    make: Callable[[], None]

    @property
    def is_sum(self) -> bool:
        """Tell whether it changes arithmetic, or which of two is more."""
        return self.what in _SUMS or self.what.isdecimal()


def changes_of(tree: ast.Module) -> list[Change]:
    """Return each change that can be made in the functions of a module, once."""
    functions = [one for one in ast.walk(tree) if isinstance(one, ast.FunctionDef)]
    nodes = {id(node): node for function in functions for statement in function.body for node in ast.walk(statement)}
    granted = {id(node.value) for node in nodes.values() if isinstance(node, ast.keyword) and node.arg == "strict"}
    return [change for key, node in nodes.items() if key not in granted for change in _of(node)]


def _of(node: ast.AST) -> Iterator[Change]:
    match node:
        case ast.Compare(ops=[op]) if type(op) in _OTHER:
            yield Change(node.lineno, type(op).__name__, lambda: setattr(node, "ops", [_OTHER[type(op)]()]))
        case ast.BoolOp(op=op) | ast.BinOp(op=op) if type(op) in _OTHER:
            yield Change(node.lineno, type(op).__name__, lambda: setattr(node, "op", _OTHER[type(op)]()))
        case ast.UnaryOp(op=ast.Not()):
            # Twice: what was denied is asked.
            yield Change(node.lineno, "Not", lambda: setattr(node, "operand", ast.UnaryOp(ast.Not(), node.operand)))
        case ast.Constant(value=bool() as value):
            yield Change(node.lineno, f"{value}", lambda: setattr(node, "value", not value))
        case ast.Constant(value=int() as number):
            yield Change(node.lineno, f"{number}", lambda: setattr(node, "value", number + 1))


def codes_of(code: CodeType) -> dict[str, CodeType]:
    """Return the code of every function and method of a module, by its qualified name."""
    found: dict[str, CodeType] = {}
    for one in (const for const in code.co_consts if isinstance(const, CodeType)):
        found[one.co_qualname] = one
        found |= codes_of(one)
    return found
