"""The whole program on one screen: the stages called in order."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from builder.cache.uncollected import uncollected
from builder.check import (
    accept_findings,
    check_acceptances,
    check_batch,
    check_before_the_sums,
    check_in_part,
    check_labels,
    check_layouts,
    check_plans,
    check_recipes,
    check_studio,
)
from builder.check.batches import batch_of
from builder.fonts.typefaces import letters_of_fonts, own_font, typefaces_with
from builder.library import CONTENT, LAYOUTS
from builder.model.document import Document
from builder.model.finding import Finding
from builder.model.held_back import NOTHING_HELD, HeldBack
from builder.model.own_document import FaultyLayout
from builder.model.recipe.quantity import Share
from builder.model.recipe.recipe import AmountsAs, DividedBy, Recipe
from builder.model.recipe.size import MouldSize, OilsSize, Size, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.subject import HomeSheet, OneDate, ShoppingList, TextPage, WholeClass, WholeRecipe, WholeStudio
from builder.model.supplies.shopping import Period, Shopping
from builder.model.teaching.class_plan import ClassPlan
from builder.read.dates.published_dates import read_published_dates
from builder.read.studios import read_studio
from builder.reckon import reckon_classes, reckon_nominal, reckon_recipe, reckon_shopping, weight_as_written
from builder.rules.reach import classes_concerned, subjects_of, what_is_held
from builder.words.say import speaking

if TYPE_CHECKING:
    from builder.compose.edition import Edition
    from builder.compose.label_again import Again
    from builder.compose.on_demand import OnDemand
    from builder.press import PressOutcome


OWN_LAYOUTS = "layouts"  # The folder of a studio's own templates and styles, beside studio.yaml.


@dataclass(frozen=True)
class Outcome:
    """What a run found and made. `studio` is None where there is no studio to read.

    `plans` are those of the dates that nothing holds back, `held` is what stops hold back. `refused` says why a size cannot be worked
    out for a recipe.
    """

    findings: tuple[Finding, ...]
    studio: Studio | None = None
    plans: tuple[ClassPlan, ...] = ()
    held: HeldBack = NOTHING_HELD
    batch: WorkedBatch | None = None
    pressed: PressOutcome | None = None
    refused: str = ""
    shopping: Shopping | None = None

    @property
    def stops(self) -> bool:
        """Tell whether anything stops."""
        return any(finding.stops for finding in self.findings)

    @property
    def left_out(self) -> frozenset[str]:
        """Return the keys of the classes of which nothing can be published."""
        if self.studio is None:
            return frozenset()
        known = frozenset(self.studio.classes) | self.studio.unread.classes
        return known - {plan.studio_class.key for plan in self.plans}


@dataclass(frozen=True)
class Examined:
    """A studio with what was found before anything is worked out, and the classes and recipes that cannot be."""

    studio: Studio
    findings: tuple[Finding, ...]
    unsound: HeldBack


@uncollected()
def check(folder: Path, *, on: date, output: Path | None = None) -> Outcome:
    """Read a studio, check it, work it out, check the results and how the labels fit. Nothing is written.

    `output` is where it was last published, for the dates that were shown.
    """
    from builder.compose.label_layout.label_plans import label_fits
    from builder.finding_kinds import finding_kinds

    examined = _examine(folder, on, output)
    studio, unsound = examined.studio, examined.unsound
    sound = [a_class for key, a_class in studio.classes.items() if not unsound.holds(WholeClass(key))]
    plans = reckon_classes(studio, sound, on=on)
    made = {make.recipe.text for a_class in sound for make in a_class.makes}
    alone = [recipe for key, recipe in studio.recipes.items() if key not in made and not unsound.holds(WholeRecipe(key))]
    nominal = [reckon_nominal(studio, recipe) for recipe in alone]
    with speaking(studio.speaks.messages):
        fits = label_fits(studio, plans)
    found = [*check_plans(plans, studio), *check_recipes(nominal, studio), *check_labels(fits)]
    findings = [*examined.findings, *accept_findings(found, studio)]
    if (studio.profile.documents or (folder / OWN_LAYOUTS).is_dir()) and not studio.unread.layouts:
        faulty = _faulty_layouts(folder, studio, _outcome(findings, studio, plans), on)
        findings += accept_findings(check_layouts(faulty), studio)
    findings += check_acceptances(findings, studio, _not_worked_out(studio, unsound), finding_kinds())
    return _outcome(findings, studio, plans)


def _outcome(findings: Iterable[Finding], studio: Studio, plans: Iterable[ClassPlan]) -> Outcome:
    """Return what was found, and of the plans what it leaves."""
    findings = tuple(_sorted(findings))
    held = what_is_held(findings, studio)
    return Outcome(findings, studio, _left_of(plans, held), held)


def _faulty_layouts(folder: Path, studio: Studio, outcome: Outcome, on: date) -> tuple[FaultyLayout, ...]:
    """Try the studio's own templates on all that nothing holds back."""
    from builder.compose.tried.layouts_tried import faulty_layouts

    with speaking(studio.speaks.messages):
        return faulty_layouts(*_editions(folder, studio, outcome, on))


def _editions(folder: Path, studio: Studio, outcome: Outcome, on: date, *, with_pdf: bool = True) -> tuple[Edition, Edition]:
    """Return what documents are composed from, of all that nothing holds back: without the names of people, and with them."""
    from builder.compose.publication import editions

    left, held = _left_of_studio(studio, outcome), outcome.held
    nothing_to_buy = held.holds(ShoppingList())
    shopping = None if nothing_to_buy else reckon_shopping(left, outcome.plans, Period(on), today=on, held_back=outcome.left_out)
    return editions(left, outcome.plans, outcome.findings, layouts_of(folder), on, with_pdf, shopping, held)


def layouts_of(folder: Path) -> tuple[Path, ...]:
    """Return the folders of templates and styles for a studio, its own first."""
    return (folder / OWN_LAYOUTS, LAYOUTS)


def _examine(folder: Path, on: date, output: Path | None = None, *, lessons: bool = True) -> Examined:
    """Read a studio and run the rules that need no batch. Acceptances are read before anything is held back.

    Without `lessons` what lessons and pages say is not judged: nothing in it is about a recipe or the studio itself.
    """
    studio, damage = read_studio(folder, CONTENT)
    published, unreadable = read_published_dates(output or folder / "output", on)
    named = studio.profile.look.title_font
    font = own_font(folder, named.text) if named else None
    studio = replace(studio, letters=letters_of_fonts(), typefaces=typefaces_with(font), title_font=font, published=published)
    judged = studio if lessons else studio.without_lessons()
    unworked, others = check_before_the_sums(judged), check_studio(judged, on)
    before = accept_findings([*damage, *unworked], studio)
    beside = [*accept_findings([*unreadable, *others], studio), *check_in_part(judged, on, (*unworked, *others))]
    # What is about the studio as a whole (its own file, its tables) keeps nothing from being worked out.
    unsound = what_is_held(before, studio)
    return Examined(studio, (*before, *beside), HeldBack(unsound.subjects - {WholeStudio()}))


def _not_worked_out(studio: Studio, unsound: HeldBack) -> frozenset[WholeClass | WholeRecipe]:
    held = {subject for subject in unsound.subjects if isinstance(subject, WholeClass | WholeRecipe)}
    return frozenset(held | {WholeClass(key) for key in studio.unread.classes} | {WholeRecipe(key) for key in studio.unread.recipes})


def _left_of(plans: Iterable[ClassPlan], held: HeldBack) -> tuple[ClassPlan, ...]:
    """Return what is left of class plans once what is held back has been taken out: dates, and home sizes."""
    return tuple(_without_held(plan, held) for plan in plans if not held.holds(plan.subject))


def _without_held(plan: ClassPlan, held: HeldBack) -> ClassPlan:
    """Return a class without what is held back of it; itself where nothing is, for which labels have been planned already."""
    key = plan.studio_class.key
    dates = tuple(date for date in plan.studio_class.dates if not held.holds(OneDate(key, date.on)))
    made = tuple(
        replace(made, home=tuple(one for one in made.home if not held.holds(HomeSheet(key, made.make.recipe.text, one.size.written))))
        for made in plan.made
    )
    if dates == plan.studio_class.dates and made == plan.made:
        return plan
    return replace(plan, studio_class=replace(plan.studio_class, dates=dates), made=made)


class Progress(Protocol):
    """Whoever wants to know how far a publication has come."""

    def start(self, total: int) -> None:
        """Hear how many documents there will be."""

    def step(self, title: str) -> None:
        """Hear that one document has been written."""

    def wait(self) -> None:
        """Hear that another run is writing to the same folder, and that this one waits for it."""


def publish(
    folder: Path, output: Path, *, on: date, only_sound: bool, progress: Progress, known: AbstractContextManager[None] | None = None
) -> Outcome:
    """Check a studio and write `site/` and `print/`. Labels that are held back are left out.

    With a stop about anything else nothing is written, unless only what is sound is wanted. `known` is what earlier runs have worked out:
    it is read once the processes that press have been started, which then hold nothing of it.
    """
    from builder.compose.publication import compose_documents
    from builder.press import missing_pdf_engine, press_publication, presses_of

    with_pdf = missing_pdf_engine() is None
    with presses_of(folder, layouts_of(folder), early=with_pdf) as presses, known or nullcontext():
        outcome = check(folder, on=on, output=output)
        studio, held = outcome.studio, outcome.held
        writes = studio is not None and (not outcome.stops or held.only_labels or (only_sound and outcome.plans and not held.everything))
        if studio is None or not writes:
            return outcome
        with speaking(studio.speaks.messages):
            publication = compose_documents(*_editions(folder, studio, outcome, on, with_pdf=with_pdf))
        progress.start(len(publication.documents))
        pressed = press_publication(
            publication,
            studio_folder=folder,
            layout_folders=layouts_of(folder),
            output=output,
            progress=progress.step,
            waits=progress.wait,
            presses=presses,
        )
    return replace(outcome, pressed=pressed)


def preview(folder: Path, *, on: date) -> tuple[Outcome, OnDemand | None]:
    """Check a studio and list every document that nothing holds back, to be made when it is asked for. Nothing is written."""
    from builder.compose.on_demand import documents_on_demand

    outcome = check(folder, on=on)
    studio = outcome.studio
    if studio is None:
        return outcome, None
    with speaking(studio.speaks.messages):
        return outcome, documents_on_demand(*_editions(folder, studio, outcome, on))


def label_again(outcome: Outcome, plan: ClassPlan, place: int, folder: Path, *, on: date, first: int | None) -> list[Again]:
    """Make the labels of one place on the roster of a date, a sheet for each size of label. Nothing is written.

    `plan` is one of the plans of `outcome`. `first` is the label of a sheet to begin with, counted from 1; None: the first that the
    sheets of the date leave free. Raises NotOnTheSheetError where a sheet has no such label.
    """
    from builder.compose.label_again import labels_again
    from builder.compose.publication import editions

    assert outcome.studio is not None
    studio = _left_of_studio(outcome.studio, outcome)
    with speaking(studio.speaks.messages):
        seen, _ = editions(studio, (plan,), outcome.findings, layouts_of(folder), on, held=outcome.held)
        return list(labels_again(seen, place, first))


def press_apart(documents: Sequence[Document], folder: Path, to: Path) -> list[Path]:
    """Write a few sheets by themselves into a folder, and give where they lie. Raises OSError where this machine cannot."""
    from builder.press import press_to_folder

    return press_to_folder(documents, studio_folder=folder, layout_folders=layouts_of(folder), to=to)


def publish_reference(output: Path) -> int:
    """Write the reference as web pages, and give how many there are. Raises FolderError."""
    from builder.press import press_publication
    from builder.reference import reference_publication

    publication = reference_publication(LAYOUTS)
    pressed = press_publication(publication, studio_folder=output, layout_folders=(LAYOUTS,), output=output, progress=lambda _: None)
    return len(pressed.written) - len(publication.files)


def _left_of_studio(studio: Studio, outcome: Outcome) -> Studio:
    """Return the studio without the classes, dates and pages that are held back.

    What was shown of them before stays known, so that their revisions can be compared again.
    """
    left = {plan.studio_class.key: plan.studio_class for plan in outcome.plans}
    held_dates = {
        (key, date.first_set)
        for key, a_class in studio.classes.items()
        for date in a_class.dates
        if outcome.held.holds(OneDate(key, date.on))
    }
    kept = tuple(one for one in studio.published if one.class_key in outcome.left_out or (one.class_key, one.first_set) in held_dates)
    pages = {key: page for key, page in studio.pages.items() if not outcome.held.holds(TextPage(key))}
    told = {one: one.told for one in studio.published if one.told}
    return replace(studio, classes=left, pages=pages, published=kept, told=told)


@uncollected()
def weigh(folder: Path, recipe_key: str, size: Size | None, *, on: date) -> Outcome:
    """Work out one recipe at one size, or without one as it is written.

    The batch is None where a stop is about the recipe itself, and not about its labels alone.
    """
    examined = _examine(folder, on, lessons=False)
    studio = examined.studio
    itself = (WholeStudio(), WholeRecipe(recipe_key))
    findings = [finding for finding in examined.findings if subjects_of(finding, studio) & set(itself)]
    outcome = Outcome(tuple(_sorted(findings)), studio, held=what_is_held(findings, studio))
    recipe = studio.recipes.get(recipe_key)
    if recipe is None or outcome.held.holds(WholeRecipe(recipe_key)):
        return outcome
    refused = _refuse(recipe, size, studio)
    if refused:
        return replace(outcome, refused=refused)
    worked = reckon_recipe(studio, recipe, size or TotalSize(weight_as_written(studio, recipe)), in_ounces=True)
    own = accept_findings(check_batch(batch_of("the batch asked for", worked, studio, WholeRecipe(recipe_key))), studio)
    held = what_is_held(own, studio)
    batch = None if held.holds(WholeRecipe(recipe_key)) else worked
    return replace(outcome, findings=tuple(_sorted([*findings, *own])), held=held, batch=batch)


def with_another_superfat(folder: Path, recipe_key: str, superfat: Share, *, on: date) -> tuple[WorkedBatch | None, WorkedBatch | None]:
    """Work out a recipe that states its lye by weight as it is written, and the same oils with lye for a superfat.

    None where it cannot be worked out. Nothing is checked: too much lye is what may be told.
    """
    examined = _examine(folder, on, lessons=False)
    studio, recipe = examined.studio, examined.studio.recipes.get(recipe_key)
    if recipe is None or recipe.lye is None or examined.unsound.holds(WholeRecipe(recipe_key)):
        return None, None
    written = reckon_recipe(studio, recipe, TotalSize(weight_as_written(studio, recipe)))
    by_weight = DividedBy.WEIGHT if len(recipe.lye.alkalis) > 1 else recipe.lye.divided_by
    alkalis = tuple(replace(one, weighs=None) for one in recipe.lye.alkalis)
    anew = replace(recipe, lye=replace(recipe.lye, superfat=superfat, alkalis=alkalis, divided_by=by_weight))
    return written, reckon_recipe(studio, anew, OilsSize(written.grams.oils))


def shop(folder: Path, period: Period, *, on: date) -> Outcome:
    """Work out what to buy for the dates of a period that are still to come; classes that a stop holds back are not among them."""
    outcome = check(folder, on=on)
    if outcome.studio is None:
        return outcome
    shopping = reckon_shopping(outcome.studio, outcome.plans, period, today=on, held_back=outcome.left_out)
    return replace(outcome, shopping=shopping)


def concerns(finding: Finding, class_key: str, studio: Studio) -> bool:
    """Tell whether a finding has to do with a class."""
    return class_key in classes_concerned(finding, studio)


def _refuse(recipe: Recipe, size: Size | None, studio: Studio) -> str:
    if size is None and recipe.amounts_as is not AmountsAs.WEIGHTS:
        return f'the recipe "{recipe.key}" states no weights, so that it has no size of its own; give --total, --oils or --containers'
    if isinstance(size, MouldSize) and recipe.density is None:
        return (
            f'the recipe "{recipe.key}" has no `density:`, and a mould is a volume: weigh one filled container and add it, '
            "or give the size as a weight"
        )
    cards = [studio.ingredient(line.ingredient) for line in recipe.lines]
    if isinstance(size, OilsSize) and not any(card and card.counts_as.is_oil for card in cards):
        return f'the recipe "{recipe.key}" has no oils to give the size by; give --total or --containers'
    return ""


def _sorted(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda finding: (finding.place, finding.name, finding.wrong))
