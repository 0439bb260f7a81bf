"""What a label says, in the words of its region: a front with what it is and how much, a back with what is in it, how to use and keep it,
who made it, and the batch."""

from dataclasses import dataclass
from datetime import date

from builder.compose.batch_codes import batch_code
from builder.compose.dates import locale_of, plain_date
from builder.compose.label_warnings import warnings_of
from builder.compose.label_words import ingredient_text, net_contents, variant_name
from builder.compose.wording import NBSP, keep_together, sentence
from builder.model.batch_sheet import BatchSheet, Variant
from builder.model.class_sheet import ClassSheet, MadeSheet
from builder.model.durability import MOST_DATED, Durability, durability_in
from builder.model.studio import Profile, Studio
from builder.model.studio_class import Format

NOT_FOR_SALE = "Made by hand in a class. Not tested for sale."


@dataclass(frozen=True)
class Run:
    """A stretch of text in one face, or a line to write on (`blank`, in millimetres)."""

    text: str
    bold: bool = False
    blank: float = 0.0


Paragraph = tuple[Run, ...]


@dataclass(frozen=True)
class LabelText:
    """The text of one label.

    `lines` are the day, whose it is, and the batch; what is not known is a line to write on. The back begins with the ingredient list.
    """

    identity: str
    name: str
    variant: str
    lines: tuple[Paragraph, ...]
    net: Paragraph
    back: tuple[Paragraph, ...]


def label_text(studio: Studio, sheet: ClassSheet, made: MadeSheet, filled: BatchSheet, variant: Variant, pot: str) -> LabelText:
    """Write the label of one variant from one pot."""
    profile, recipe = studio.profile, filled.recipe
    # What students take home from a demonstration of soap comes from an earlier batch: it has had time to cure.
    from_before = filled.product.made_with_lye and sheet.studio_class.format is Format.DEMO
    made_on = sheet.date.on.date() if sheet.date and not from_before else None
    code = "" if from_before else batch_code(studio, sheet, made, pot)
    locale = locale_of(profile.region)
    net = net_contents(filled, profile.region)
    day = Run(f"Made{NBSP}{plain_date(made_on, locale).replace(' ', NBSP)}") if made_on else Run("Made on ")
    batch = Run(f"Batch:{NBSP}{code}" if code else "Batch: ", bold=True)
    return LabelText(
        identity=sentence(filled.product.identity),
        name=recipe.name,
        variant=sentence(variant_name(variant)),
        lines=(
            (day,) if made_on else (day, Run("", blank=18)),
            (Run("By "), Run("", blank=18)),
            (batch,) if code else (batch, Run("", blank=14)),
        ),
        net=(Run(net, bold=True),)
        if net
        else (Run("Net Wt " if profile.region == "US" else "Net weight ", bold=True), Run("", bold=True, blank=14)),
        back=tuple(
            paragraph
            for paragraph in (
                (Run("Ingredients: ", bold=True), Run(ingredient_text(variant.ingredients, studio.labelling.region))),
                (*_directions(recipe.directions), Run(" ".join(warnings_of(studio, filled, variant)), bold=True)),
                _keeping(filled, made_on, locale, profile.region),
                (Run(f"Made at {maker(profile)}. {NOT_FOR_SALE}"),),
            )
            if any(run.text or run.blank for run in paragraph)
        ),
    )


def maker(profile: Profile) -> str:
    """Give who made it, where, and how to reach them."""
    return ", ".join((profile.name, *profile.address, *list(profile.contact.values())[:1]))


def _directions(directions: str) -> Paragraph:
    return (Run("Use: ", bold=True), Run(f"{directions} ")) if directions else ()


def _keeping(filled: BatchSheet, made_on: date | None, locale: str, region: str) -> Paragraph:
    """Say until when it is good and how to store it.

    Above 30 months the European Union asks for the time after opening and no date (Regulation 1223/2009 Art. 19(1)(c), read).
    """
    recipe = filled.recipe
    keeps = durability_in(recipe.keeps)
    parts: list[Run] = []
    if keeps and keeps.months > MOST_DATED and recipe.after_opening and region in ("EU", "UK"):
        parts.append(Run(f"Once opened, good for {keep_together(recipe.after_opening)}. "))
    elif recipe.keeps:
        until = _last_day(filled, made_on, keeps)
        parts += [Run("Best used before the end of ", bold=True)]
        parts += [Run(plain_date(until, locale).replace(" ", NBSP), bold=True)] if until else [Run("", blank=18)]
        parts += [Run(f" (keeps {recipe.keeps}). ")]
    return (*parts, Run(recipe.storage)) if recipe.storage else tuple(parts)


def _last_day(filled: BatchSheet, made_on: date | None, keeps: Durability | None) -> date | None:
    """Give the day to which it is good; None where it has to be written by hand. Soap counts from the end of its cure."""
    if made_on is None or keeps is None:
        return None
    if filled.product.made_with_lye and "cure" in filled.recipe.keeps:
        cure = durability_in(filled.recipe.cure.time) if filled.recipe.cure else None
        return keeps.after(cure.after(made_on)) if cure else None
    return keeps.after(made_on)
