"""A studio as one class sees it, so that what is worked out for the class is known until something changes that it sees.

Decided: whatever is remembered of a class is handed this and never the whole studio. Why: what it depends on is what it was handed, and no
list that somebody has to keep.
"""

from collections.abc import Mapping
from dataclasses import fields, replace
from operator import attrgetter

from builder.model.dates.studio_class import StudioClass
from builder.model.library import Unread
from builder.model.picture import PictureFile
from builder.model.remembered import values_known
from builder.model.studio import NOTHING_IN_PART, Studio

# What changes most often stands first, so that two that differ are soon told apart.
_FIRST = ("classes", "recipes", "rosters", "profile")
_PARTS = tuple(attrgetter(name) for name in (*_FIRST, *(one.name for one in fields(Studio) if one.name not in _FIRST)))
_known = values_known("studios as classes see them", 128)
_NOTHING_UNREAD = Unread()


def seen_from(studio: Studio, studio_class: StudioClass) -> Studio:
    """Return what a class sees of its studio: all but pages, pictures other than the logo and those of its own folder, other rosters, what
    was published, and classes that make nothing of what it makes. It is the same value as before where each part is.
    """
    key, logo = studio_class.key, studio.profile.look.logo
    pictures = {name: one for name, one in studio.pictures.items() if name.startswith(f"classes/{key}/") or (logo and name == logo.text)}
    beside = {one.key for made in studio_class.recipe_keys for one in studio.classes_by_recipe.get(made, ())}
    seen = replace(
        studio,
        classes={one: studio.classes[one] for one in sorted({key, *beside} & studio.classes.keys(), key=[*studio.classes].index)},
        rosters={key: studio.rosters[key]} if key in studio.rosters else {},
        pages={},
        pictures=pictures,
        other_files=frozenset(),
        published=(),
        told={},
        unread=_NOTHING_UNREAD,
        in_part=NOTHING_IN_PART,
    )
    before: Studio | None = next((one for one in reversed(_known) if _is_same(one, seen)), None)
    if before is None:
        _known.append(seen)
    return before or seen


def _is_same(one: Studio, other: Studio) -> bool:
    return all(_are_same(part(one), part(other)) for part in _PARTS)


def _are_same(one: object, other: object) -> bool:
    if one is other:
        return True
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return list(one) == list(other) and all(map(_is_identical, one.values(), other.values()))
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(_is_identical, one, other))
    return isinstance(one, frozenset | Unread) and one == other


def _is_identical(one: object, other: object) -> bool:
    return one is other or (isinstance(one, PictureFile) and one == other)
