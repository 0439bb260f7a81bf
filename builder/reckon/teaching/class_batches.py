"""The batches of a class: which are made, for whom, how big and how often, and at home; each size is worked out once for all dates.

Decided: every group makes the batch of a whole one, also a smaller last group. Why: steps and weights are the same on every bench; what
is left over is said.
"""

from dataclasses import replace

from builder.model.dates.studio_class import BatchFor, HomeSize, Make, StudioClass
from builder.model.lye.lye_solution import LyeSolution
from builder.model.recipe.quantity import NO_MASS
from builder.model.recipe.recipe import Fill
from builder.model.recipe.size import ContainersSize, Lost, OilsSize, PeopleSize, Size, TotalSize
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import HomeBatch, PlannedBatch
from builder.model.teaching.pot_for import PotFor
from builder.reckon.lye.lye_solutions import ready_mixed_solutions
from builder.reckon.recipe.batches import reckon_batch
from builder.reckon.recipe.formula import reckon_formula
from builder.reckon.recipe.portions import lost_at_home, people_weight
from builder.reckon.recipe.scaling import reckon_total
from builder.reckon.recipe.workplace import Workplace, workplace
from builder.reckon.teaching.met_at_home import met_at_home
from builder.rules.part_recipe import home_parts

_AtHome = TotalSize | OilsSize | ContainersSize
SPARE = "ready-mixed lye to spare"


class ClassBatches:
    """The batches of one class. Dates with as many people share them, and all dates share those at home."""

    def __init__(self, studio: Studio, studio_class: StudioClass) -> None:
        """Take the class; nothing is worked out yet."""
        self._studio, self._class = studio, studio_class
        self._seats, self._group_size = studio_class.seats, studio_class.group_size
        in_grams = [scale for scale in studio.profile.scales if scale.unit == "g"]
        self._here = workplace(studio, in_grams, youngest=studio_class.youngest)
        self._home = workplace(studio, studio.profile.home_scales, youngest=studio_class.youngest, from_solid=True)
        self._here_made: dict[tuple[str, Size], WorkedBatch] = {}
        self._at_home: dict[str, tuple[HomeBatch, ...]] = {}

    def for_people(self, make: Make, students: int, groups: int) -> tuple[PlannedBatch, ...]:
        """Return what is made of one recipe for those who come."""
        own = self._studio.recipes[make.recipe.text].fill
        return tuple(self._planned(make, *plan) for plan in _plan(make, own, students, groups, self._group_size))

    def at_home(self, make: Make) -> tuple[HomeBatch, ...]:
        """Return what is made of one recipe at home, on the scales that people have there."""
        key = make.recipe.text
        if key not in self._at_home:
            sizes = [(size, self._with_what_is_lost(make, _at_home(size))) for size in make.at_home]
            self._at_home[key] = tuple(self._home_batch(key, size, asked) for size, asked in sizes)
        return self._at_home[key]

    def _home_batch(self, key: str, size: HomeSize, asked: Size) -> HomeBatch:
        batch = self._batch(key, asked, self._home)
        return HomeBatch(size, batch, met_at_home(self._studio, home_parts(self._class, key), batch))

    def ready_mixed(self, make: Make, planned: tuple[PlannedBatch, ...]) -> tuple[LyeSolution, ...]:
        """Return the ready-mixed lyes that are made before class, one for each alkali, where a recipe has such."""
        spare = self._studio.constants[SPARE].typical / 100
        return ready_mixed_solutions(self._studio.recipes[make.recipe.text], planned, self._here, spare)

    def _with_what_is_lost(self, make: Make, size: _AtHome) -> _AtHome:
        """Return a home size with what stays in the pot and in the cups there, by what the studio loses of the batch of a full class."""
        recipe = self._studio.recipes[make.recipe.text]
        people = {BatchFor.CLASS: self._seats, BatchFor.GROUP: self._group_size, BatchFor.STUDENT: 1}[make.batch_for]
        full = people_weight(people_size(make, recipe.fill, people, spare=make.batch_for is BatchFor.CLASS))
        weight, _ = reckon_total(recipe, reckon_formula(recipe, self._studio.ingredients, from_solid=True), size)
        return replace(size, lost=lost_at_home(Lost(make.left_in_the_pot, make.left_in_each_cup), full, weight))

    def _planned(self, make: Make, purpose: PotFor, size: PeopleSize, copies: int) -> PlannedBatch:
        key = (make.recipe.text, size)
        if key not in self._here_made:
            self._here_made[key] = self._batch(*key, self._here)
        return PlannedBatch(purpose, self._here_made[key], copies)

    def _batch(self, recipe_key: str, size: Size, place: Workplace) -> WorkedBatch:
        recipe = self._studio.recipes[recipe_key]
        return reckon_batch(recipe, self._studio.products[recipe.product], size, place)


def people_size(make: Make, own: Fill, people: int, *, spare: bool) -> PeopleSize:
    """Return the batch of so many students, or with none of them the teacher's, with what is spare and what is shown; `own` is the
    recipe's own container.
    """
    shown = make.demo if spare else NO_MASS
    return PeopleSize(make.to_fill(own), people, spare, shown, make.left_in_the_pot, make.left_in_each_cup)


def _plan(make: Make, own: Fill, students: int, groups: int, group_size: int) -> list[tuple[PotFor, PeopleSize, int]]:
    """Return which batches are made, each for whom, how big and how often."""
    if make.batch_for is BatchFor.CLASS:
        return [(PotFor.CLASS, people_size(make, own, students, spare=True), 1)]
    if make.batch_for is BatchFor.GROUP:
        plan = [(PotFor.GROUP, people_size(make, own, group_size, spare=False), groups)]
    else:
        plan = [(PotFor.STUDENT, people_size(make, own, 1, spare=False), students)]
    if make.demo or any(one.spare for one in make.to_fill(own)):
        plan.append((PotFor.TEACHER, people_size(make, own, 0, spare=True), 1))
    return plan


def _at_home(size: HomeSize) -> _AtHome:
    """Return the size that a home size asks for."""
    if size.total is not None:
        return TotalSize(size.total)
    if size.oils is not None:
        return OilsSize(size.oils)
    assert size.containers is not None
    return ContainersSize(size.containers)
