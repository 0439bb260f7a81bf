"""Label sheets: one label for each container, the variants taken in turn, so that each gets an equal share.

In the United States and Canada letters must be at least 1/16 in high (21 CFR 701.3(b); C.R.C. c. 417 s. 14): labels there grow into a
taller cell before their type gets smaller than that. Elsewhere the type may shrink first.
"""

from builder.compose import addresses
from builder.compose.dates import plain_date
from builder.compose.edition import Edition
from builder.compose.frames import PAPER_STYLES, sheet_frame
from builder.compose.label_words import ingredient_text, net_contents, variant_name
from builder.compose.views.labels import LabelsView, LabelView
from builder.compose.wording import sentence
from builder.model.batch_sheet import BatchSheet, Variant
from builder.model.class_sheet import ClassSheet
from builder.model.document import Document
from builder.model.studio_class import Format

STYLES = (*PAPER_STYLES, "labels.css")
FITS = {"US": ("plain", "tall", "wide"), "Canada": ("plain", "tall", "wide")}
OTHER_FITS = ("plain", "small", "tall", "wide")


def compose_labels(edition: Edition, sheet: ClassSheet) -> tuple[Document, ...]:
    """Make a label sheet for each product of one date."""
    fillings = [(made, filled, count) for made in sheet.made for filled, count in made.fillings if count]
    return tuple(_compose_sheet(edition, sheet, made.batch, filled, count) for made, filled, count in fillings)


def _compose_sheet(edition: Edition, sheet: ClassSheet, first: BatchSheet, filled: BatchSheet, count: int) -> Document:
    """Make the labels of one kind of container; the file of any but the recipe's own is named after the container too."""
    profile = edition.studio.profile
    recipe, variants = filled.recipe, filled.variants
    labels = tuple(_label(edition, sheet, filled, variants[number % len(variants)]) for number in range(count))
    other = "" if filled is first else recipe.fill.container.text
    title = f"Labels: {recipe.name}, {other}" if other else f"Labels: {recipe.name}"
    fits = FITS.get(profile.region, OTHER_FITS)
    maker = ", ".join((profile.name, *profile.address, *list(profile.contact.values())[:1]))
    view = LabelsView(sheet_frame(edition, title, title), title, " ".join(fits), fits[0], maker, labels)
    here = addresses.class_sheet(sheet, f"labels-{addresses.plain_name(f'{recipe.key} {other}')}.pdf")
    return Document(here.folder, here.path, title, edition.templates.render("sheets/labels.html", view), STYLES)


def _label(edition: Edition, sheet: ClassSheet, filled: BatchSheet, variant: Variant) -> LabelView:
    region, recipe = edition.studio.profile.region, filled.recipe
    # What students take home from a demonstration of soap comes from an earlier batch: it has had time to cure.
    from_before = filled.product.made_with_lye and sheet.format is Format.DEMO
    return LabelView(
        identity=sentence(filled.product.identity),
        name=recipe.name,
        variant=sentence(variant_name(variant)),
        net_contents=net_contents(filled, region),
        ingredients=ingredient_text(variant.ingredients, region),
        directions=recipe.directions,
        cautions=recipe.label_cautions,
        batch="" if from_before else f"{sheet.studio_class.key}-{addresses.occasion(sheet)}".upper(),
        made_on=plain_date(sheet.date.on.date(), edition.locale) if sheet.date and not from_before else "",
    )
