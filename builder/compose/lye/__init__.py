"""Lye and soap in words. A sentence that calms is written only where the range proves it."""
