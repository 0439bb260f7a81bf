"""Where classes are held, and how people book a seat."""

from dataclasses import dataclass, fields, replace

from builder.model.recipe.quantity import Duration


@dataclass(frozen=True)
class Venue:
    """Where classes are held. `country` is its two letters (ISO 3166-1); `map` is the studio's own link; texts are for visitors."""

    street: str
    town: str
    country: str
    name: str = ""
    state: str = ""
    postcode: str = ""
    map: str = ""
    getting_here: str = ""
    access: str = ""
    parking: str = ""

    @property
    def lines(self) -> tuple[str, ...]:
        """Return it as a visitor reads it: what it is called, the street, and the town with what stands behind it."""
        behind = " ".join(part for part in (self.state, self.postcode) if part)
        return tuple(line for line in (self.name, self.street, ", ".join(part for part in (self.town, behind) if part)) if line)

    @property
    def in_a_line(self) -> str:
        """Return it as one line, as a calendar shows it."""
        return ", ".join((*self.lines, self.country))


@dataclass(frozen=True)
class Booking:
    """How to book, and on what terms; what is empty is not said.

    `until` is how long before the date booking ends, `with_an_adult_under` the age in years below which nobody comes alone.
    """

    link: str = ""
    until: Duration | None = None
    with_an_adult_under: int | None = None
    includes: str = ""
    children: str = ""
    payment: str = ""
    refunds: str = ""

    def over(self, other: "Booking") -> "Booking":
        """Return this, and what it leaves out from another."""
        return replace(other, **{field.name: value for field in fields(self) if (value := getattr(self, field.name))})


NO_BOOKING = Booking()
