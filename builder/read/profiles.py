"""`studio.yaml` becomes the studio's profile.

scale-in-grams-missing: no scale that reads in grams, so nothing can be weighed.

Of a file with faults what is sound counts, and stand-ins take the place of the rest, so that what is wrong in recipes and classes is found
all the same. Nothing is published meanwhile.

Decided: of a faulty `studio.yaml` what is sound counts; stand-ins take the place of the rest, and a stand-in scale weighs everything.
Why: findings of recipes are shown in the same run; nothing is published by a stand-in.
"""

from collections.abc import Iterable, Sequence
from copy import deepcopy
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from builder.model.dates.booking import NO_BOOKING, Booking, Venue
from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.own_document import USUAL_LOOK, Look, OwnDocument
from builder.model.picture import heard
from builder.model.place import Name, Place
from builder.model.studio import Profile, Responsible, Scale
from builder.model.teaching.supervision import OwnNumbers
from builder.read.acceptances import make_acceptances
from builder.read.known import Known
from builder.read.label.label_sheets import make_label_wishes
from builder.read.shapes.profile import OwnDocumentShape, ProfileShape, ScaleShape
from builder.read.yaml.fit import fit
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.read.yaml.yaml_nodes import Mark, Step
from builder.units import grams_in

FINDS = (FindingKind("scale-in-grams-missing", STOP, "No scale reads in grams, in which every batch is weighed first."),)

SCALES = ("scales", "scales at home")
# It weighs everything, so that nothing is found that a scale of the studio might weigh well.
ANY_SCALE = {"name": "any scale", "reads to": "0.01 g", "up to": "100 kg"}
STAND_INS: dict[str, Any] = {
    "name": "-",
    "address": ["-"],
    "contact": {"web": "https://example.org"},
    "currency": "USD",
    "paper": "letter",
    **{key: [ANY_SCALE] for key in SCALES},
}
NO_FILE = PlacedYaml("studio.yaml", {}, {(): Mark(Place("studio.yaml"), Place("studio.yaml"))})


def read_profile(placed: PlacedYaml | None, known: Known, findings: list[Finding]) -> Profile:
    """Read the profile; None stands for a file of which nothing can be read. Without any known region, one stands in."""
    known = known if known.regions else replace(known, regions=("-",))
    shape = fit(ProfileShape, placed, findings, known=known) if placed else None
    placed = placed or NO_FILE
    shape, faulty = (shape, frozenset[str]()) if shape else _what_is_sound(placed.data, known)
    scales = {key: _in_grams(key, listed, placed, findings) for key, listed in zip(SCALES, (shape.scales, shape.home_scales), strict=True)}
    contact = {"email": shape.contact.email, "phone": shape.contact.phone, "web": shape.contact.web}
    emergency = {"number": shape.emergency.number, "poison centre": shape.emergency.poison_centre} if shape.emergency else {}
    return shape.make(
        Profile,
        name=shape.name if "name" not in faulty else "",
        address=shape.address if "address" not in faulty else (),
        contact={way: text for way, text in contact.items() if text and "contact" not in faulty},
        region=shape.region if "region" not in faulty else "",
        scales=scales["scales"],
        home_scales=scales["scales at home"],
        responsible=_responsible(shape, placed),
        emergency={whom: text for whom, text in emergency.items() if text},
        teaching_policy={
            name: own.make(OwnNumbers, place=placed.key_place("teaching policy", name)) for name, own in shape.teaching_policy.items()
        },
        venue=shape.venue.make(Venue) if shape.venue else None,
        booking=shape.booking.make(Booking) if shape.booking else NO_BOOKING,
        look=_look(shape, placed),
        documents=tuple(_own_document(name, own, placed) for name, own in shape.documents.items()),
        labels=make_label_wishes(shape.labels, placed),
        accepts=make_acceptances(shape.accepts, placed),
        place=Place(placed.file),
        places=placed.places(),
    )


def _own_document(name: str, shape: OwnDocumentShape, placed: PlacedYaml) -> OwnDocument:
    def at(key: str) -> Place:
        return placed.place("documents", name, key)

    return shape.make(
        OwnDocument,
        name=Name(name, placed.key_place("documents", name)),
        like=Name(shape.like, at("like")),
        template=Name(shape.template, at("template")),
        on_paper=shape.on == "paper",
        seen_by_place=at("seen by"),
    )


def _look(shape: ProfileShape, placed: PlacedYaml) -> Look:
    if shape.look is None:
        return USUAL_LOOK

    def name(text: str, *path: Step) -> Name:
        return Name(text, placed.place("look", *path))

    menu = None if shape.look.menu is None else tuple(name(text, "menu", number) for number, text in enumerate(shape.look.menu))
    logo = None if shape.look.logo is None else name(shape.look.logo, "logo")
    portrait = None if shape.look.portrait is None else name(shape.look.portrait.file, "portrait", "file")
    alt = heard(shape.look.portrait.alt) if shape.look.portrait else ""
    font = None if shape.look.title_font is None else name(shape.look.title_font, "title font")
    places = {key: placed.place("look", key) for key in ("accent", "paper")}
    return shape.look.make(
        Look, logo=logo, portrait=portrait, portrait_alt=alt, title_font=font, menu=menu, place=placed.place("look"), places=places
    )


def _responsible(shape: ProfileShape, placed: PlacedYaml) -> Responsible | None:
    who = shape.responsible_person
    return Responsible(who.name, who.address, placed.place("responsible person", "name")) if who else None


def _what_is_sound(data: object, known: Known) -> tuple[ProfileShape, frozenset[str]]:
    """Fit what is sound in the data, with stand-ins for what is not; give the keys of those too. A faulty scale alone is left out."""
    sound: dict[str, Any] = deepcopy(data) if isinstance(data, dict) else {}
    stand_ins = STAND_INS | {"region": known.regions[0]}
    faulty = set(stand_ins) - set(sound)
    while True:
        try:
            return ProfileShape.model_validate(stand_ins | sound, context=known), frozenset(faulty)
        except ValidationError as error:
            assert any(fault["loc"][0] in sound for fault in error.errors()), f"a stand-in does not fit: {error}"
            for key, *inner in {fault["loc"][:2]: None for fault in reversed(error.errors())}:
                if key in SCALES and inner and isinstance(inner[0], int):
                    sound[str(key)][inner[0]] = ANY_SCALE
                else:
                    sound.pop(str(key), None)
                    faulty.add(str(key))


def _in_grams(key: str, shapes: Sequence[ScaleShape], placed: PlacedYaml, findings: list[Finding]) -> tuple[Scale, ...]:
    """Return the scales of one place, with a stand-in where none reads in grams."""
    scales = tuple(_scales(key, shapes, placed))
    if any(scale.unit == "g" for scale in scales):
        return scales
    wrong = f"`{key}:` has no scale that reads in grams, and every batch is weighed in grams first."
    remedy = "Add one, for example `{name: bench scale, reads to: 1 g, up to: 5 kg}`."
    findings.append(stop("scale-in-grams-missing", placed.places().get(key, Place(placed.file)), wrong, remedy))
    return (*scales, *_scales(key, [ScaleShape.model_validate(ANY_SCALE)], placed))


def _scales(key: str, shapes: Iterable[ScaleShape], placed: PlacedYaml) -> Iterable[Scale]:
    for number, shape in enumerate(shapes):
        division, unit = shape.reads_to
        yield Scale(shape.name, division, shape.up_to, unit, grams_in(unit), shape.accurate_to, placed.place(key, number))
