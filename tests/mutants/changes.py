"""One change at a time in the source of a module: a comparison, a number, a sign, `and`, `or`, `not`, `True`."""

import ast
from collections.abc import Callable, Iterator
from types import CodeType

_OTHER: dict[type[ast.AST], type[ast.AST]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.In: ast.NotIn,
    ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.And: ast.Or, ast.Or: ast.And,
}  # fmt: skip


def changes_of(tree: ast.Module) -> Iterator[tuple[int, str, Callable[[], None]]]:
    """Yield each change that can be made in the functions of a module: its line, what it is, and what makes it in the tree."""
    for function in ast.walk(tree):
        if isinstance(function, ast.FunctionDef):
            for node in (one for statement in function.body for one in ast.walk(statement)):
                yield from _of(node)


def _of(node: ast.AST) -> Iterator[tuple[int, str, Callable[[], None]]]:
    match node:
        case ast.Compare(ops=[op]) if type(op) in _OTHER:
            yield node.lineno, type(op).__name__, lambda: setattr(node, "ops", [_OTHER[type(op)]()])
        case ast.BoolOp(op=op) | ast.BinOp(op=op) if type(op) in _OTHER:
            yield node.lineno, type(op).__name__, lambda: setattr(node, "op", _OTHER[type(op)]())
        case ast.UnaryOp(op=ast.Not()):
            # Twice: what was denied is asked.
            yield node.lineno, "Not", lambda: setattr(node, "operand", ast.UnaryOp(ast.Not(), node.operand))
        case ast.Constant(value=bool() as value):
            yield node.lineno, f"{value}", lambda: setattr(node, "value", not value)
        case ast.Constant(value=int() as number):
            yield node.lineno, f"{number}", lambda: setattr(node, "value", number + 1)


def codes_of(code: CodeType) -> dict[str, CodeType]:
    """Return the code of every function and method of a module, by its qualified name."""
    found: dict[str, CodeType] = {}
    for one in (const for const in code.co_consts if isinstance(const, CodeType)):
        found[one.co_qualname] = one
        found |= codes_of(one)
    return found
