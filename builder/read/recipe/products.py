"""`products.yaml` becomes the kinds of product that a recipe may be: those of the library, and the studio's own.

Decided: a studio's own kind of product has to say which kinds of the library it is like; `Product.is_any_of` asks for both names. Why: rows
of tables that name kinds would pass it in silence.

Decided: the usual pH of a studio's own kind is what it states, else that of its name, else from the lowest to the highest of what it is
like; a cream that the soap of a mild alkali holds is judged as alkaline as that soap. Why: an acid preservative fails there, and nobody
would be told.
"""

from dataclasses import replace

from builder.model.finding import Finding
from builder.model.place import Place
from builder.model.recipe.figure import Figure
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.read.known import NamesKnown
from builder.read.shapes.library import NamedPhShape, OwnProductShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import fit_each
from builder.words.fold import fold


def read_own_products(placed: PlacedData, known: NamesKnown, findings: list[Finding]) -> dict[str, Product]:
    """Read a studio's own kinds, keyed by their names; each says which kinds of the library it is like.

    What stands in place of one that cannot be read keeps its recipes from being faulted for it; the finding holds everything back.
    """
    made = {entry.key: _with_ph(shape.make(entry), shape, known) for shape, entry in fit_each(OwnProductShape, placed, findings, known)}
    unread = [name for name in placed.data if name not in made] if isinstance(placed.data, dict) else []
    return {**made, **{name: _stand_in(name, placed.inside(name).data, placed.key_place(name)) for name in unread}}


def read_usual_ph(placed: PlacedData, known: NamesKnown, findings: list[Finding]) -> dict[str, Figure]:
    """Read the pH of products that are no kind of the library, keyed by their folded names."""
    return {fold(name): shape.make(entry) for shape, entry in fit_each(NamedPhShape, placed, findings, known) for name in shape.names}


def with_own(shipped: dict[str, Product], own: dict[str, Product]) -> dict[str, Product]:
    """Return the kinds of the library and the studio's own, which take the place of those of the same name."""
    taken = {fold(name) for name in own}
    return {**{name: product for name, product in shipped.items() if fold(name) not in taken}, **own}


def _stand_in(name: str, data: object, place: Place) -> Product:
    """Return a kind of product with what of it can be told, the stricter where it cannot."""
    said = data if isinstance(data, dict) else {}
    contact = said.get("contact")
    made_with_lye = str(said.get("made with lye")).casefold() == "yes"
    where = Contact(contact) if contact in tuple(Contact) else Contact.LEAVE_ON
    return Product(name, name, where, made_with_lye, DeclaredBy.WEIGHT, place=place)


def _with_ph(product: Product, shape: OwnProductShape, known: NamesKnown) -> Product:
    return product if product.usual_ph else replace(product, usual_ph=_ph_by_name(product.name, known) or _ph_of_its_like(shape))


def _ph_by_name(name: str, known: NamesKnown) -> Figure | None:
    """Return the usual pH of products whose name stands in a name as whole words, the longest first."""
    words = f" {fold(name)} "
    met = [one for one in known.usual_ph if f" {one} " in words]
    return known.usual_ph[max(met, key=len)] if met else None


def _ph_of_its_like(shape: OwnProductShape) -> Figure | None:
    """Return what the kinds that a kind is like usually have: from the lowest to the highest of them."""
    figures = {one.name: one.usual_ph for one in shape.like if one.usual_ph}
    if not figures:
        return None
    first = next(iter(figures.values()))
    low, high = min(one.low for one in figures.values()), max(one.highest for one in figures.values())
    return replace(first, low=low, high=high, at=f"as of {' and '.join(figures)}")
