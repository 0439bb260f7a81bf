"""The lye of a batch in plain words: superfat, strength, water, and the assumptions on which the figures rest."""

from collections.abc import Sequence

from builder.compose.lye.lye_range import ends, range_sentence, view_range
from builder.compose.recipe.wording import NBSP, grams, listed, number, percent, sentence, weighed_together, within
from builder.compose.teaching.weighing_words import mixing_line
from builder.compose.views.lye import LyeFact, LyeView
from builder.model.lye.lye_result import LyeResult, Purity
from builder.model.lye.lye_solution import LyeSolution
from builder.model.recipe.column import Column, Role
from builder.model.recipe.worked_batch import WorkedBatch
from builder.words.say import message, say


def home_lye(batch: WorkedBatch) -> LyeView | None:
    """Return what a student at home needs to know of the lye; None where there is none."""
    column = batch.grams
    if column.lye is None:
        return None
    facts = [_superfat(column.lye), *_parts(column.lye), _concentration(column.lye), *_in_water(column.lye)]
    facts += [*_before_the_cook(column.lye), *_without_waxes(column.lye), *_cured_bar(batch)]
    worst = min((one.lye for one in batch.columns if one.lye), key=lambda lye: lye.lowest)
    return LyeView(tuple(facts), (range_sentence(worst), *_smallest(batch)))


def home_purities(batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words for which purity the lye was worked out, and that the label of the pack counts; nothing without lye."""
    return _purities(batch.grams.lye) if batch.grams.lye else ()


def staff_lye(batch: WorkedBatch, solutions: Sequence[LyeSolution], key: str) -> LyeView | None:
    """Return what a teacher needs to know of the lye, the worst case both ways included; None where there is none.

    `solutions` are those that staff make for it. `key` keeps the pictures of one sheet apart.
    """
    column = batch.grams
    lye = column.lye
    if lye is None:
        return None
    lowest, highest = ends(lye)
    worst = say("{low} to {high}", low=lowest, high=highest)
    facts = [
        LyeFact(say("Alkali to weigh"), _named(column, Role.ALKALI)),
        LyeFact(say("Water beside it"), _named(column, Role.LYE_WATER)),
        _superfat(lye),
        LyeFact(say("Superfat, worst case both ways"), worst, _off_at_once(lye)),
        *_worst_case(lye),
        *_parts(lye),
        *_before_the_cook(lye),
        *_without_waxes(lye),
        _concentration(lye),
        *_in_water(lye),
        *_water_beside(lye),
        LyeFact(say("Water for each part of lye"), number(lye.water_to_lye, 2)),
        LyeFact(say("Water, percent of the oils"), percent(lye.water_of_oils, 1)),
        *_cured_bar(batch),
    ]
    return LyeView(tuple(facts), (*_purities(lye), *_made_by_staff(solutions)), view_range(lye, key))


def _smallest(batch: WorkedBatch) -> tuple[str, ...]:
    """Return in words how small a batch such scales can weigh, unless this one, which the studio has accepted, is smaller."""
    if batch.smallest is None or batch.smallest > batch.grams.total:
        return (say("This is a small batch for such scales: weigh each amount on the finest that holds it."),)
    return (say("On such scales make no whole batch of less than about {weight}.", weight=grams(batch.smallest)),)


def _superfat(lye: LyeResult) -> LyeFact:
    share = percent(lye.superfat, 1)
    return LyeFact(
        say("Superfat, as weighed"), share, say("About {share} of the fat finds no lye. It stays in the soap as fat.", share=share)
    )


def _concentration(lye: LyeResult) -> LyeFact:
    share = percent(lye.concentration, 1)
    return LyeFact(
        say("Lye concentration"),
        share,
        say("Of {solution} of lye solution, {lye} are lye.", solution=f"100{NBSP}g", lye=f"{number(lye.concentration * 100, 1)}{NBSP}g"),
    )


def _off_at_once(lye: LyeResult) -> str:
    if lye.without_waxes is not None and lye.lowest == lye.lowest_without_waxes:
        return say("Every figure and every weighing off to one side at once; at the low end the wax counts as taking no lye.")
    return say("Every figure and every weighing off to one side at once.")


def _worst_case(lye: LyeResult) -> list[LyeFact]:
    """Return in words what pulls the superfat down most: the ranges of figures, named, and the scales."""
    takers = [f"{within(cause.ingredient)} {percent(cause.takes, 1)}" for cause in lye.causes[:3]]
    return [LyeFact(say("Taken from it by"), ", ".join([*takers, say("the scales {share}", share=percent(lye.by_scales, 1))]))]


def _parts(lye: LyeResult) -> list[LyeFact]:
    """Return in words how a mixed lye is divided, both ways."""
    if len(lye.parts) < 2:
        return []
    return [
        LyeFact(
            sentence(say(part.alkali)),
            say(
                "{equivalents} of the equivalents, {weight} of the weight",
                equivalents=percent(part.by_equivalents, 1),
                weight=percent(part.by_weight, 1),
            ),
            say("The two differ, since the alkalis do not weigh the same for the same work."),
        )
        for part in lye.parts
    ]


def _in_water(lye: LyeResult) -> list[LyeFact]:
    if lye.in_water == lye.concentration:
        return []
    return [LyeFact(say("Lye concentration in its water"), percent(lye.in_water, 1), say("Only the water in the liquid dissolves lye."))]


def _water_beside(lye: LyeResult) -> list[LyeFact]:
    if not lye.water_beside:
        return []
    return [
        LyeFact(
            say("Water from elsewhere"),
            grams(lye.water_beside),
            say("In later liquids, milks and solutions of acid. It dissolves no lye."),
        )
    ]


def _cured_bar(batch: WorkedBatch) -> list[LyeFact]:
    if batch.own.cured is None:
        return []
    weight = say("about {weight}", weight=f"{number(batch.own.cured.grams, 0)}{NBSP}g")
    return [LyeFact(say("A bar after the cure"), weight, say("From bars that the studio weighed. Weigh each bar before it is labelled."))]


def _before_the_cook(lye: LyeResult) -> list[LyeFact]:
    if lye.before_the_cook is None:
        return []
    late = listed([within(name) for name in lye.late])
    return [
        LyeFact(
            say("Superfat during the cook"),
            percent(lye.before_the_cook, 1),
            say("Only what is in the pot by then: {late} goes in after the cook, and is not there to be tested before.", late=late),
        )
    ]


def _without_waxes(lye: LyeResult) -> list[LyeFact]:
    if lye.without_waxes is None:
        return []
    return [
        LyeFact(say("Superfat if no wax takes lye"), percent(lye.without_waxes, 1), say("Wax takes lye only when it is boiled for long."))
    ]


def _named(column: Column, role: Role) -> str:
    found = [w for w in column.weighed if w.line.role is role]
    if not found:
        return say("none")
    return ", ".join(say("{weight} of {name}", weight=weighed_together([w], column.unit), name=within(w.line.name)) for w in found)


def _purities(lye: LyeResult) -> tuple[str, ...]:
    return tuple(_purity(purity) for purity in lye.purities)


def _purity(purity: Purity) -> str:
    low, typical, high = purity.hydroxide
    said = {"alkali": sentence(say(purity.alkali)), "share": percent(typical), "basis": say(purity.source)}
    said["span"] = say("{low} to {high}", low=percent(low), high=percent(high)) if low != high else percent(low)
    if purity.strength:
        return say(_BOUGHT_BETWEEN if low != high else _BOUGHT, **said)
    said["share"] = percent(purity.typical)
    if purity.assumed:
        return say(_ASSUMED, **said)
    if purity.low != purity.high:
        return say(_FROM_BETWEEN if purity.source else _STATED_BETWEEN, **said)
    return say(_FROM if purity.source else _STATED, **said)


_BOUGHT = message(
    "{alkali}: bought as a solution, counted as {share} by weight. The certificate of the bottle counts: compare it, and change the recipe "
    "if it says something else."
)
_BOUGHT_BETWEEN = message(
    "{alkali}: bought as a solution, counted as {share} by weight (from {span}). The certificate of the bottle counts: compare it, and "
    "change the recipe if it says something else."
)
_FROM = message("{alkali}: counted as {share} pure, from {basis}. Compare the label of your pack.")
_FROM_BETWEEN = message("{alkali}: counted as {share} pure ({span}), from {basis}. Compare the label of your pack.")
_STATED = message("{alkali}: counted as {share} pure, as the recipe states. Compare the label of your pack.")
_STATED_BETWEEN = message("{alkali}: counted as {share} pure ({span}), as the recipe states. Compare the label of your pack.")
_ASSUMED = message(
    "{alkali}: counted as {share} pure, an assumption from {basis} ({span}). If the label of your pack says something else, the amounts "
    "change."
)


def _made_by_staff(solutions: Sequence[LyeSolution]) -> tuple[str, ...]:
    return tuple(_of_solution(lye) for lye in solutions)


def _of_solution(lye: LyeSolution) -> str:
    if lye.bought:
        said = message("{mixing}. It is for all batches, with some to spare for what stays in the bottles. No solid is dissolved for it.")
    elif lye.ready_mixed:
        said = message("{mixing}. It is for all batches, with some to spare for what stays in the bottles.")
    elif lye.ahead:
        said = message("{mixing}. Made ahead: what students meet is this solution, and no dry lye.")
    else:
        said = message("{mixing}. Made by the teacher: what students meet is this solution, and no dry lye.")
    return say(said, mixing=mixing_line(lye))
