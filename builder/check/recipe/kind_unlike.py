"""A studio's own kind of product is made with lye and what it is like is not, or the other way round."""

from collections.abc import Iterator

from builder.check.rule import STUDIO_UNWORKED, rule_on
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.studio import Studio
from builder.model.subject import Subject, UnusedCard, WholeRecipe


@rule_on(
    STUDIO_UNWORKED,
    FindingKind(
        "kind-unlike", STOP, "A kind of product of the studio's own is made with lye and what it is like is not, or the other way round."
    ),
)
def find_kinds_unlike(studio: Studio) -> Iterator[Finding]:
    """Compare each kind of the studio's own with the kinds of the library whose limits it takes over."""
    for kind in studio.products.values():
        others = [name for name in kind.like if name in studio.products and studio.products[name].made_with_lye is not kind.made_with_lye]
        recipes: frozenset[Subject] = frozenset(WholeRecipe(key) for key, recipe in studio.recipes.items() if recipe.product == kind.name)
        if others:
            is_made, are_made = ("is", "is not") if kind.made_with_lye else ("is not", "is")
            yield stop(
                "kind-unlike",
                kind.place,
                f'"{kind.name}" {is_made} made with lye, and {others[0]}, which it is like, {are_made}. Its limits and warnings would be '
                "those of another thing.",
                "Under `like:` name kinds that are made in the same way, or correct `made with lye:`.",
                about=recipes or frozenset({UnusedCard(kind.place.file)}),
            )
