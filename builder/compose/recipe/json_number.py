"""A worked number in JSON: an exact fraction that loses nothing, and the same as a decimal of twelve significant digits."""

from decimal import Context
from fractions import Fraction

Json = dict[str, "Json"] | list["Json"] | str | int | float | bool | None


def number(value: Fraction) -> Json:
    """Return a worked number, exact and as a decimal."""
    decimal = Context(prec=12).divide(value.numerator, value.denominator)
    return {"exact": f"{value.numerator}/{value.denominator}" if value.denominator != 1 else str(value.numerator), "value": float(decimal)}
