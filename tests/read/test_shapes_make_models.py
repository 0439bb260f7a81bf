"""A shape makes its model: every field of a model value comes from somewhere, of the type that it has, and nothing that a shape reads is
left lying.

What goes over by its name cannot be followed by the type checker; here the types of both sides are compared, of every shape and row.
"""

import ast
import re
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import MISSING, fields
from inspect import getsource
from pathlib import Path
from types import UnionType
from typing import Annotated, Any, TypeGuard, Union, get_args, get_origin, get_type_hints

import pytest

from builder.model.recipe.quantity import Count
from builder.model.teaching.word_pattern import WordPattern
from builder.read import library_files  # noqa: F401
from builder.read.makes import Makes, conversions, made_by
from builder.read.roster import rosters  # noqa: F401
from builder.read.text.tables import Row
from tests.reference.test_keys import all_shapes

READ = Path(__file__).parents[2] / "builder" / "read"
# Classes, and what is in them: a class, or its origin with the same of its parts.
Hints = frozenset[Any]
# What is given over when the value is made, since it takes the groups of words beside it.
PATTERNS = tuple[WordPattern, ...]
MAKING: list[Any] = sorted({one for one in (*all_shapes(), *Row.__subclasses__()) if issubclass(one, Makes)}, key=lambda one: one.__name__)


def plain(hint: Any) -> Hints:
    """Return the types that a hint comes to in a model, without what a shape adds to read them."""
    if get_origin(hint) is Annotated:
        return plain(get_args(hint)[0])
    if get_origin(hint) in (Union, UnionType):
        return frozenset[Any]().union(*(plain(one) for one in get_args(hint)))
    if isinstance(hint, type) and issubclass(hint, Makes):
        maker: Any = hint
        return frozenset([made_by(maker)])
    inner = tuple(plain(one) for one in get_args(hint) if one is not Ellipsis)
    return frozenset([(get_origin(hint), inner) if inner else int if hint is Count else hint])


def fits(given: Hints, wanted: Hints) -> bool:
    """Tell whether all that a shape can give is among what the model allows; a dict stands for a mapping, a class for its base."""
    return all(any(is_a(one, other) for other in wanted) for one in given)


def is_a(given: Any, wanted: Any) -> bool:
    if given == wanted:
        return True
    if isinstance(given, tuple) and isinstance(wanted, tuple):
        return issubclass(given[0], wanted[0]) and len(given[1]) == len(wanted[1]) and all(map(fits, given[1], wanted[1]))
    return isinstance(given, type) and isinstance(wanted, type) and issubclass(given, wanted)


@pytest.mark.parametrize("shape", MAKING, ids=lambda shape: shape.__name__)
def test_what_goes_over_has_the_type_of_the_model(shape: Any) -> None:
    model: Any = made_by(shape)
    read, wanted, said = get_type_hints(shape, include_extras=True), get_type_hints(model), conversions(shape)
    defaults = {field.name for field in fields(model) if field.default not in (None, MISSING) or field.default_factory is not MISSING}
    for field in fields(model):
        worked_out = said.get(field.name) or getattr(getattr(shape, field.name, None), "fget", None)
        given = get_type_hints(worked_out)["return"] if worked_out else read.get(field.name)
        if worked_out or (field.name in shape.declared() and wanted[field.name] != PATTERNS):
            given = get_args(given)[0] if get_origin(given) is Annotated else given
            if get_origin(given) is dict and get_origin(wanted[field.name]) is tuple:
                given = tuple[get_args(given)[1], ...]  # type: ignore[misc]
            left = {type(None)} if field.name in defaults else set()
            assert fits(plain(given) - left, plain(wanted[field.name])), f"{field.name}: {given} for {wanted[field.name]}"


def test_nothing_that_a_shape_reads_is_left_lying() -> None:
    readers = "\n".join(path.read_text(encoding="utf-8") for path in READ.rglob("*.py"))
    assert len(MAKING) > 40
    for shape in MAKING:
        if "in type(self).model_fields" in getsource(shape):
            continue  # All that it has becomes one value.
        parts = re.findall(r"self\.made_as\((\w+)", getsource(shape))
        models: list[Any] = [made_by(shape), *(vars(sys.modules[shape.__module__])[part] for part in parts)]
        for name in shape.declared().keys() - {field.name for model in models for field in fields(model)}:
            assert re.search(rf"\.{name}\b", readers), f"nobody takes {shape.__name__}.{name}"


MOST_BY_HAND = 3


def copies(code: str) -> Iterator[tuple[int, str, int]]:
    """Yield each call that is handed several fields of one value as they are, or several cells of one row in whatever way: its line, the
    value, and how many of it.
    """
    for call in ast.walk(ast.parse(code)):
        if isinstance(call, ast.Call):
            handed = [*call.args, *(one.value for one in call.keywords)]
            of = Counter(ast.unparse(one.value) for one in handed if isinstance(one, ast.Attribute))
            of += Counter(row for one in handed for row in {ast.unparse(cell.value) for cell in ast.walk(one) if is_cell(cell)})
            yield from ((call.lineno, value, number) for value, number in of.items() if number > MOST_BY_HAND)


def is_cell(node: ast.AST) -> TypeGuard[ast.Subscript]:
    """Tell whether a piece of code asks for what stands under a name."""
    return isinstance(node, ast.Subscript) and isinstance(node.slice, ast.Constant) and isinstance(node.slice.value, str)


def test_no_value_is_made_by_naming_each_field_of_another() -> None:
    """A shape makes its value (`Shape.make`): who names its fields once more has declared them twice."""
    found = {str(path.relative_to(READ)): list(copies(path.read_text(encoding="utf-8"))) for path in READ.rglob("*.py")}
    assert {file: calls for file, calls in found.items() if calls} == {}


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ("Fill(shape.container, shape.weight, shape.measured, units=shape.units)", 1),
        ('Limit(text_of(row["role"]), row["at"], share_in(row["most"]), note=row["note"])', 1),
        ("Fill(shape.container, shape.weight, shape.measured)", 0),
        ("Fill(shape.container, shape.weight, other.measured, read(shape.units))", 0),
    ],
)
def test_fields_that_are_named_once_more_are_counted(code: str, found: int) -> None:
    assert len(list(copies(code))) == found
