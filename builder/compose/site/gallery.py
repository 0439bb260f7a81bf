"""The pictures of the classes, each with the page of what it shows."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import frame
from builder.compose.teaching.class_facts import by_next_date, picture_of
from builder.compose.views.frame import Link
from builder.compose.views.site.home import GalleryView, ShownPicture
from builder.model.studio import Studio
from builder.words.say import say


def shown_pictures(edition: Edition, here: Address) -> tuple[ShownPicture, ...]:
    """Give every picture of a class, the soonest class first."""
    found = ((studio_class, picture_of(studio_class, here)) for studio_class, _ in by_next_date(edition))
    return tuple(
        ShownPicture(picture, Link(here.link_to(addresses.class_page(studio_class.key)), studio_class.title))
        for studio_class, picture in found
        if picture
    )


def compose_gallery(edition: Edition, studio: Studio, here: Address) -> Composed | None:
    """Make the page of pictures; None where no class has any."""
    pictures = shown_pictures(edition, here)
    if not pictures:
        return None
    title = say("Pictures")
    around = frame(edition, here, title, say("What is made in classes at {studio}, in pictures.", studio=studio.profile.name))
    return Composed(around.title, GalleryView(around, title, pictures))
