"""A class to its sheet: the batches for the people who come, what they need in all, the home batches, the clock."""

from fractions import Fraction
from math import ceil

from builder.model.batch_sheet import BatchSheet, ContainersSize, OilsSize, PeopleSize, Role, Size, TotalSize
from builder.model.class_sheet import ClassSheet, HomeBatch, LyeAhead, MadeSheet, Needed, PlannedBatch
from builder.model.clock import after_of, ahead_of, on_the_clock
from builder.model.quantity import NO_MASS, Mass, sum_masses
from builder.model.recipe import Recipe
from builder.model.roster import Guest
from builder.model.studio import Studio
from builder.model.studio_class import BatchFor, ClassDate, HomeSize, Make, StudioClass
from builder.reckon.batches import Weighings, fill_others, reckon_batch, weighings
from builder.reckon.guests import Filling, reckon_choices, reckon_guests
from builder.reckon.preparation import reckon_preparation
from builder.reckon.rounding import pick_scale, round_down, round_near
from builder.reckon.supervision import reckon_supervision
from builder.reckon.teaching import reckon_teaching

SPARE = "ready-mixed lye to spare"


def reckon_class(studio: Studio, studio_class: StudioClass, date: ClassDate | None) -> ClassSheet:
    """Work out a class for those enrolled on a date, or for a full class where no date is given."""
    students = date.enrolled if date else studio_class.seats
    groups = ceil(students / studio_class.group_size)
    last = students - (groups - 1) * studio_class.group_size
    guests = reckon_guests(studio, studio_class, date)
    made = tuple(_made(studio, make, students, groups, studio_class, guests) for make in studio_class.makes)
    timeline = on_the_clock(studio_class.lesson)
    teaching = reckon_teaching(studio, studio_class, made)
    staff = sum(studio_class.staff_on(date))
    supervision = reckon_supervision(studio, studio_class, made, timeline, staff, groups)
    return ClassSheet(
        studio_class=studio_class,
        date=date,
        students=students,
        groups=groups,
        last_group=last,
        made=made,
        timeline=timeline,
        ahead=ahead_of(studio_class.lesson),
        after=after_of(studio_class.lesson, int(studio_class.length.minutes)),
        guests=guests,
        waiting=reckon_guests(studio, studio_class, date, waiting=True),
        teaching=teaching,
        supervision=supervision,
        preparation=reckon_preparation(studio, studio_class, made, students, supervision, teaching),
    )


def _made(studio: Studio, make: Make, students: int, groups: int, studio_class: StudioClass, guests: tuple[Guest, ...]) -> MadeSheet:
    recipe = studio.recipes[make.recipe.text]
    kind = studio.products[recipe.product]
    here = weighings([scale for scale in studio.profile.scales if scale.unit == "g"])
    home, rules = weighings(studio.profile.home_scales, from_solid=True), studio.rules(studio_class.youngest)

    def batch(size: Size, scales: Weighings) -> BatchSheet:
        return reckon_batch(recipe, kind, size, studio.ingredients, scales, studio.constants, rules, studio.labelling)

    def planned(purpose: str, size: PeopleSize, copies: int) -> PlannedBatch:
        sheet = batch(size, here)
        return PlannedBatch(purpose, sheet, copies, fill_others(sheet, studio.ingredients, here, studio.constants, rules, studio.labelling))

    batches = tuple(planned(*plan) for plan in _plan(make, students, groups, studio_class.group_size))
    at_home = tuple(HomeBatch(size, batch(home_size(size), home)) for size in make.at_home)
    return MadeSheet(
        make=make,
        batches=batches,
        needed=_needed(batches, studio.ingredients["water"].name),
        containers=students * make.each_student + make.spare,
        home=at_home,
        lye_ahead=_lye_ahead(recipe, batches, here, studio.constants[SPARE].typical / 100),
        also_containers=tuple(students * one.each_student + one.spare for one in make.also),
        choices=reckon_choices(_fillings(make, batches[0], students), guests),
    )


def _fillings(make: Make, planned: PlannedBatch, students: int) -> list[Filling]:
    """Give each kind of container with how many a student fills, and how many there are in all."""
    others = zip(planned.also, make.also, strict=True)
    found = [(planned.sheet, make.each_student, make.spare), *((sheet, one.each_student, one.spare) for sheet, one in others)]
    return [Filling(sheet, each, students * each + spare) for sheet, each, spare in found]


def _plan(make: Make, students: int, groups: int, group_size: int) -> list[tuple[str, PeopleSize, int]]:
    """Say which batches are made, each for whom, how big and how often."""

    def for_people(people: int, *, spare: bool) -> PeopleSize:
        """Give the batch of so many students, or with none of them the teacher's, with what is spare and what is shown."""
        also = tuple((one.fill, people * one.each_student + spare * one.spare) for one in make.also)
        containers = people * make.each_student + spare * make.spare
        return PeopleSize(containers, make.demo if spare else NO_MASS, make.left_in_the_pot, make.left_in_each_cup, also)

    if make.batch_for is BatchFor.CLASS:
        return [("class", for_people(students, spare=True), 1)]
    if make.batch_for is BatchFor.GROUP:
        plan = [("group", for_people(group_size, spare=False), groups)]
    else:
        plan = [("student", for_people(1, spare=False), students)]
    if make.spare or make.demo or any(one.spare for one in make.also):
        plan.append(("teacher", for_people(0, spare=True), 1))
    return plan


def home_size(size: HomeSize) -> Size:
    """Give the size that a home size asks for."""
    if size.total is not None:
        return TotalSize(size.total)
    if size.oils is not None:
        return OilsSize(size.oils)
    assert size.containers is not None
    return ContainersSize(size.containers)


def _needed(batches: tuple[PlannedBatch, ...], water: str) -> tuple[Needed, ...]:
    """Add up what all batches need, with the water that is expected to steam away."""
    totals: dict[str, Mass] = {}
    for planned in batches:
        column = planned.sheet.grams
        parts = [(w.line.name, w.mass) for w in column.weighed] + [(water, top_up.lost) for top_up in column.top_ups if top_up.lost]
        for name, mass in parts:
            totals[name] = totals.get(name, NO_MASS) + mass * planned.copies
    return tuple(Needed(name, mass) for name, mass in totals.items())


def _lye_ahead(recipe: Recipe, batches: tuple[PlannedBatch, ...], scales: Weighings, spare: Fraction) -> LyeAhead | None:
    if recipe.lye is None or recipe.lye.ready_mixed is None:
        return None
    strength = recipe.lye.ready_mixed.fraction
    weighed = [(w, planned.copies) for planned in batches for w in planned.sheet.grams.weighed if w.line.role is Role.ALKALI]
    asked_for = sum_masses(w.mass * copies for w, copies in weighed)
    solution = round_near(asked_for * (1 + spare), pick_scale(asked_for * (1 + spare), scales.grams)[0].division)
    lye = batches[0].sheet.grams.lye
    assert lye is not None
    exact = solution * strength / lye.purities[0].typical
    scale, _ = pick_scale(exact, scales.grams)
    solid = round_down(exact, scale.division)
    return LyeAhead(weighed[0][0].line.ingredient.name, solution, solid, solution - solid, strength)
