"""What all shapes have in common: unknown keys are refused, keys may have spaces, and each key may show an example of its value."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Any, TypeVar

from pydantic import AliasChoices, BaseModel, ConfigDict, Field

from builder.words.spelling import american

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

    M = TypeVar("M", bound=DataclassInstance)


class Shape(BaseModel):
    """A mapping of a file whose keys are all known."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    def make(self, model: type[M], **others: Any) -> M:
        """Make a value of the model: fields of one name are taken over, `others` are the rest, or stand in place of what is written."""
        names = [field.name for field in fields(model) if field.init and field.name in type(self).model_fields]
        return model(**{name: getattr(self, name) for name in names if name not in others}, **others)


def needed(key: str, example: str = "") -> Any:
    """Declare a key that must be there."""
    return Field(alias=key, validation_alias=_spellings(key), examples=[example] if example else None)


def maybe(key: str, default: Any = None, example: str = "") -> Any:
    """Declare a key that may be left out."""
    return Field(default, alias=key, validation_alias=_spellings(key), examples=[example] if example else None)


def _spellings(key: str) -> str | AliasChoices:
    """Return the key, or the key in both spellings: `to colour` may be typed `to color`."""
    return key if american(key) == key else AliasChoices(key, american(key))
