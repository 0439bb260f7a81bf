"""Pickles in which a constant of one of our modules is that constant again where it is read, so that it is the same value there too."""

import importlib
import io
import pickle
import sys
from typing import Any

_OURS = "builder."
# Read as themselves anyway, or compared by what they are.
_PLAIN = (str, bytes, int, float, bool, type(None), type, type(sys), type(importlib.import_module), type(len))


class UnkeptError(Exception):
    """There is a value that nothing may be kept of."""


def dumps(value: object, never: tuple[type, ...] = ()) -> bytes:
    """Write a value. Raises UnkeptError where it holds one of the types that are `never` to be written."""
    file = io.BytesIO()
    names = _names()

    class Pickler(pickle.Pickler):
        def persistent_id(self, one: object) -> str | None:
            if issubclass(type(one), never):
                raise UnkeptError
            return names.get(id(one))

    Pickler(file, protocol=5).dump(value)
    return file.getvalue()


def loads(data: bytes | memoryview) -> object:
    """Read a value. Raises whatever pickle raises."""
    value: object = _Unpickler(io.BytesIO(data)).load()
    return value


class _Unpickler(pickle.Unpickler):
    def persistent_load(self, name: str) -> Any:
        module, _, constant = name.partition(":")
        return getattr(importlib.import_module(module), constant)


def _names() -> dict[int, str]:
    """Return where each constant of our modules stands, by its identity: in the module that was loaded first."""
    found: dict[int, str] = {}
    for name, module in [*sys.modules.items()]:
        if name.startswith(_OURS):
            for constant, value in vars(module).items():
                if not issubclass(type(value), _PLAIN) and not constant.startswith("__"):
                    found.setdefault(id(value), f"{name}:{constant}")
    return found
