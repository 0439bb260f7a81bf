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
from builder.model.batch_sheet import Variant
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.document import Document
from builder.model.studio_class import Format

STYLES = (*PAPER_STYLES, "labels.css")
FITS = {"US": ("plain", "tall", "wide"), "Canada": ("plain", "tall", "wide")}
OTHER_FITS = ("plain", "small", "tall", "wide")


def compose_labels(edition: Edition, sheet: ClassSheet) -> tuple[Document, ...]:
    """Make a label sheet for each product of one date."""
    return tuple(_compose_sheet(edition, sheet, made) for made in sheet.made if made.containers)


def _compose_sheet(edition: Edition, sheet: ClassSheet, made: MadeSheet) -> Document:
    profile = edition.studio.profile
    recipe, variants = made.batch.recipe, made.batch.variants
    labels = tuple(_label(edition, sheet, made, variants[number % len(variants)]) for number in range(made.containers))
    title = f"Labels: {recipe.name}"
    fits = FITS.get(profile.region, OTHER_FITS)
    maker = ", ".join((profile.name, *profile.address, *list(profile.contact.values())[:1]))
    view = LabelsView(sheet_frame(edition, title, title), title, " ".join(fits), fits[0], maker, labels)
    here = addresses.class_sheet(sheet, f"labels-{recipe.key}.pdf")
    return Document(here.folder, here.path, title, edition.templates.render("sheets/labels.html", view), STYLES)


def _label(edition: Edition, sheet: ClassSheet, made: MadeSheet, variant: Variant) -> LabelView:
    region, recipe = edition.studio.profile.region, made.batch.recipe
    # What students take home from a demonstration of soap comes from an earlier batch: it has had time to cure.
    from_before = made.batch.product.made_with_lye and sheet.studio_class.format is Format.DEMO
    return LabelView(
        identity=sentence(made.batch.product.identity),
        name=recipe.name,
        variant=sentence(variant_name(variant)),
        net_contents=net_contents(made.batch, region),
        ingredients=ingredient_text(variant.ingredients, region),
        directions=recipe.directions,
        cautions=recipe.label_cautions,
        batch="" if from_before else f"{sheet.studio_class.key}-{addresses.occasion(sheet)}".upper(),
        made_on=plain_date(sheet.date.on.date(), edition.locale) if sheet.date and not from_before else "",
    )
