"""The ingredient lists of a take-home sheet: the plainest in full, and what each choice adds to it.

Decided: where a choice adds the same names at the same place whatever else is chosen, that is said once for it, and not for each bottle
that can be made. Why: what is added at two places is soon written, and of six lists the wrong one is soon copied. Where it does not, or one
order is not proven, each list stands for its own choice.
"""

from collections.abc import Iterable, Mapping, Sequence

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
    if len(proven) > MOST_LISTS:
        proven = [min(proven, key=lambda variant: len(_chosen(variant)))]
    lists: dict[str, list[Variant]] = {}
    for variant in proven:
        lists.setdefault(ingredient_text(variant.ingredients, region), []).append(variant)
    by_text = {text: lists[text] for text in sorted(lists, key=lambda text: (text.count(NEXT), text))}
    return (_by_choice(by_text) if len(proven) == len(variants) else ()) or tuple(_one_by_one(by_text))


def _by_choice(lists: Mapping[str, Sequence[Variant]]) -> tuple[ListedVariant, ...]:
    """Return the list of what has nothing chosen, and what each choice adds to it; nothing where choices add anything else together."""
    plain = next(iter(lists), "")
    added: dict[tuple[str, str], Added] = {}
    told = [(_chosen(variant), _added(plain, text)) for text, variants in lists.items() for variant in variants]
    added.update((chosen[0], adds) for chosen, adds in told if len(chosen) == 1 and adds is not None)
    if not any(not chosen and adds == {} for chosen, adds in told):
        return ()
    for chosen, adds in told:
        each = [added.get(one, {}) for one in chosen]
        places = [place for one in each for place in one]
        if len(places) > len(set(places)) or adds != {place: names for one in each for place, names in one.items()}:
            return ()
    together: dict[tuple[str, str], list[str]] = {}
    order = [what for variants in lists.values() for what, _ in variants[0].chosen]
    for (what, option), adds in sorted(added.items(), key=lambda one: order.index(one[0][0])):
        if adds:
            together.setdefault((what, _where(adds)), []).append(within(option))
    each_choice = (
        ListedVariant(say("With {choice}", choice=listed(options, "or")), say("add {names}", names=where))
        for (_, where), options in together.items()
    )
    return (ListedVariant(sentence(names_of(lists[plain])), plain), *each_choice)


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


def _where(added: Added) -> str:
    return listed(
        [
            say("{name} before {next}", name=listed(names), next=place) if place else say("{name} last", name=listed(names))
            for place, names in added.items()
        ]
    )
