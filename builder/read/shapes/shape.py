"""What all shapes have in common: unknown keys are refused, keys may have spaces, and each key may show an example of its value."""

from typing import Any

from pydantic import BaseModel, ConfigDict, Field


class Shape(BaseModel):
    """A mapping of a file whose keys are all known."""

    model_config = ConfigDict(extra="forbid", frozen=True)


def needed(key: str, example: str = "") -> Any:
    """Declare a key that must be there."""
    return Field(alias=key, examples=[example] if example else None)


def maybe(key: str, default: Any = None, example: str = "") -> Any:
    """Declare a key that may be left out."""
    return Field(default, alias=key, examples=[example] if example else None)
