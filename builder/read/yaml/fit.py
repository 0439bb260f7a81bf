"""Data of a file becomes a shape, or findings: each with the place of the value that it is about, and none hides another."""

from collections.abc import Iterator
from typing import Any, TypeVar

from pydantic import ValidationError

from builder.model.finding import Finding, stop
from builder.read.known import NOTHING_KNOWN, NamesKnown
from builder.read.makes import Makes
from builder.read.shapes.shape import Shape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.faults import explain_faults

S = TypeVar("S", bound=Shape)
M = TypeVar("M")


def fit(shape: type[S], placed: PlacedData, findings: list[Finding], known: NamesKnown = NOTHING_KNOWN) -> S | None:
    """Fit some data to a shape; where it does not fit, add what is wrong and give None."""
    try:
        return shape.model_validate(placed.data, context=known)
    except ValidationError as error:
        findings.extend(explain_faults(error.errors(include_url=False), shape, placed))
        return None


def fit_each(
    shape: type[S], placed: PlacedData, findings: list[Finding], known: NamesKnown = NOTHING_KNOWN
) -> Iterator[tuple[S, PlacedData]]:
    """Fit each entry of a file that lists things by name, each with what stands under it; the entries that do not fit are left out."""
    if not isinstance(placed.data, dict):
        wrong = "A set of named values is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, 'Begin each entry with its name and a colon: "name:".'))
        return
    for entry in map(placed.inside, placed.data):
        fitted = fit(shape, entry, findings, known)
        if fitted is not None:
            yield fitted, entry


def each_made(shape: type[Makes[M]], placed: PlacedData, findings: list[Finding], known: NamesKnown = NOTHING_KNOWN) -> dict[str, M]:
    """Make what a shape makes of each entry of a file that lists things by name."""
    entries: Any = fit_each(shape, placed, findings, known)
    return {entry.key: fitted.make(entry) for fitted, entry in entries}
