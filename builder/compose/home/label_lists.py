"""The ingredient lists of a take-home sheet: the plainest in full, and what each choice adds to it.

Decided: where a choice adds the same names at the same place whatever else is chosen, that is said once for it, and not for each bottle
that can be made. Why: what is added at two places is soon written, and of six lists the wrong one is soon copied. Where two choices add at
the end, the first stands after the last name of the plainest list. Where none of this holds, or one order is not proven, each list stands
for its own choice; of many, that of the plainest alone.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import permutations

from builder.compose.label.label_words import ingredient_text, names_of
from builder.compose.recipe.wording import listed, sentence, within
from builder.compose.views.take_home import ListedVariant
from builder.model.label.ingredient_list import Variant
from builder.model.label.region import Region
from builder.words.say import say

MOST_LISTS = 6
NEXT = ", "  # Stands between the names of a list.

Added = dict[str, list[str]]  # Names to add, by the name before which they stand; those at the end by no name.


def label_lists(variants: Sequence[Variant], region: Region) -> tuple[ListedVariant, ...]:
    """Return the list of each variant that is proven, in few words; of many that of the plainest, to which students add what they chose."""
    proven = [variant for variant in variants if variant.ingredients.is_proven]
    by_choice = _by_choice(_by_text(proven, region)) if len(proven) == len(variants) else ()
    if len(proven) > MOST_LISTS:
        proven = [min(proven, key=lambda variant: len(_chosen(variant)))]
    return by_choice or tuple(_one_by_one(_by_text(proven, region)))


def _by_text(variants: Iterable[Variant], region: Region) -> dict[str, list[Variant]]:
    """Return variants by their list, the shortest first."""
    lists: dict[str, list[Variant]] = {}
    for variant in variants:
        lists.setdefault(ingredient_text(variant.ingredients, region), []).append(variant)
    return {text: lists[text] for text in sorted(lists, key=lambda text: (text.count(NEXT), text))}


def _by_choice(lists: Mapping[str, Sequence[Variant]]) -> tuple[ListedVariant, ...]:
    """Return the list of what has nothing chosen, and what each choice adds to it; nothing where choices add anything else together."""
    plain = next(iter(lists), "")
    added: dict[tuple[str, str], Added] = {}
    told = [(_chosen(variant), _added(plain, text)) for text, variants in lists.items() for variant in variants]
    added.update((chosen[0], adds) for chosen, adds in told if len(chosen) == 1 and adds is not None)
    if not any(not chosen and adds == {} for chosen, adds in told):
        return ()
    whats = [what for what, _ in lists[plain][0].chosen]
    at_end = {what for (what, _), adds in added.items() if "" in adds}
    orders = [order for order in permutations(whats) if all(adds == _together(added, chosen, order) for chosen, adds in told)]
    if not orders or len(at_end) > 2:
        return ()
    last = max(at_end, key=orders[0].index, default="")
    together: dict[tuple[str, str], list[str]] = {}
    for (what, option), adds in sorted(added.items(), key=lambda one: whats.index(one[0][0])):
        if adds:
            where = _where(adds, "" if what == last else plain.split(NEXT)[-1])
            together.setdefault((what, where), []).append(within(option))
    each_choice = (
        ListedVariant(say("With {choice}", choice=listed(options, "or")), say("add {names}", names=where))
        for (_, where), options in together.items()
    )
    return (ListedVariant(sentence(names_of(lists[plain])), plain), *each_choice)


def _together(added: Mapping[tuple[str, str], Added], chosen: Sequence[tuple[str, str]], order: Sequence[str]) -> Added | None:
    """Return what choices add together, at the end in this order of them; None where two add before one name."""
    all_of_it = Added()
    for one in sorted(chosen, key=lambda one: order.index(one[0])):
        for place, names in added.get(one, {}).items():
            if place and place in all_of_it:
                return None
            all_of_it[place] = [*all_of_it.get(place, []), *names]
    return all_of_it


def _one_by_one(lists: Mapping[str, Sequence[Variant]]) -> Iterable[ListedVariant]:
    """Yield each list, one that only adds names as what it adds to the one in full above it."""
    whole = ""
    for text, variants in lists.items():
        adds = _added(whole, text) if whole else None
        whole = text if adds is None else whole
        yield ListedVariant(sentence(names_of(variants)), text if adds is None else say("the same, with {names}", names=_where(adds)))


def _chosen(variant: Variant) -> list[tuple[str, str]]:
    return [(what, option) for what, option in variant.chosen if option is not None]


def _added(whole: str, text: str) -> Added | None:
    """Return what a list adds to another; None where it is no such list."""
    left, added = whole.split(NEXT), Added()
    for name in text.split(NEXT):
        if left and left[0] == name:
            left.pop(0)
        else:
            added.setdefault(left[0] if left else "", []).append(name)
    return None if left else added


def _where(added: Added, after: str = "") -> str:
    """Return in words what is added where; at the end after a name, where something else may come last."""
    return listed([_place(listed(names), place, after) for place, names in added.items()])


def _place(name: str, place: str, after: str) -> str:
    if place:
        return say("{name} before {next}", name=name, next=place)
    return say("{name} after {before}", name=name, before=after) if after else say("{name} last", name=name)
