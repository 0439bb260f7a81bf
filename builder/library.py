"""Where `content/` and `layouts/` lie: beside the package in a checkout, inside it once installed."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _find(name: str) -> Path:
    inside = _PACKAGE / "library" / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


CONTENT = _find("content")
LAYOUTS = _find("layouts")
