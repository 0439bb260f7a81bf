"""`studio.yaml` becomes the studio's profile.

Decided: of a faulty `studio.yaml` what is sound counts; stand-ins take the place of the rest, and a stand-in scale weighs everything.
Why: findings of recipes are shown in the same run; nothing is published by a stand-in.
"""

from copy import deepcopy
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Place
from builder.model.studio import Profile, Scale
from builder.read.known import NamesKnown
from builder.read.shapes.profile import ProfileShape, ScaleShape
from builder.read.text.placed_data import Mark, PlacedData
from builder.read.yaml.fit import fit

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
# What is left empty of what cannot be read: a stand-in would be printed, or judged.
_UNSAID: dict[str, Any] = {"name": "", "address": (), "contact": {}, "region": ""}
NO_FILE = PlacedData("studio.yaml", {}, {(): Mark(Place("studio.yaml"), Place("studio.yaml"))})


def read_profile(placed: PlacedData | None, known: NamesKnown, findings: list[Finding]) -> Profile:
    """Read the profile; None stands for a file of which nothing can be read. Without any known region, one stands in."""
    known = known if known.regions else replace(known, regions=("-",))
    shape = fit(ProfileShape, placed, findings, known=known) if placed else None
    placed = placed or NO_FILE
    shape, faulty = (shape, frozenset[str]()) if shape else _what_is_sound(placed.data, known)
    unsaid = {key: nothing for key, nothing in _UNSAID.items() if key in faulty}
    profile = shape.make(placed, place=Place(placed.file), **unsaid)
    scales, at_home = (_in_grams(*of, placed, findings) for of in zip(SCALES, (profile.scales, profile.home_scales), strict=True))
    return replace(profile, scales=scales, home_scales=at_home)


def _what_is_sound(data: object, known: NamesKnown) -> tuple[ProfileShape, frozenset[str]]:
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


def _in_grams(key: str, scales: tuple[Scale, ...], placed: PlacedData, findings: list[Finding]) -> tuple[Scale, ...]:
    """Return the scales of one place, with a stand-in where none reads in grams."""
    if any(scale.unit == "g" for scale in scales):
        return scales
    wrong = f"`{key}:` has no scale that reads in grams, and every batch is weighed in grams first."
    remedy = "Add one, for example `{name: bench scale, reads to: 1 g, up to: 5 kg}`."
    findings.append(stop("scale-in-grams-missing", placed.places().get(key, Place(placed.file)), wrong, remedy))
    return (*scales, ScaleShape.model_validate(ANY_SCALE).make(placed.inside(key, 0)))
