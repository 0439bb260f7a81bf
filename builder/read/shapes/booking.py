"""The shapes of where classes are held and of how people book."""

from typing import Annotated

from builder.model.dates.booking import Booking, Venue
from builder.read.makes import Makes
from builder.read.shapes.fields import Text, Time, WebAddress, WholeAboveZero, reads
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.values.zones import parse_country


class VenueShape(Shape, Makes[Venue]):
    """Where classes are held."""

    name: Text = maybe("name", "", "The old dye works, first floor")
    """The name of the house or the room, if it has one."""
    street: Text = needed("street", "1 Example Street")
    """Street and number."""
    town: Text = needed("town", "Example Town")
    """The town."""
    state: Text = maybe("state", "", "VT")
    """The state, province or county, as addresses are written where you are."""
    postcode: Text = maybe("postcode", "", '"00000"')
    """The postcode or ZIP code, in quotation marks."""
    country: Annotated[str, reads(parse_country)] = needed("country", "US")
    """The country, by the two letters of ISO 3166-1."""
    map: WebAddress = maybe("map", "", "https://example.org/map")
    """A link of your own choice to a map. Pages never load one."""
    getting_here: Text = maybe("getting here", "", "The bus stops at the bridge; the door is in the yard.")
    """How people find the door."""
    access: Text = maybe("access", "", "Two steps at the door; a ramp is laid when you ask.")
    """How people come in who cannot climb steps, and what else they should know."""
    parking: Text = maybe("parking", "", "Free in the yard after 9.")
    """Where cars and bicycles stand."""


class BookingShape(Shape, Makes[Booking]):
    """How to book, and on what terms. What a class says counts before what studio.yaml says."""

    link: WebAddress = maybe("link", "", "https://example.org/book")
    """Where a seat is booked. Without it, and with a mail address, pages offer a mail that is filled in."""
    until: Time | None = maybe("until", example="2 days")
    """How long before a date booking ends."""
    includes: Text = maybe("includes", "", "All ingredients, containers and sheets; aprons and goggles are lent.")
    """What the price includes."""
    with_an_adult_under: WholeAboveZero | None = maybe("with an adult under", example="16")
    """The age in years below which somebody comes with an adult. It stands beside the least age wherever a class is offered."""
    children: Text = maybe("children", "", "The adult watches free of charge.")
    """What else holds for children and who comes with them, for example whether they pay."""
    payment: Text = maybe("payment", "", "By card when you book.")
    """How people pay."""
    refunds: Text = maybe("refunds", "", "In full until 7 days before, then a seat on another date.")
    """What happens with the money when somebody cannot come, or you cancel."""
