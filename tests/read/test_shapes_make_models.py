"""A shape makes its model: what has one name has one type on both sides, and nothing that a shape reads is left lying.

`Shape.make` takes over by name what the type checker cannot follow; the pairs are gathered while whole studios are read.
"""

import re
from collections.abc import Sequence
from dataclasses import fields
from pathlib import Path
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

import pytest

from builder.library import CONTENT
from builder.model.remembered import forget
from builder.read.shapes.shape import Shape
from builder.read.studios import read_studio

pytestmark = pytest.mark.long
ROOT = Path(__file__).parents[2]
READ = ROOT / "builder" / "read"
STUDIOS = (ROOT / "site_example", ROOT / "tests" / "usual" / "studio")


# Classes, and what is in them: a class, or its origin with the same of its parts.
Hints = frozenset[Any]
# A shape, the class of the model value that it makes, and the names that it gives over by hand.
Pair = tuple[type[Shape], type[Any], frozenset[str]]


@pytest.fixture(scope="module")
def pairs(
    tmp_path_factory: pytest.TempPathFactory,
) -> list[Pair]:
    found = set()
    make = Shape.make

    def remember(
        self: Shape,
        model: type[Any],
        **others: Any,
    ) -> Any:
        found.add((type(self), model, frozenset(others)))
        return make(self, model, **others)

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(Shape, "make", remember)
        patched.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("empty")))
        forget()
        for studio in STUDIOS:
            read_studio(studio, CONTENT)
    forget()
    return sorted(found, key=lambda pair: (pair[0].__name__, pair[1].__name__))


def plain(
    hint: Any,
) -> Hints:
    """Return the types that a hint allows, without what a shape adds to read them: each a class, or its origin with what is in it."""
    if get_origin(hint) is Annotated:
        return plain(get_args(hint)[0])
    if get_origin(hint) in (Union, UnionType):
        return frozenset[Any]().union(*(plain(one) for one in get_args(hint)))
    inner = tuple(plain(one) for one in get_args(hint) if one is not Ellipsis)
    return frozenset([(get_origin(hint), inner) if inner else hint])


def test_what_has_one_name_has_one_type(
    pairs: Sequence[Pair],
) -> None:
    assert len(pairs) >= 15
    for shape, model, others in pairs:
        of_shape, of_model = get_type_hints(shape, include_extras=True), get_type_hints(model)
        for field in fields(model):
            if field.name in shape.model_fields and field.name not in others:
                assert fits(plain(of_shape[field.name]), plain(of_model[field.name])), f"{shape.__name__}.{field.name} for {model.__name__}"


def fits(
    given: Hints,
    wanted: Hints,
) -> bool:
    """Tell whether all that a shape can read is among what the model allows; a dict stands for a mapping, a class for its base."""
    return all(any(is_a(one, other) for other in wanted) for one in given)


def is_a(
    given: Any,
    wanted: Any,
) -> bool:
    if isinstance(given, tuple) and isinstance(wanted, tuple):
        return issubclass(given[0], wanted[0]) and len(given[1]) == len(wanted[1]) and all(map(fits, given[1], wanted[1]))
    return given == wanted or (isinstance(given, type) and isinstance(wanted, type) and issubclass(given, wanted))


def test_nothing_that_a_shape_reads_is_left_lying(
    pairs: Sequence[Pair],
) -> None:
    readers = "\n".join(path.read_text(encoding="utf-8") for path in READ.rglob("*.py"))
    for shape in {shape for shape, _, _ in pairs}:
        taken = set().union(*({field.name for field in fields(model)} | others for one, model, others in pairs if one is shape))
        for name in shape.model_fields.keys() - taken:
            assert re.search(rf"\.{name}\b", readers), f"nobody takes {shape.__name__}.{name}"
