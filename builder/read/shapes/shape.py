"""What all shapes have in common: unknown keys are refused, keys may have spaces, and each key may show an example of its value.

A shape says which value of the model it makes (`read/makes.py`).
"""

from collections.abc import Mapping
from typing import Any, ClassVar

from pydantic import AliasChoices, BaseModel, ConfigDict, Field

from builder.words.spelling import american


class Shape(BaseModel):
    """A mapping of a file whose keys are all known."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)
    stands_at: ClassVar[str] = ""

    @classmethod
    def declared(cls) -> Mapping[str, tuple[str, Any]]:
        """Return each field with its key and its type."""
        return {name: (str(info.alias), info.annotation) for name, info in cls.model_fields.items()}


def needed(key: str, example: str = "") -> Any:
    """Declare a key that must be there."""
    return Field(alias=key, validation_alias=_spellings(key), examples=[example] if example else None)


def maybe(key: str, default: Any = None, example: str = "") -> Any:
    """Declare a key that may be left out."""
    return Field(default, alias=key, validation_alias=_spellings(key), examples=[example] if example else None)


def _spellings(key: str) -> str | AliasChoices:
    """Return the key, or the key in both spellings: `to colour` may be typed `to color`."""
    return key if american(key) == key else AliasChoices(key, american(key))
