"""Data that does not fit a shape becomes what of it can be read, with `UNREAD` in place of all else.

What goes together is judged too, as far as it is read: a validator of a shape that asks for what is not read falls silent, and what it
refuses is found, and is not read either.

Decided: a key that has no meaning stands for the key that is near to it and absent, or, near to none, for any that is absent. Why: what
is meant by it is said, and is not found missing.
"""

from contextlib import suppress
from dataclasses import dataclass, replace
from inspect import isclass, signature
from types import SimpleNamespace
from typing import Annotated, Any, TypeVar, get_args, get_origin

from pydantic import AfterValidator, AliasChoices, PlainValidator, TypeAdapter, ValidationError
from pydantic.fields import FieldInfo

from builder.model.finding import Finding
from builder.model.recipe.unread import UNREAD, as_far_as_read
from builder.read.known import NOTHING_KNOWN, NamesKnown
from builder.read.makes import Makes
from builder.read.shapes.fields import NOT_EMPTY
from builder.read.shapes.shape import Shape
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.yaml.fit import fit
from builder.words.nearest import nearest

M = TypeVar("M")


def made_in_part(
    shape: type[Makes[M]], placed: PlacedData, findings: list[Finding], known: NamesKnown = NOTHING_KNOWN, **others: Any
) -> tuple[M | None, bool]:
    """Make what a shape makes of some data, and tell whether all of it can be read; else of what can be, and None where nothing can."""
    whole: Any = fit(shape, placed, findings, known)
    left = _Reading(known, findings).shape(shape, placed) if whole is None else whole  # type: ignore[arg-type]
    return None if left is UNREAD else left.make(replace(placed, is_whole=whole is not None), **others), whole is not None


@dataclass(frozen=True)
class _Reading:
    """What data may name, and the findings to which is added what does not go together in them."""

    known: NamesKnown
    findings: list[Finding]

    def shape(self, shape: type[Shape], placed: PlacedData) -> Any:
        """Make a shape of what can be read of some data."""
        data = placed.data
        if not isinstance(data, dict):
            return UNREAD
        fields = {str(info.alias): (name, info) for name, info in shape.model_fields.items()}
        written = {key: spelled for key, (_, info) in fields.items() for spelled in _spellings(info) if spelled in data}
        absent = [key for key in fields if key not in written]
        strange = data.keys() - set(written.values())
        meant = {near for key in strange for near in nearest(str(key), absent, most=1) or absent}
        values = {}
        for key, (name, info) in fields.items():
            if key in meant or (key in absent and info.is_required()):
                values[name] = UNREAD
            elif key in written:
                values[name] = self.value(info.annotation, info.metadata, placed.inside(written[key]))
        for name in shape.__pydantic_decorators__.model_validators:
            error = self._refused_by(name, shape, values)
            if error is not None:
                found = placed.refused(error)
                self.findings.extend([] if found in self.findings else [found])
                if not error.at:
                    return UNREAD
                values[fields[str(error.at[0])][0]] = UNREAD
        return shape.model_construct(**values)

    def _refused_by(self, validator: str, shape: type[Shape], values: dict[str, Any]) -> TextError | None:
        """Return what does not go together by one validator. What is not read is not there to be asked for."""
        read = shape.model_construct(**values)
        for name in [name for name, value in values.items() if value is UNREAD]:
            del read.__dict__[name]
        judge = getattr(read, validator)
        try:
            with as_far_as_read(), suppress(AttributeError, LookupError):
                judge(*[SimpleNamespace(context=self.known)] * len(signature(judge).parameters))
        except TextError as error:
            return error
        return None

    def value(self, kind: Any, judged_by: list[Any], placed: PlacedData) -> Any:
        """Return the value of one field; where it does not fit, what of it can be read, if it can be told apart from the rest."""
        try:
            return TypeAdapter(Annotated[kind, *judged_by] if judged_by else kind).validate_python(placed.data, context=self.known)
        except ValidationError:
            parts = self._parts(kind, placed) if placed.data else UNREAD
            as_a_whole = any(isinstance(one, AfterValidator | PlainValidator) and one is not NOT_EMPTY for one in judged_by)
            return UNREAD if as_a_whole else parts

    def _parts(self, kind: Any, placed: PlacedData) -> Any:
        inside, origin, given = get_args(kind), get_origin(kind), placed.data
        if hasattr(kind, "__metadata__"):
            return self.value(inside[0], list(kind.__metadata__), placed)
        if type(None) in inside:
            return self.value(next(one for one in inside if one is not type(None)), [], placed)
        if isclass(kind) and issubclass(kind, Shape):
            return self.shape(kind, placed)
        if origin is tuple and inside[1:] == (...,) and isinstance(given, list):
            return tuple(self.value(inside[0], [], placed.inside(number)) for number in range(len(given)))
        if origin is dict and isinstance(given, dict):
            return {key: self.value(inside[1], [], placed.inside(key)) for key in given}
        return UNREAD


def _spellings(info: FieldInfo) -> tuple[str, ...]:
    both = info.validation_alias
    return tuple(map(str, both.choices)) if isinstance(both, AliasChoices) else (str(info.alias),)
