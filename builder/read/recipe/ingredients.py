"""Ingredient cards become ingredients, found by every name that they answer to; the studio's own replace those of the library."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.declaration import Range
from builder.model.recipe.figure import Figure, Figures
from builder.model.recipe.ingredient import AllergenStatement, Certificate, DropMass, Ingredient, LabelName, Preserves
from builder.read.known import Known
from builder.read.recipe.constants import WATER_DENSITY
from builder.read.recipe.figures import make_figures
from builder.read.shapes.card import CardShape, FiguresShape
from builder.read.shapes.figure import RELATIVE_DENSITY
from builder.read.shapes.label_name import CertificateShape, LabelNameShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold
from builder.words.within import Spelled, spelled

FINDS = (FindingKind("name-taken-twice", STOP, "Two cards answer to the same name."),)


def read_ingredient(placed: PlacedYaml, known: Known, constants: Mapping[str, Figure], findings: list[Finding]) -> Ingredient | None:
    """Read one card; None where it cannot be made."""
    shape = fit(CardShape, placed, findings, known=known)
    if shape is None:
        return None
    figures: dict[str, Figures] = {}
    for field, info in FiguresShape.model_fields.items():
        name, entries = str(info.alias), getattr(shape.figures, field)
        if entries:
            made = make_figures(entries, placed, "figures", name)
            figures[name] = _in_grams_per_millilitre(made, constants) if name == "density" else made
    drops, colours = shape.drop_mass, shape.colour_name
    plain = shape.label_name.plain[0] if shape.label_name else ""
    return shape.make(
        Ingredient,
        name=Spelled(shape.name, shape.in_a_sentence) if shape.in_a_sentence else spelled(shape.name, plain),
        label_name=_label_name(shape.label_name, shape.label_shares) if shape.label_name else None,
        colour_name={region: name for region, name in (("us", colours.us), ("eu", colours.eu)) if name} if colours else {},
        allergen_statement=shape.allergen_statement.make(AllergenStatement) if shape.allergen_statement else None,
        certificate=_certificate(shape.certificate) if shape.certificate else None,
        preserves=shape.preserves.make(Preserves) if shape.preserves else None,
        figures=figures,
        drop_mass=DropMass(drops.drops, drops.weigh, drops.measured) if drops else None,
        place=placed.place("name"),
        name_places={fold(name): placed.place("also called", number) for number, name in enumerate(shape.also_called)}
        | {fold(shape.name): placed.place("name")},
    )


def _label_name(shape: LabelNameShape, shares: Mapping[int, Range]) -> LabelName:
    colours, nano = shape.numbers(shape.colours), shape.numbers(shape.nano)
    return LabelName(shape.inci, shape.plain, shape.known, shares, shape.first_below, colours, nano)


def _certificate(shape: CertificateShape) -> Certificate:
    at_most = {contact: most for contact, (_, most) in shape.at_most.items()}
    return shape.make(Certificate, at_most=at_most)


def index_ingredients(shipped: Iterable[Ingredient], own: Iterable[Ingredient], findings: list[Finding]) -> dict[str, Ingredient]:
    """Key ingredients by every name they answer to; each name may belong to one card only."""
    shipped = tuple(shipped)
    theirs = {card.key: card for card in shipped}
    own = tuple(replace(card, replaces=theirs.get(card.key)) for card in own)
    replaced = {card.key for card in own}
    index: dict[str, Ingredient] = {}
    for card in (*(card for card in shipped if card.key not in replaced), *own):
        names = (card.name, *card.also_called)
        others = {fold(name): index[fold(name)] for name in names if fold(name) in index}
        for name in names:
            index.setdefault(fold(name), card)
        for key in list(others)[:1]:
            findings.append(_taken_twice(card, key, others[key]))
    return index


def _taken_twice(card: Ingredient, key: str, other: Ingredient) -> Finding:
    name = other.name if key == other.key else key
    where = "that ships" if other.place.ships else f"in {other.place.file}"
    wrong = f'The card of "{other.name}" {where} answers to "{name}" as well, so a recipe could mean either.'
    return stop("name-taken-twice", card.name_places[key], wrong, "Let only one of the two cards answer to that name.")


def _in_grams_per_millilitre(figures: Figures, constants: Mapping[str, Figure]) -> Figures:
    def converted(figure: Figure) -> Figure:
        if figure.unit != RELATIVE_DENSITY:
            return figure
        water = constants[WATER_DENSITY].typical
        note = "; ".join(part for part in (figure.note, "published as relative density") if part)
        high = None if figure.high is None else figure.high * water
        return replace(figure, low=figure.low * water, high=high, unit="g/mL", note=note)

    return Figures(converted(figures.in_use), tuple(converted(figure) for figure in figures.others))
