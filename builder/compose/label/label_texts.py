"""What a label says, in the words of its region and in each of its languages: a front with what it is and how much, a back with what is in
it, how to use and keep it, who made it, and the batch.

Decided: English stands first and whole, then French, in paragraphs of their own; short words stand side by side, and what is alike stands
once. Why: a reader finds a warning in one piece.

Decided: the time after opening stands behind the sign of an open jar and in words. Why: the law asks for the sign (Regulation 1223/2009
Art. 19(1)(c)), and students read words.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from itertools import zip_longest

from builder.compose.label.label_languages import colon_of, day, glued, in_figures, joined, length_of_time, not_for_sale, said
from builder.compose.label.label_warnings import warnings_of
from builder.compose.label.label_words import chosen_in, ingredient_text, net_contents
from builder.compose.recipe.wording import NBSP, keep_together, sentence
from builder.model.keeping.durability import Durability
from builder.model.label.earlier_batch import EarlierBatch
from builder.model.label.ingredient_list import Variant
from builder.model.label.language import ENGLISH, Language
from builder.model.label.logo import Logo
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.recipe.product import Product
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.remembered import remembered
from builder.model.studio import Profile, Studio
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.jar import Jar
from builder.rules.durability import counts_from_the_cure, durability_in
from builder.rules.look.logo import logo_on_labels
from builder.words.fold import fold
from builder.words.invented import is_invented_address, is_invented_contact
from builder.words.say import say
from builder.words.scent import plain_scent
from builder.words.within import within

# To the studio that cuts such labels, on all of them: they are no labels yet.
NOT_YET = "NOT A LABEL YET"


@dataclass(frozen=True)
class Run:
    """A stretch of text in one face, or a line to write on (`blank`, in millimetres); in place of the line a `sign` may be drawn.

    `locale` is that of its language, by which a word may be broken; empty where it is in several or none.
    """

    text: str
    bold: bool = False
    blank: float = 0.0
    sign: str = ""
    locale: str = ""


# The sign of an open jar, before the months for which a product is good once opened (Regulation 1223/2009 Art. 19(1)(c), read; its
# look in annex VII from memory).
OPEN_JAR = Run("", blank=3.4, sign="open-jar")


Paragraph = tuple[Run, ...]


@dataclass(frozen=True)
class LabelText:
    """The text of one label.

    `lines` are the day, whose it is, and the batch; what is not known is a line to write on. The back begins with the ingredient list.
    `other_names` is the name in the other languages of the region, where it differs; `locales` are those of the name and of these, in turn.
    `brand` is whose product it is, which a `logo` may say in its place. `names_somebody`: its name is what one person calls it.
    """

    identity: str
    name: str
    variant: str
    lines: tuple[Paragraph, ...]
    net: Paragraph
    back: tuple[Paragraph, ...]
    other_names: tuple[str, ...] = ()
    brand: str = ""
    logo: Logo | None = None
    locales: tuple[str, ...] = ()
    names_somebody: bool = field(default=False, compare=False)

    @property
    def named(self) -> tuple[tuple[str, str], ...]:
        """Return the name and the other names, each with the locale of its language."""
        return tuple(zip_longest((self.name, *self.other_names), self.locales, fillvalue=""))

    def blanks(self) -> tuple[str, ...]:
        """Return in words what is left to be written by hand on it, beside whose it is."""
        parts = (
            (self.lines[0], say("the day on which it was made")),
            (self.lines[-1], say("its batch")),
            (sum(self.back, ()), say("its last day")),
            (self.net, say("its net weight")),
        )
        return tuple(words for runs, words in parts if any(run.blank and not run.sign for run in runs))


def label_text(studio: Studio, plan: ClassPlan, filled: WorkedBatch, jar: Jar) -> LabelText:
    """Write the label of one jar of a batch; of a package it says what is in a single unit. Jars that hold the same have one text."""
    return _text(studio, plan, filled, jar.filling, jar.variant, jar.pot.code)


@remembered(256)
def _text(studio: Studio, plan: ClassPlan, filled: WorkedBatch, filling: Filling, variant: Variant, of_pot: str) -> LabelText:
    profile, languages = studio.profile, studio.label_languages
    from_before = plan.comes_from_before(filled.product)
    earlier = earlier_of(plan, filled.product)
    made_on = plan.date.on.date() if plan.date and not from_before else earlier.made_on.date() if earlier else None
    code = of_pot if not from_before else earlier.batch if earlier else ""
    locale, colon = studio.region.locale, colon_of(languages)
    net = in_figures(net_contents(filled, filling, studio.region), languages)
    net_words = "Net Wt" if studio.region.with_ounces else said(languages, "Net weight")
    on = Run(f"{said(languages, 'Made')}{NBSP}{day(made_on, languages, locale)}") if made_on else Run(f"{said(languages, 'Made on')} ")
    batch = f"{said(languages, 'Batch')}{colon}"
    spoken: dict[str, str] = {}
    for language in languages:
        spoken.setdefault(glued(filled.recipe.told_in(language.name).name, language), language.locale)
    name, *other_names = spoken
    return LabelText(
        identity=joined(sentence(filled.product.identity_in(language)) for language in languages),
        name=name,
        other_names=tuple(other_names),
        locales=tuple(spoken.values()),
        brand=profile.name,
        logo=logo_on_labels(studio),
        variant=joined(_variant(studio, filled, variant, language) for language in languages),
        lines=(
            (on,) if made_on else (on, Run("", blank=18)),
            (Run(f"{said(languages, 'By')} "), Run("", blank=18)),
            (Run(f"{batch}{NBSP}{code}", bold=True),) if code else (Run(f"{batch} ", bold=True), Run("", blank=14)),
        ),
        net=(Run(net, bold=True),) if net else (Run(f"{net_words} ", bold=True), Run("", bold=True, blank=14)),
        back=tuple(
            paragraph
            for paragraph in (
                _ingredients(studio, variant, languages),
                *(_using(studio, filled, variant, language) for language in languages),
                _keeping(studio, filled, made_on, locale),
                (_told(f"{said(languages, 'Made at')} {_who_answers(profile, languages)} {not_for_sale(languages)}", languages),),
            )
            if any(run.text or run.blank for run in paragraph)
        ),
    )


def earlier_of(plan: ClassPlan, product: Product) -> EarlierBatch | None:
    """Return the earlier batch of which a product is taken home, where the date tells of it."""
    return plan.date.labels if plan.date and plan.comes_from_before(product) else None


def _who_answers(profile: Profile, languages: tuple[Language, ...]) -> str:
    """Return who made it, and who answers for it where that is somebody else."""
    who = profile.responsible
    if who is None:
        return f"{maker(profile)}."
    return f"{maker(profile)}. {said(languages, 'Responsible person')}{colon_of(languages)} {', '.join((who.name, *who.address))}."


def maker(profile: Profile) -> str:
    """Return who made it, where, and how to reach them; in place of what a new studio has for an example, what is to be written."""
    contact = list(profile.contact.values())[:1]
    missing = [
        *(["address"] if is_invented_address(profile.address) else ()),
        *(["mail"] if any(map(is_invented_contact, contact)) else ()),
    ]
    if missing:
        return f"{profile.name}: {NOT_YET}, {' and '.join(missing)} to be written into studio.yaml"
    return ", ".join((profile.name, *profile.address, *contact))


def _variant(studio: Studio, filled: WorkedBatch, variant: Variant, language: Language) -> str:
    """Return what was chosen, in one language: in the studio's words for it, or in those of the library for its card, in plain words.

    What was left out is said only where nothing was chosen, and a colour only where nothing else is offered.
    """
    own = filled.recipe.told_in(language.name).options
    taken = [chosen for _, chosen in variant.chosen if chosen is not None]
    scents = [one for one in taken if (card := studio.ingredient(one)) is None or card.kind != IngredientKind.COLOURANT]
    names = scents or chosen_in(variant)[:1]
    said = (own.get(fold(name)) or plain_scent(studio.name_in(language, name) or name) for name in names)
    return sentence(", ".join(within(name) for name in said))


def _told(text: str, languages: Sequence[Language], *, bold: bool = False) -> Run:
    """Return a text that is in one language; in several no patterns fit it."""
    return Run(text, bold, locale=languages[0].locale if len(languages) == 1 else "")


def _ingredients(studio: Studio, variant: Variant, languages: Sequence[Language]) -> Paragraph:
    region = studio.labelling.region
    listed = ingredient_text(variant.ingredients, region).replace("CI ", f"CI{NBSP}")
    return (_told(f"{region.says('heading')}{colon_of(languages)} ", languages, bold=True), Run(listed, locale=ENGLISH.locale))


def _using(studio: Studio, filled: WorkedBatch, variant: Variant, language: Language) -> Paragraph:
    """Return in words how to use it and what to beware of; where a label has several languages, also how to store it."""
    told, word = filled.recipe.told_in(language.name), f"{language.on_label('Use')}{colon_of((language,))} "
    one = (language,)
    uses = (_told(word, one, bold=True), _told(f"{glued(told.directions, language)} ", one)) if told.directions else ()
    warnings = _told(glued(" ".join(warnings_of(studio, filled, variant, language)), language), one, bold=True)
    apart = len(studio.label_languages) > 1 and told.storage
    return (*uses, warnings, _told(f" {glued(told.storage, language)}", one)) if apart else (*uses, warnings)


def _keeping(studio: Studio, filled: WorkedBatch, made_on: date | None, locale: str) -> Paragraph:
    """Return in words until when it is good and, in one language, how to store it.

    Above 30 months the European Union asks for the time after opening, behind its sign, and no date (Regulation 1223/2009 Art. 19(1)(c),
    read).
    """
    recipe, languages, region = filled.recipe, studio.label_languages, studio.labelling.region
    keeps = durability_in(recipe.keeps)
    parts: list[Run] = []
    if keeps and region.open_jar_above is not None and keeps.months > region.open_jar_above and recipe.after_opening:
        opened = durability_in(recipe.after_opening)
        parts += [OPEN_JAR, Run(f"{opened.months}{NBSP}M ", bold=True)] if opened and opened.months else []
        parts.append(_told(f"{said(languages, 'Once opened, good for')} {keep_together(recipe.after_opening)}. ", languages))
    elif recipe.keeps:
        until = _last_day(filled, made_on, keeps)
        parts.append(_told(f"{region.says('best before').replace(' /', NBSP + '/')} ", languages, bold=True))
        parts.append(Run(day(until, languages, locale), bold=True) if until else Run("", blank=18))
        parts.append(_told(f" ({joined(_keeps(filled, language) for language in languages)}). ", languages))
    return (*parts, _told(recipe.storage, languages)) if recipe.storage and len(languages) == 1 else tuple(parts)


def _keeps(filled: WorkedBatch, language: Language) -> str:
    told = filled.recipe.told_in(language.name)
    return f"{language.on_label('keeps')} {length_of_time(filled.recipe.keeps, told.keeps, language)}"


def _last_day(filled: WorkedBatch, made_on: date | None, keeps: Durability | None) -> date | None:
    """Return the day to which it is good; None where it has to be written by hand. Soap counts from the end of its cure."""
    if made_on is None or keeps is None:
        return None
    if filled.product.made_with_lye and counts_from_the_cure(filled.recipe.keeps):
        cure = durability_in(filled.recipe.cure.time) if filled.recipe.cure else None
        return keeps.after(cure.after(made_on)) if cure else None
    return keeps.after(made_on)
