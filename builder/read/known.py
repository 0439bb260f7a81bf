"""What has been read before a text, and may be named in it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.model.recipe.figure import Figure, Source
from builder.model.recipe.product import Product


@dataclass(frozen=True)
class NamesKnown:
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


NOTHING_KNOWN = NamesKnown()
