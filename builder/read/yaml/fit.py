"""Data of a file becomes a shape, or findings: each with the place of the value that it is about, and none hides another."""

from collections.abc import Iterator
from typing import TypeVar

from pydantic import ValidationError

from builder.model.finding import Finding, stop
from builder.read.known import NOTHING_KNOWN, Known
from builder.read.shapes.shape import Shape
from builder.read.yaml.faults import explain_faults
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Step

S = TypeVar("S", bound=Shape)


def fit(shape: type[S], placed: PlacedYaml, findings: list[Finding], *path: Step, known: Known = NOTHING_KNOWN) -> S | None:
    """Fit the data at a path to a shape; where it does not fit, add what is wrong and give None."""
    try:
        return shape.model_validate(placed.at(*path), context=known)
    except ValidationError as error:
        findings.extend(explain_faults(error.errors(include_url=False), shape, placed, path))
        return None


def fit_each(shape: type[S], placed: PlacedYaml, findings: list[Finding], known: Known = NOTHING_KNOWN) -> Iterator[tuple[str, S]]:
    """Fit each entry of a file that lists things by name; the entries that do not fit are left out."""
    if not isinstance(placed.data, dict):
        wrong = "A set of named values is wanted in this file."
        findings.append(stop("wrong-kind-of-value", placed.place(), wrong, 'Begin each entry with its name and a colon: "name:".'))
        return
    for key in placed.data:
        fitted = fit(shape, placed, findings, key, known=known)
        if fitted is not None:
            yield key, fitted
