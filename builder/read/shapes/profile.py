"""The shape of `studio.yaml`."""

from typing import Annotated, Self

from pydantic import model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.read.shapes.fields import (
    NOT_EMPTY,
    Currency,
    Division,
    MailAddress,
    RegionField,
    Text,
    Texts,
    WebAddress,
    Weight,
    YesOrNo,
    reads,
)
from builder.read.shapes.labels import StudioLabelsShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.shapes.teaching import PolicyShape
from builder.read.text.text_error import TextError
from builder.read.values.values import word_of

FINDS = (FindingKind("scale-upside-down", STOP, "A scale holds less than the least that it can show."),)


class ScaleShape(Shape):
    """A scale: its name, its division, the most it holds, and how far it may be off where its maker says so."""

    name: Text = needed("name", "bench scale")
    reads_to: Division = needed("reads to", "1 g")
    up_to: Weight = needed("up to", "5 kg")
    accurate_to: Weight | None = maybe("accurate to", example="2 g")

    @model_validator(mode="after")
    def _holds_what_it_shows(self) -> Self:
        if self.reads_to[0] > self.up_to:
            wrong = "This scale holds less than the least that it can show."
            raise TextError("scale-upside-down", wrong, 'Exchange "reads to" and "up to".')
        if self.accurate_to and self.accurate_to > self.up_to:
            wrong = "This scale is said to be off by more than it can hold."
            remedy = 'Write how far one weighing may be off, as its leaflet says, for example "2 g"; or leave it out.'
            raise TextError("scale-upside-down", wrong, remedy, at=("accurate to",))
        return self


class ContactShape(Shape):
    """How to reach the studio; at least one of the three."""

    email: MailAddress | None = maybe("email", example="hello@example.org")
    phone: Text | None = maybe("phone")
    web: WebAddress | None = maybe("web", example="https://example.org")

    @model_validator(mode="after")
    def _leads_somewhere(self) -> Self:
        if not (self.email or self.phone or self.web):
            wrong = "No way to reach the studio is given, and labels and pages must name one."
            raise TextError("field-missing", wrong, "Write email, phone or web.")
        return self


class EmergencyShape(Shape):
    """Whom to call."""

    number: Text | None = maybe("number")
    poison_centre: Text | None = maybe("poison centre")


class ResponsibleShape(Shape):
    """Who answers for the products inside the region."""

    name: Text = needed("name", "The name of a person or a firm")
    address: Annotated[Texts, NOT_EMPTY] = needed("address", "[2 Example Street, Example Town, Ireland]")


class ProfileShape(Shape):
    """What `studio.yaml` says of the studio."""

    name: Text = needed("name", "The name on your door")
    responsible_person: ResponsibleShape | None = maybe(
        "responsible person", example="{name: A name, address: [2 Example Street, Example Town, Ireland]}"
    )
    tagline: Text = maybe("tagline", "")
    teacher: Text = maybe("teacher", "")
    address: Annotated[Texts, NOT_EMPTY] = needed("address", "[1 Example Street, Example Town]")
    contact: ContactShape = needed("contact", "{email: hello@example.org}")
    public_address: WebAddress = maybe("public address", "")
    region: RegionField = needed("region", "US")
    currency: Currency = needed("currency", "USD")
    paper: Annotated[str, reads(word_of("letter", "A4"))] = needed("paper", "letter")
    scales: Annotated[tuple[ScaleShape, ...], NOT_EMPTY] = needed("scales", "[{name: bench scale, reads to: 1 g, up to: 5 kg}]")
    home_scales: Annotated[tuple[ScaleShape, ...], NOT_EMPTY] = needed(
        "scales at home", "[{name: kitchen scale, reads to: 0.1 g, up to: 2 kg}]"
    )
    emergency: EmergencyShape | None = maybe("emergency", example='{number: "911"}')
    teaching_policy: dict[str, PolicyShape] = maybe("teaching policy", {}, "{lye in the students' hands: {youngest: 18}}")
    costs_on_sheets: YesOrNo = maybe("costs on sheets", False, "no")
    labels: StudioLabelsShape | None = maybe("labels", example="{sheet: letter 2 x 4, right: 0.5 mm, down: -1 mm}")
    accepts: dict[str, Text] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")
