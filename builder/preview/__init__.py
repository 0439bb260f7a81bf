"""A studio shown on this machine while it is written: nothing here writes a file, and nobody but this machine can ask for anything."""

from builder.preview.running import PortTakenError, Preview

__all__ = ["PortTakenError", "Preview"]
