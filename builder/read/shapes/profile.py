"""The shape of `studio.yaml`."""

from fractions import Fraction
from typing import Annotated, Self

from pydantic import model_validator

from builder.model.finding_kind import STOP, FindingKind
from builder.model.label.language import OWN
from builder.model.own_document import Look, OwnDocument, SeenBy
from builder.model.picture import heard
from builder.model.place import Name
from builder.model.recipe.quantity import Mass, WeighingUnit
from builder.model.studio import Profile, Responsible, Scale
from builder.read.makes import Makes, becomes, carried
from builder.read.shapes.booking import BookingShape, VenueShape
from builder.read.shapes.fields import (
    NOT_EMPTY,
    Currency,
    Division,
    LanguageField,
    MailAddress,
    Named,
    Reason,
    RegionField,
    Text,
    Texts,
    WebAddress,
    Weight,
    YesOrNo,
    reads,
)
from builder.read.shapes.labels import PaperField, StudioLabelsShape
from builder.read.shapes.shape import Shape, maybe, needed
from builder.read.shapes.teaching import PolicyShape
from builder.read.text.placed_data import PlacedData
from builder.read.text.text_error import TextError
from builder.read.values.colours import parse_colour
from builder.read.values.values import either_of, member_of
from builder.read.values.zones import parse_zone
from builder.units import grams_in

FINDS = (FindingKind("scale-upside-down", STOP, "A scale holds less than the least that it can show."),)


class ScaleShape(Shape, Makes[Scale]):
    """A scale: its name, its division, the most it holds, and how far it may be off where its maker says so."""

    name: Text = needed("name", "bench scale")
    """What you call the scale; sheets say on which scale an amount is weighed."""
    reads_to: Division = needed("reads to", "1 g")
    """The smallest step that it shows, with its unit. Amounts are rounded to it, in grams or in ounces as it reads."""
    up_to: Weight = needed("up to", "5 kg")
    """The most that it holds, cup and all."""
    accurate_to: Weight | None = maybe("accurate to", example="2 g")
    """How far one weighing may be off either way, from its leaflet. Without it, one step of what it shows."""

    @becomes("division")
    def _least(self, _: PlacedData) -> Mass:
        return self.reads_to[0]

    @becomes("unit")
    def _unit(self, _: PlacedData) -> WeighingUnit:
        return self.reads_to[1]

    @becomes("grams_per_unit")
    def _grams_in_one(self, _: PlacedData) -> Fraction:
        return grams_in(self.reads_to[1])

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
    """A mail address; a link on your pages."""
    phone: Text | None = maybe("phone", example="+1 802 555 0100")
    """A telephone number. Your pages show it as you write it, and link to it with the code of the country: that of `where:`, or of a region
    that is one country. With + and the code before it, it is dialled so from anywhere."""
    web: WebAddress | None = maybe("web", example="https://example.org")
    """A whole web address, with https://."""

    @model_validator(mode="after")
    def _leads_somewhere(self) -> Self:
        if not (self.email or self.phone or self.web):
            wrong = "No way to reach the studio is given, and labels and pages must name one."
            raise TextError("field-missing", wrong, "Write email, phone or web.")
        return self


class EmergencyShape(Shape):
    """Whom to call."""

    number: Text | None = maybe("number", example='"911"')
    """The number that calls an ambulance where you are. It stands on sheets beside what to do when something goes wrong."""
    poison_centre: Text | None = maybe("poison centre", example='"+1 802 555 0111"')
    """The number of the poison centre where you are."""


class ResponsibleShape(Shape, Makes[Responsible]):
    """Who answers for the products inside the region."""

    stands_at = "name"

    name: Text = needed("name", "The name of a person or a firm")
    """The person or firm that answers for the products inside the region, as the law there asks."""
    address: Annotated[Texts, NOT_EMPTY] = needed("address", "[2 Example Street, Example Town, Ireland]")
    """The postal address, one line an item, with the country at the end."""


class OwnDocumentShape(Shape, Makes[OwnDocument]):
    """A document of the studio's own: another template for what one of ours shows."""

    like: Named = needed("like", "check list")
    """The document that it is like: yours is made whenever that one is made, and may show whatever that one holds."""
    template: Named = needed("template", "packing-list.html")
    """The file in the folder `layouts` that lays it out."""
    on_paper: Annotated[bool, reads(either_of("paper", "screen"))] = needed("on", "paper")
    """Whether it is a PDF to print (paper) or a page (screen)."""
    seen_by: Annotated[SeenBy, reads(member_of(SeenBy))] = needed("seen by", "staff")
    """Who may see it: staff, students or everybody. What everybody may see is uploaded with the site, and the page that it is like links to
    it; all else stays in the studio. It can be seen by no more people than the document that it is like."""
    copies: Text = maybe("copies", "", "1 for the helper at the door")
    """What the check list of a date says of how many to print."""


class PortraitShape(Shape):
    """A picture of the teacher."""

    file: Named = needed("file", "teacher.jpg")
    """The name of a picture beside studio.yaml."""
    alt: Text = needed("alt", "The teacher pours soap into a mould")
    """What it shows, for those who cannot see it; or `decorative`, where it says nothing that the text does not."""


class LookShape(Shape, Makes[Look]):
    """What your pages look like. Whatever is left out is as ours is."""

    accent: Annotated[str, reads(parse_colour)] = maybe("accent", "", example='"#7a3b69"')
    """The colour of links and buttons, as # and six digits, in quotes. What fits it by night is worked out. One that cannot be read on your
    paper is a caution, with the nearest that can."""
    paper: Annotated[str, reads(parse_colour)] = maybe("paper", "", example='"#fbf6ee"')
    """The colour behind your pages by day, a light one."""
    logo: Named | None = maybe("logo", example="logo.svg")
    """A picture beside studio.yaml (SVG, PNG, JPEG or WebP), which stands beside your name on pages and take-home sheets."""
    portrait: PortraitShape | None = maybe("portrait", example="{file: teacher.jpg, alt: The teacher pours soap into a mould}")
    """A picture of the teacher beside studio.yaml, which stands beside the name of the teacher on the home page."""
    title_font: Named | None = maybe("title font", example="our-hand.ttf")
    """A font file beside studio.yaml (TTF or OTF) for the titles of pages and sheets, and for names on labels. Amounts, steps, cautions and
    what the law asks for keep the type of ours."""
    menu: Annotated[tuple[Named, ...], NOT_EMPTY] | None = maybe("menu", example="[dates, classes, visit]")
    """What stands in the menu, in this order: classes, dates, ways of teaching, visit, pictures, and pages of yours by the names of their
    files. What is left out is found at the foot of each page."""

    @becomes("portrait")
    def _picture(self, placed: PlacedData) -> Name | None:
        return carried(self.portrait.file, placed.inside("portrait", "file")) if self.portrait else None

    @becomes("portrait_alt")
    def _heard(self, _: PlacedData) -> str:
        return heard(self.portrait.alt) if self.portrait else ""


class ProfileShape(Shape, Makes[Profile]):
    """What `studio.yaml` says of the studio."""

    name: Text = needed("name", "The name on your door")
    """The name of the studio, on every page, sheet and label."""
    responsible: ResponsibleShape | None = maybe(
        "responsible person", example="{name: A name, address: [2 Example Street, Example Town, Ireland]}"
    )
    """In the European Union and the United Kingdom, who answers for the products. Without it, the studio itself, if the country at the end
    of its address is inside the region."""
    tagline: Text = maybe("tagline", "", example="Soap and other things made by hand")
    """One line that stands beside the name on your pages."""
    teacher: Text = maybe("teacher", "", example="The name of the teacher")
    """The name of the teacher, for pages and sheets."""
    address: Annotated[Texts, NOT_EMPTY] = needed("address", "[1 Example Street, Example Town]")
    """The postal address, one line an item; in the European Union and the United Kingdom with the country at the end. It stands on labels.
    """
    contact: ContactShape = needed("contact", "{email: hello@example.org}")
    """How people reach you: one of the three at least. The first of them stands on labels."""
    public_address: WebAddress = maybe("public address", "", example="https://example.org")
    """Where your site will be on the web. With it, tags bear a QR code of the class page, and pages name their own address."""
    time_zone: Annotated[str, reads(parse_zone)] = maybe("time zone", "", "America/New_York")
    """The time zone of your classes, by its name in the time zone database. With it, calendars and search engines know the hour wherever
    they are; without it, calendar files give the hour of the clock on your wall."""
    venue: VenueShape | None = maybe("where", example="{street: 1 Example Street, town: Example Town, country: US}")
    """Where classes are held. Without it, pages give your postal address."""
    booking: BookingShape | None = maybe("booking", example="{until: 2 days, includes: All that you use.}")
    """How people book, and on what terms."""
    region: RegionField = needed("region")
    """Whose rules labels and limits follow."""
    language: LanguageField = maybe("language", OWN, "English")
    """The language of your pages and sheets, and of what you write, if it is not English: one of which there is a file with every message.
    Labels have the languages of their region, whatever stands here."""
    currency: Currency = needed("currency", "USD")
    """The currency of all prices, by its three letters."""
    paper: PaperField = needed("paper", "letter")
    """The paper in your printer."""
    scales: Annotated[tuple[ScaleShape, ...], NOT_EMPTY] = needed("scales", "[{name: bench scale, reads to: 1 g, up to: 5 kg}]")
    """The scales in the studio. Each amount goes on the finest one that holds it; one of them at least has to read in grams."""
    home_scales: Annotated[tuple[ScaleShape, ...], NOT_EMPTY] = needed(
        "scales at home", "[{name: kitchen scale, reads to: 0.1 g, up to: 2 kg}]"
    )
    """The scales that people have at home, for take-home sheets. With one in grams and one in ounces, both are printed and both are
    checked."""
    emergency: EmergencyShape | None = maybe("emergency", example='{number: "911"}')
    """Whom to call in an emergency."""
    teaching_policy: dict[str, PolicyShape] = maybe("teaching policy", {}, "{lye in the students' hands: {youngest: 18}}")
    """Your own numbers in place of those of a rule on supervision, by the name of the rule. Where they are laxer on lye than ours each
    class says so, and below a floor they stop it."""
    costs_on_sheets: YesOrNo = maybe("costs on sheets", False, "no")
    """Whether take-home sheets say what a home batch costs. Public sheets never do."""
    labels: StudioLabelsShape | None = maybe("labels", example="{sheet: letter 2 x 4, right: 0.5 mm, down: -1 mm}")
    """What holds for all your labels, and how far off your printer prints."""
    documents: dict[str, OwnDocumentShape] = maybe(
        "documents", {}, "{packing list: {like: check list, template: packing-list.html, on: paper, seen by: staff}}"
    )
    """Documents of your own, by their names, beside those that every studio has."""
    look: LookShape | None = maybe("look", example='{accent: "#7a3b69", logo: logo.svg}')
    """What your pages look like: colours, logo, menu."""
    accepts: dict[str, Reason] = maybe("accepts", {}, "{name-of-the-finding: the reason in a sentence}")
    """Findings of the studio as a whole that you accept, by name, each with its reason in a sentence."""

    @becomes("contact")
    def _ways(self, _: PlacedData) -> dict[str, str]:
        return {way: text for way, text in self.contact if text}

    @becomes("emergency")
    def _whom_to_call(self, _: PlacedData) -> dict[str, str]:
        said = {"number": self.emergency.number, "poison centre": self.emergency.poison_centre} if self.emergency else {}
        return {whom: text for whom, text in said.items() if text}
