"""The whole program on one screen: the stages called in order."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from builder.check import accept_findings, check_batch, check_counts, check_labels, check_sheets, check_studio, classes_held_back
from builder.check.batches import batch_of
from builder.model.batch_sheet import BatchSheet, MouldSize, OilsSize, Size
from builder.model.class_sheet import ClassSheet
from builder.model.finding import Finding
from builder.model.ingredient import Ingredient
from builder.model.recipe import Recipe
from builder.model.shopping import Period, Shopping
from builder.model.studio import Studio
from builder.press.letters import letters_of_fonts
from builder.press.typefaces import typefaces_of_labels
from builder.read import read_published_dates, read_shelf, read_studio
from builder.reckon import reckon_classes, reckon_recipe, reckon_shopping
from builder.stock import CONTENT, LAYOUTS

if TYPE_CHECKING:
    from builder.press import PressOutcome


@dataclass(frozen=True)
class Outcome:
    """What a run found and made. `studio` is None where there is no studio to read; `left_out` are the classes held back.

    `refused` says why a size cannot be worked out for a recipe.
    """

    findings: tuple[Finding, ...]
    studio: Studio | None = None
    sheets: tuple[ClassSheet, ...] = ()
    left_out: frozenset[str] = frozenset()
    batch: BatchSheet | None = None
    pressed: PressOutcome | None = None
    refused: str = ""
    shopping: Shopping | None = None

    @property
    def stops(self) -> bool:
        """Say whether anything stops."""
        return any(finding.stops for finding in self.findings)


def check(folder: Path, *, on: date, output: Path | None = None) -> Outcome:
    """Read a studio, check it, work it out, check the results and how the labels fit. Nothing is written.

    `output` is where it was last published, for the dates that were shown.
    """
    from builder.compose.label_plans import label_fits

    studio, findings = read_studio(folder, CONTENT)
    published, damage = read_published_dates(output or folder / "output", on)
    studio = replace(studio, letters=letters_of_fonts(), typefaces=typefaces_of_labels(), published=published)
    findings = [*findings, *damage, *check_studio(studio), *check_counts(studio, on)]
    stopped = held_back(findings, studio)
    sound = [a_class for key, a_class in studio.classes.items() if key not in stopped]
    sheets = reckon_classes(studio, sound, on=on)
    findings = accept_findings([*findings, *check_sheets(sheets, studio), *check_labels(label_fits(studio, sheets), studio)], studio)
    left_out = held_back(findings, studio)
    sheets = tuple(sheet for sheet in sheets if sheet.studio_class.key not in left_out)
    return Outcome(tuple(_sorted(findings)), studio, sheets, left_out)


class Progress(Protocol):
    """Whoever wants to know how far a publication has come."""

    def start(self, total: int) -> None:
        """Hear how many documents there will be."""

    def step(self, title: str) -> None:
        """Hear that one document has been written."""

    def wait(self) -> None:
        """Hear that another run is writing to the same folder, and that this one waits for it."""


def publish(folder: Path, output: Path, *, on: date, only_sound: bool, progress: Progress) -> Outcome:
    """Check a studio and write `site/` and `print/`; with a stop nothing is written, unless only the sound classes are wanted."""
    from builder.compose import compose_documents
    from builder.press import missing_pdf_engine, press_publication

    outcome = check(folder, on=on, output=output)
    if outcome.studio is None or (outcome.stops and not (only_sound and outcome.sheets)):
        return outcome
    classes = {key: a_class for key, a_class in outcome.studio.classes.items() if key not in outcome.left_out}
    # What was shown of classes that are held back now stays known, so that their revisions can be compared again.
    shown = tuple(one for one in outcome.studio.published if one.class_key in outcome.left_out)
    studio = replace(outcome.studio, classes=classes, published=shown)
    layouts = (folder / "layouts", LAYOUTS)
    shopping = reckon_shopping(studio, outcome.sheets, Period(on), today=on, held_back=outcome.left_out)
    publication = compose_documents(
        studio, outcome.sheets, outcome.findings, layouts, today=on, with_pdf=missing_pdf_engine() is None, shopping=shopping
    )
    progress.start(len(publication.documents))
    pressed = press_publication(
        publication, studio_folder=folder, layout_folders=layouts, output=output, progress=progress.step, waits=progress.wait
    )
    return replace(outcome, pressed=pressed)


def weigh(folder: Path, recipe_key: str, size: Size, *, on: date) -> Outcome:
    """Work out one recipe at one size. The batch is None where a finding about the recipe stops it."""
    outcome = check(folder, on=on)
    if outcome.studio is None:
        return outcome
    studio = outcome.studio
    findings = [finding for finding in outcome.findings if concerns(finding, f"recipes/{recipe_key}.yaml")]
    recipe = studio.recipes.get(recipe_key)
    if recipe is None or any(finding.stops and not finding.about for finding in findings):
        return replace(outcome, findings=tuple(findings), sheets=())
    refused = _refuse(recipe, size, studio)
    if refused:
        return replace(outcome, findings=tuple(findings), sheets=(), refused=refused)
    sheet = reckon_recipe(studio, recipe, size)
    own = accept_findings(check_batch(batch_of("the batch asked for", sheet, studio)), studio, only_used=True)
    batch = None if any(finding.stops for finding in own) else sheet
    settled = [finding for finding in findings if not finding.about]
    return replace(outcome, findings=tuple(_sorted([*settled, *own])), sheets=(), batch=batch)


def shop(folder: Path, period: Period, *, on: date) -> Outcome:
    """Work out what to buy for the dates of a period that are still to come; classes that a stop holds back are not among them."""
    outcome = check(folder, on=on)
    if outcome.studio is None:
        return outcome
    shopping = reckon_shopping(outcome.studio, outcome.sheets, period, today=on, held_back=outcome.left_out)
    return replace(outcome, shopping=shopping)


def shelf(folder: Path | None) -> tuple[Mapping[str, Ingredient], tuple[Finding, ...]]:
    """Read the ingredient cards of the stock and, before them, of a studio's own shelf."""
    cards, findings = read_shelf(folder, CONTENT)
    return cards, tuple(findings)


def held_by(finding: Finding, class_key: str, studio: Studio) -> bool:
    """Say whether a finding is about a class."""
    return class_key in classes_held_back(finding, studio)


def _refuse(recipe: Recipe, size: Size, studio: Studio) -> str:
    if isinstance(size, MouldSize) and recipe.density is None:
        return (
            f'the recipe "{recipe.key}" has no `density:`, and a mould is a volume: weigh one filled container and add it, '
            "or give the size as a weight"
        )
    cards = [studio.ingredient(line.ingredient) for line in recipe.lines]
    if isinstance(size, OilsSize) and not any(card and card.counts_as.is_oil for card in cards):
        return f'the recipe "{recipe.key}" has no oils to give the size by; give --total or --containers'
    return ""


def held_back(findings: Iterable[Finding], studio: Studio) -> frozenset[str]:
    """Give the keys of the classes that stops hold back."""
    return frozenset().union(*(classes_held_back(finding, studio) for finding in findings if finding.stops))


def concerns(finding: Finding, file: str) -> bool:
    """Say whether a finding concerns a recipe's file: it stands in it, in the studio's own data, or in a card of the shelf."""
    at = finding.place.file
    return at in (file, "studio.yaml") or at.startswith(("shelf/", "content/"))


def _sorted(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda finding: (finding.place, finding.name, finding.wrong))
