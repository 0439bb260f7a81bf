"""Data of a file becomes a shape, or findings: each with the place of the value that it is about, and none hides another."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from pydantic import ValidationError

from builder.model.finding import Finding, stop
from builder.model.recipe.figure import Figure, Source
from builder.model.recipe.product import Product
from builder.read.shapes.shape import Shape
from builder.read.yaml.faults import explain_faults
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Step

S = TypeVar("S", bound=Shape)


@dataclass(frozen=True)
class Known:
    """What a text may name: the sources and the kinds of product that have been read before it, and the sources that cannot be read.

    `allergens` are the folded names of the substances in the table of fragrance allergens, `languages` those of labels beside English.
    `oils` are the names of the oils in the table of constituents, by their folded names; `regions` the names of those in `regions.yaml`.
    `usual_ph` are the figures of `usual_ph.yaml` by the folded names of products, `kinds_meant` kinds of product by other words for them.
    """

    sources: Mapping[str, Source] = field(default_factory=dict)
    products: Mapping[str, Product] = field(default_factory=dict)
    unread_sources: frozenset[str] = frozenset()
    allergens: frozenset[str] = frozenset()
    languages: tuple[str, ...] = ()
    oils: Mapping[str, str] = field(default_factory=dict)
    regions: tuple[str, ...] = ()
    usual_ph: Mapping[str, Figure] = field(default_factory=dict)
    kinds_meant: Mapping[str, str] = field(default_factory=dict)


NOTHING_KNOWN = Known()


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
