"""The pictures of the classes, each with the page of what it shows.

Decided: the soonest fifteen classes. Why: that many are a page that a phone still loads at once; every other has its picture on its page.
"""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.picture_files import Shown
from builder.compose.teaching.class_facts import by_next_date, picture_of
from builder.compose.views.frame import Link
from builder.compose.views.site.home import GalleryView, ShownPicture
from builder.model.studio import Studio
from builder.words.say import say

_MOST, _FIRST = 15, 4


def shown_pictures(edition: Edition, here: Address, most: int, first: int = 0) -> tuple[ShownPicture, ...]:
    """Return the pictures of the soonest classes, so many at most; so many `first` ones are seen without scrolling."""
    with_picture = [studio_class for studio_class, _ in by_next_date(edition) if studio_class.picture][:most]
    found = (
        (studio_class, picture_of(edition, studio_class, here, Shown.FIRST_IN_A_ROW if number < first else Shown.IN_A_ROW))
        for number, studio_class in enumerate(with_picture)
    )
    return tuple(
        ShownPicture(picture, Link(here.link_to(addresses.class_page(studio_class.key)), studio_class.title))
        for studio_class, picture in found
        if picture
    )


def compose_gallery(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Make the page of pictures; None where no class has any."""
    pictures = shown_pictures(edition, here, _MOST, _FIRST)
    if not pictures:
        return None
    title = say("Pictures")
    around = frame(edition, here, title, say("What is made in classes at {studio}, in pictures.", studio=studio.profile.name))
    return Composed(GalleryView(around, title, pictures))
