"""`studio.yaml` becomes the studio's profile."""

from builder.model.finding import Finding
from builder.model.place import Place
from builder.model.studio import Profile, Scale
from builder.model.supervision import OwnNumbers
from builder.read.acceptances import make_acceptances
from builder.read.fit import fit
from builder.read.label_stocks import make_label_wishes
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.profile import ProfileShape, ScaleShape
from builder.units import grams_in


def read_profile(placed: PlacedYaml, findings: list[Finding]) -> Profile | None:
    """Read the profile; None where it cannot be made."""
    shape = fit(ProfileShape, placed, findings)
    if shape is None:
        return None
    contact = {"email": shape.contact.email, "phone": shape.contact.phone, "web": shape.contact.web}
    emergency = {"number": shape.emergency.number, "poison centre": shape.emergency.poison_centre} if shape.emergency else {}
    return Profile(
        name=shape.name,
        address=shape.address,
        contact={way: text for way, text in contact.items() if text},
        region=shape.region,
        currency=shape.currency,
        paper=shape.paper,
        scales=_scales("scales", shape.scales, placed),
        home_scales=_scales("scales at home", shape.home_scales, placed),
        tagline=shape.tagline,
        teacher=shape.teacher,
        public_address=shape.public_address,
        emergency={whom: text for whom, text in emergency.items() if text},
        teaching_policy={
            name: OwnNumbers(own.youngest, own.group_of, own.to_one, own.most, placed.key_place("teaching policy", name))
            for name, own in shape.teaching_policy.items()
        },
        costs_on_sheets=shape.costs_on_sheets,
        labels=make_label_wishes(shape.labels, placed),
        accepts=make_acceptances(shape.accepts, placed),
        place=Place(placed.file),
        places=placed.places(),
    )


def unread_profile(placed: PlacedYaml | None) -> Profile:
    """Stand in for a profile that cannot be made, with the scales that can; its findings hold back every class."""
    scales = {key: _sound_scales(key, placed) if placed else () for key in ("scales", "scales at home")}
    return Profile("", (), {}, "US", "USD", "letter", scales["scales"], scales["scales at home"])


def _sound_scales(key: str, placed: PlacedYaml) -> tuple[Scale, ...]:
    listed = placed.data.get(key) if isinstance(placed.data, dict) else None
    shapes = (fit(ScaleShape, placed, [], key, number) for number in range(len(listed if isinstance(listed, list) else ())))
    return _scales(key, tuple(shape for shape in shapes if shape), placed)


def _scales(key: str, shapes: tuple[ScaleShape, ...], placed: PlacedYaml) -> tuple[Scale, ...]:
    made = []
    for number, shape in enumerate(shapes):
        division, unit = shape.reads_to
        made.append(Scale(shape.name, division, shape.up_to, unit, grams_in(unit), shape.accurate_to, placed.place(key, number)))
    return tuple(made)
