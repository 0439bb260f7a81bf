"""Where classes are held, for programs."""

from builder.model.studio import Profile


def place_in_a_line(profile: Profile) -> str:
    """Return where classes are held as one line: the place that the studio names, or its postal address."""
    return profile.venue.in_a_line if profile.venue else ", ".join((profile.name, *profile.address))
