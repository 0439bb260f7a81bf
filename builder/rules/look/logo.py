"""The logo of a studio where it is drawn to a size of ours: on labels that are to bear it, and in the pictures that stand for its pages."""

from builder.model.label.logo import Logo
from builder.model.studio import Studio


def logo_of(studio: Studio) -> Logo | None:
    """Return the logo; None where there is none, or where it does not say how wide it is to its height."""
    named = studio.profile.look.logo
    picture = studio.pictures.get(named.text) if named else None
    if named is None or picture is None or picture.size is None:
        return None
    is_drawing = not picture.is_photograph
    return Logo(named.text, picture.size.width / picture.size.height, see_through=is_drawing or picture.see_through)


def logo_on_labels(studio: Studio) -> Logo | None:
    """Return the logo where labels are to bear it."""
    return logo_of(studio) if studio.profile.labels.logo else None
