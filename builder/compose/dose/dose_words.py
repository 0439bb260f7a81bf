"""The most that students may add, in words that several sheets share: in drops and by weight, what is estimated, and why less.

An estimate is marked wherever it stands: `about 8 drops`.
"""

from collections.abc import Sequence
from dataclasses import replace

from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import grams, listed, percent, sentence, within
from builder.compose.views.take_home import ChoiceView
from builder.model.dose.dose import Dose, Lowered, MostOf
from builder.model.dose.limit import LimitWeight, PercentOf
from builder.model.recipe.figure import Known
from builder.model.recipe.filling import Filling
from builder.model.studio import Studio
from builder.words.say import message, say, say_count

STANDS_BEHIND = {
    LimitWeight.LAW: message("law"),
    LimitWeight.OPINION: message("an official opinion, no law"),
    LimitWeight.GUIDANCE: message("official guidance, no law"),
    LimitWeight.STANDARD: message("a standard of the trade"),
    LimitWeight.HANDBOOK: message("the advice of a handbook"),
    LimitWeight.PRACTICE: message("usual practice"),
}
# What choices are usually called, for languages; whatever else a studio calls one is its own word.
USUAL_CHOICES = (message("scent"), message("colour"), message("flavour"))


def view_choice(dose: Dose, *, with_drops: bool = True) -> ChoiceView:
    """Return what may be added to one portion. Drops hold for the studio's droppers: at home there is another one."""
    alike = len({one.weight for one in dose.each if one.is_offered}) < 2
    detail = {one.option: _detail(one, with_drops=with_drops, with_weight=not alike) for one in dose.each}
    options = [within(option) + detail[option] if option is not None else none_of(dose.what) for option in dose.offered]
    each = dose_in_words(dose) if alike else say("what is said with each")
    held_back = [say("{option}: not at this size", option=within(one.option)) for one in dose.each if not one.is_offered]
    if any(one.lowered for one in dose.each):
        most = say("at most {most} for each container", most=each)
    else:
        most = say("at most {most} for each container ({share})", most=each, share=percent(dose.share))
    words = [most, *_mixed(dose, with_drops), *held_back]
    return ChoiceView(sentence(say(dose.what)), listed(options, "or"), "; ".join(words))


def view_choices(studio: Studio, fillings: Sequence[Filling]) -> tuple[ChoiceView, ...]:
    """Return what may be added to one portion of each kind of container that a batch fills; which one it is, where there are several."""
    found: list[ChoiceView] = []
    for filling in fillings:
        container, several = container_name(studio, filling.fill), len(fillings) > 1
        views = (view_choice(dose) for dose in filling.doses)
        if several:
            views = (replace(view, what=say("{choice} in the {container}", choice=view.what, container=container)) for view in views)
        found += views
    return tuple(found)


def _detail(one: MostOf, *, with_drops: bool, with_weight: bool) -> str:
    words = [grams(one.weight)] if with_weight and one.weight else []
    words += [drops_in_words(one)] if drops_in_words(one) and (with_drops or not one.weight) else []
    return f" ({listed(words, 'or')})" if words else ""


def drops_in_words(one: MostOf) -> str:
    """Return the most drops of an option; empty where none are counted."""
    if not one.drops or one.drop is None:
        return ""
    return drops_of(one.drops, about=not one.drop.measured)


def none_of(what: str) -> str:
    """Name the option of a choice that leaves it out: `no scent`."""
    return say("no {choice}", choice=say(what))


def drops_of(count: int, *, about: bool) -> str:
    """Count drops; an estimate says that it is one."""
    if about:
        return say_count("about {count}\u00a0drop", "about {count}\u00a0drops", count)
    return say_count("{count}\u00a0drop", "{count}\u00a0drops", count)


def mixed_drops(dose: Dose) -> str:
    """Return the most drops of several options together; empty where none are counted."""
    if dose.mixed is None or not dose.mixed.drops:
        return ""
    estimated = any(one.drop and not one.drop.measured for one in dose.each)
    return drops_of(dose.mixed.drops, about=estimated)


def mixed_weight(dose: Dose) -> str:
    """Return the most of several options together by weight; empty where the scale cannot show so little."""
    return grams(dose.mixed.weight) if dose.mixed and dose.mixed.weight else ""


def most_in_words(one: MostOf) -> str:
    """Return the most of one option by weight, or in drops where the scale cannot show so little."""
    return grams(one.weight) if one.weight else drops_in_words(one)


def dose_in_words(dose: Dose) -> str:
    """Return the most of a choice for a sentence: one amount, or that of each option where they differ."""
    offered = [one for one in dose.each if one.is_offered]
    if len({most_in_words(one) for one in offered}) < 2:
        return most_in_words(offered[0]) if offered else grams(dose.at_most)
    return listed([say("{weight} of {name}", weight=most_in_words(one), name=within(one.option)) for one in offered], "or")


def dose_in_all(dose: Dose, containers: int) -> Dose:
    """Return the most of a choice for so many containers together: each its own most, so that no limit is passed in any."""
    each = (replace(one, weight=one.weight * containers, drops=one.drops and one.drops * containers) for one in dose.each)
    return replace(dose, each=tuple(each))


def why_less(lowered: Lowered) -> str:
    """Return in words which limit leaves less of an option than the recipe would allow, and what stands behind it."""
    limit = lowered.limit
    assert limit.most is not None
    if limit.parts:
        most = say("each in percent of its own limit, together at most 100%")
    elif limit.percent_of is PercentOf.PRODUCT:
        most = say("at most {share} of the product", share=percent(limit.most, 5))
    else:
        most = say("at most {share} of the oils", share=percent(limit.most, 5))
    if not lowered.proven:
        most = say("{limit}, counted at the most that a blend can hold", limit=most)
    stands = say(STANDS_BEHIND[limit.weight])
    if limit.weight is LimitWeight.LAW and not lowered.own_law:
        stands = say("law ({region}, not the law here)", region=limit.region)
    at = limit.at
    if limit.known is Known.MEMORY:
        at = say("{place}; from memory, to be looked up again", place=limit.at)
    return say(
        "{ingredient}, {product}: {most}; {basis}: {place}",
        ingredient=say(limit.ingredient),
        product=say(limit.product_type),
        most=most,
        basis=stands,
        place=at,
    )


def reasons(doses: Sequence[Dose]) -> tuple[str, ...]:
    """Return in words the options of which less may be added than the recipe would allow, and why; those with the same reason together."""
    found: dict[tuple[bool, str], list[str]] = {}
    for one in (one for dose in doses for one in dose.each):
        if one.lowered:
            found.setdefault((one.is_offered, why_less(one.lowered)), []).append(within(one.option))
    return tuple(
        say(
            message("{options}: less than the recipe allows. {why}.") if offered else message("{options}: not at this size. {why}."),
            options=sentence(listed(list(dict.fromkeys(names)))),
            why=why,
        )
        for (offered, why), names in found.items()
    )


def _mixed(dose: Dose, with_drops: bool) -> list[str]:
    if dose.mixed is None:
        return []
    drops, weight = mixed_drops(dose), mixed_weight(dose)
    if drops and weight and with_drops:
        return [say("mixed, no more than {weight} or {drops} in all", weight=weight, drops=drops)]
    return [say("mixed, no more than {weight} in all", weight=weight or drops)] if weight or drops else []
