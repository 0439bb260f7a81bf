"""The pictures that stand for the studio and for each class where somebody passes a page on: names, the sign, the mark of a recipe.

Who shows such a picture asks for it by its whole address, so that a studio without a public address has none. A name with letters that our
fonts lack is not drawn.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Edition
from builder.compose.machines.absolute import absolute
from builder.compose.ornament.flower import Point, flower_of
from builder.compose.ornament.portrait import Portrait, portrait_of
from builder.compose.ornament.tints import paler, tint_of
from builder.compose.views.frame import PageFrame, SheetFrame
from builder.model.dates.studio_class import StudioClass
from builder.model.sharing import Shape, SharingPicture
from builder.rules.look.logo import logo_of
from builder.words.say import say

F = TypeVar("F", PageFrame, PageFrame | SheetFrame)
_STEPS = 12  # Straight pieces for each curve: at this size no eye sees them.


def sharing_pictures(edition: Edition) -> tuple[SharingPicture, ...]:
    """Return the pictures of the studio and of each class, as far as they can be drawn."""
    if not edition.studio.profile.public_address or not edition.classes:
        return ()
    profile, logo = edition.studio.profile, logo_of(edition.studio)
    marks = {studio_class.key: portrait_of(edition.studio, plan.made[0].batch) for studio_class, plan in edition.classes if plan.made}
    grandest = max(marks.values(), key=lambda one: (len(one.parts), one.recipe), default=None)
    home = SharingPicture(addresses.SHARING.path, profile.name, profile.tagline, "", *_shapes(grandest))
    of_classes = (
        SharingPicture(addresses.class_sharing(key).path, profile.name, "", edition.studio.classes[key].title, *_shapes(marks.get(key)))
        for key in (studio_class.key for studio_class, _ in edition.classes)
    )
    return tuple(replace(one, logo=logo) for one in (home, *of_classes) if _can_be_drawn(edition, one.title, one.studio, one.tagline))


def with_sharing(edition: Edition, around: F, studio_class: StudioClass | None = None) -> F:
    """Add its picture to the frame of a page: that of its class, or of the studio."""
    profile = edition.studio.profile
    if not isinstance(around, PageFrame) or around.sharing is None or not edition.classes:
        return around
    title, tagline = (studio_class.title, "") if studio_class else ("", profile.tagline)
    if not _can_be_drawn(edition, title, profile.name, tagline):
        return around
    at: Address = addresses.class_sharing(studio_class.key) if studio_class else addresses.SHARING
    words = say("{title}, beside a flower drawn from the recipe", title=title or profile.name)
    return replace(around, sharing=replace(around.sharing, picture=absolute(edition, at), picture_text=words))


def class_picture(edition: Edition, studio_class: StudioClass) -> str:
    """Return the whole address of the picture of a class; empty where there is none."""
    drawn = _can_be_drawn(edition, studio_class.title, edition.studio.profile.name)
    return absolute(edition, addresses.class_sharing(studio_class.key)) if drawn else ""


def _can_be_drawn(edition: Edition, *texts: str) -> bool:
    letters = edition.studio.letters
    return not letters or all(ord(letter) in letters for text in texts for letter in text)


def _shapes(portrait: Portrait | None) -> tuple[tuple[Shape, ...], tuple[float, float, float] | None]:
    """Return the petals of a mark from back to front, and its heart."""
    if portrait is None:
        return (), None
    flower, tint = flower_of(portrait, 1), tint_of(portrait)
    last = max(1, len(flower.petals) - 1)
    tints = (paler(tint, 0.6 * (1 - number / last)) for number in range(len(flower.petals)))
    petals = tuple(Shape(tuple(_along(petal.outline)), fill) for petal, fill in zip(flower.petals, tints, strict=True))
    return petals, (*flower.heart.at, flower.heart.radius)


def _along(outline: tuple[Point, ...]) -> Iterator[Point]:
    """Yield points along cubic curves, of which each begins where the one before ends."""
    for at in range(0, len(outline) - 1, 3):
        a, b, c, d = outline[at : at + 4]
        for step in range(_STEPS):
            t = step / _STEPS
            shares = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
            x, y = (sum(share * point[axis] for share, point in zip(shares, (a, b, c, d), strict=True)) for axis in (0, 1))
            yield x, y
