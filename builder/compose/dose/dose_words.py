"""The most that students may add, in words that several sheets share: in drops and by weight, what is estimated, and why less.

An estimate is marked wherever it stands: `about 8 drops`.
"""

from collections.abc import Sequence
from dataclasses import replace

from builder.compose.recipe.portion_words import container_name
from builder.compose.recipe.wording import counted, grams, listed, percent, sentence, within
from builder.compose.views.take_home import ChoiceView
from builder.model.dose.dose import Dose, Lowered, MostOf
from builder.model.dose.limit import LimitWeight, PercentOf
from builder.model.recipe.filling import Filling
from builder.model.studio import Studio
from builder.rules.basis import from_memory

ABOUT = "about "
STANDS_BEHIND = {
    LimitWeight.LAW: "law",
    LimitWeight.OPINION: "an official opinion, no law",
    LimitWeight.GUIDANCE: "official guidance, no law",
    LimitWeight.STANDARD: "a standard of the trade",
    LimitWeight.HANDBOOK: "the advice of a handbook",
    LimitWeight.PRACTICE: "usual practice",
}


def view_choice(dose: Dose, *, with_drops: bool = True) -> ChoiceView:
    """Give what may be added to one portion. Drops hold for the studio's droppers: at home there is another one."""
    alike = len({one.weight for one in dose.each if one.is_offered}) < 2
    detail = {one.option: _detail(one, with_drops=with_drops, with_weight=not alike) for one in dose.each}
    options = [within(option) + detail[option] if option is not None else f"no {dose.what}" for option in dose.offered]
    each = dose_in_words(dose) if alike else "what is said with each"
    share = "" if any(one.lowered for one in dose.each) else f" ({percent(dose.share)})"
    held_back = [f"{within(one.option)}: not at this size" for one in dose.each if not one.is_offered]
    words = [f"at most {each} for each container{share}", *_mixed(dose, with_drops), *held_back]
    return ChoiceView(sentence(dose.what), listed(options, "or"), "; ".join(words))


def view_choices(studio: Studio, fillings: Sequence[Filling]) -> tuple[ChoiceView, ...]:
    """Give what may be added to one portion of each kind of container that a batch fills; which one it is, where there are several."""
    found = []
    for filling in fillings:
        where = f" in the {container_name(studio, filling.fill)}" if len(fillings) > 1 else ""
        views = (view_choice(dose) for dose in filling.doses)
        found += [replace(view, what=f"{view.what}{where}") for view in views]
    return tuple(found)


def _detail(one: MostOf, *, with_drops: bool, with_weight: bool) -> str:
    words = [grams(one.weight)] if with_weight and one.weight else []
    words += [drops_in_words(one)] if drops_in_words(one) and (with_drops or not one.weight) else []
    return f" ({' or '.join(words)})" if words else ""


def drops_in_words(one: MostOf) -> str:
    """Give the most drops of an option; empty where none are counted."""
    if not one.drops or one.drop is None:
        return ""
    return f"{'' if one.drop.measured else ABOUT}{counted(one.drops, 'drop', 'drops')}"


def mixed_drops(dose: Dose) -> str:
    """Give the most drops of several options together; empty where none are counted."""
    if dose.mixed is None or not dose.mixed.drops:
        return ""
    estimated = any(one.drop and not one.drop.measured for one in dose.each)
    return f"{ABOUT if estimated else ''}{counted(dose.mixed.drops, 'drop', 'drops')}"


def most_in_words(one: MostOf) -> str:
    """Give the most of one option by weight, or in drops where the scale cannot show so little."""
    return grams(one.weight) if one.weight else drops_in_words(one)


def dose_in_words(dose: Dose) -> str:
    """Give the most of a choice for a sentence: one amount, or that of each option where they differ."""
    offered = [one for one in dose.each if one.is_offered]
    if len({most_in_words(one) for one in offered}) < 2:
        return most_in_words(offered[0]) if offered else grams(dose.at_most)
    return listed([f"{most_in_words(one)} of {within(one.option)}" for one in offered], "or")


def dose_in_all(dose: Dose, containers: int) -> Dose:
    """Give the most of a choice for so many containers together: each its own most, so that no limit is passed in any."""
    each = (replace(one, weight=one.weight * containers, drops=one.drops and one.drops * containers) for one in dose.each)
    return replace(dose, each=tuple(each))


def why_less(lowered: Lowered) -> str:
    """Say which limit leaves less of an option than the recipe would allow, and what stands behind it."""
    limit = lowered.limit
    assert limit.most is not None
    of = "the product" if limit.percent_of is PercentOf.PRODUCT else "the oils"
    most = "each in percent of its own limit, together at most 100%" if limit.parts else f"at most {percent(limit.most, 5)} of {of}"
    region = "" if limit.weight is not LimitWeight.LAW or lowered.own_law else f" ({limit.region}, not the law here)"
    stands = f"{limit.at}{from_memory(limit.known)}"
    proven = "" if lowered.proven else ", counted at the most that a blend can hold"
    return f"{limit.ingredient}, {limit.product_type}: {most}{proven}; {STANDS_BEHIND[limit.weight]}{region}: {stands}"


def reasons(doses: Sequence[Dose]) -> tuple[str, ...]:
    """Say of which options less may be added than the recipe would allow, or nothing, and why; those with the same reason together."""
    found: dict[tuple[bool, str], list[str]] = {}
    for one in (one for dose in doses for one in dose.each):
        if one.lowered:
            found.setdefault((one.is_offered, why_less(one.lowered)), []).append(within(one.option))
    return tuple(
        f"{sentence(listed(list(dict.fromkeys(names))))}: {'less than the recipe allows' if offered else 'not at this size'}. {why}."
        for (offered, why), names in found.items()
    )


def _mixed(dose: Dose, with_drops: bool) -> list[str]:
    if dose.mixed is None:
        return []
    drops = mixed_drops(dose)
    return [f"mixed, no more than {grams(dose.mixed.weight)}{f' or {drops}' if drops and with_drops else ''} in all"]
