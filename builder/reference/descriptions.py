"""What each key of a shape means: the sentences that stand beneath its field in the code.

They are read from the source when somebody asks, so that a run that only reads a studio does not pay for them.
"""

import ast
import sys
from functools import cache
from inspect import getsource
from itertools import pairwise

from builder.read.shapes.library import CitationShape
from builder.read.shapes.shape import Shape


def about_field(shape: type[Shape], field: str) -> str:
    """Return what a field means; empty where nobody has said it. `source`, `at` and `known` mean the same wherever they stand."""
    for one in (*shape.__mro__, CitationShape):
        if issubclass(one, Shape):
            told = _descriptions(one.__module__).get((one.__name__, field))
            if told:
                return told
    return ""


def about_shape(shape: type[Shape]) -> str:
    """Return what a shape is."""
    return " ".join((shape.__doc__ or "").split())


@cache
def _descriptions(module: str) -> dict[tuple[str, str], str]:
    """Return the descriptions of a module by class and field."""
    found = {}
    for shape in ast.parse(getsource(sys.modules[module])).body:
        if isinstance(shape, ast.ClassDef):
            for field, after in pairwise(shape.body):
                if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
                    match after:
                        case ast.Expr(value=ast.Constant(value=str(text))):
                            found[shape.name, field.target.id] = " ".join(text.split())
    return found
