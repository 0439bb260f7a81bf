"""`supervision.yaml` and `format_advice.yaml` become the rules on supervision, and the advice on formats."""

from collections.abc import Mapping
from dataclasses import replace
from operator import gt, lt
from typing import Any

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.teaching.supervision import Band, OwnNumbers, WatchRule
from builder.model.teaching.teaching import FormatAdvice
from builder.read.known import NamesKnown
from builder.read.shapes.teaching import FormatAdviceShape
from builder.read.text.placed_data import PlacedData
from builder.read.yaml.fit import fit_each
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

FINDS = (
    FindingKind(
        "policy-below-floor", STOP, "The studio's own teaching policy on lye or raw soap is laxer than the least that is published."
    ),
    FindingKind("policy-unknown", STOP, "The studio's own teaching policy names a rule that does not exist."),
)


def read_format_advice(placed: PlacedData, known: NamesKnown, findings: list[Finding]) -> dict[str, FormatAdvice]:
    """Read the advice of one file."""
    entries = fit_each(FormatAdviceShape, placed, findings, known)
    return {entry.key: shape.make(entry, **dict(shape.when)) for shape, entry in entries}


def apply_policy(rules: Mapping[str, WatchRule], policy: Mapping[str, OwnNumbers], findings: list[Finding]) -> dict[str, WatchRule]:
    """Put a studio's own numbers in place of those of the rules that it names."""
    made = dict(rules)
    by_name = {fold(key): key for key in rules}
    for name, own in policy.items():
        key = by_name.get(fold(name))
        if key is None:
            wrong = f'No rule of the teaching policy is called "{name}", so its numbers would change nothing.'
            remedy = f"Write one of these: {', '.join(rules)}.{did_you_mean(name, rules)}"
            findings.append(stop("policy-unknown", own.place, wrong, remedy))
            continue
        rule = made[key]
        own = _above_the_floor(rule, own, findings)
        said: dict[str, Any] = {name: getattr(own, name) for name in ("youngest", "group_of", "most") if getattr(own, name) is not None}
        bands = rule.bands if own.to_one is None else (Band(0, own.to_one),)
        made[key] = replace(rule, **said, bands=bands, shipped=rule, place=own.place)
    return made


def _above_the_floor(rule: WatchRule, own: OwnNumbers, findings: list[Finding]) -> OwnNumbers:
    """Return a studio's numbers with those of the floor where its own are laxer, which is a finding."""
    floor = rule.floor
    if floor is None:
        return own
    words = []
    for name, key, is_laxer in (("youngest", "youngest", lt), ("to_one", "students to a supervisor", gt), ("most", "most students", gt)):
        least, asked = getattr(floor, name), getattr(own, name)
        if least is not None and asked is not None and is_laxer(asked, least):
            words.append(f"{key}: {least}")
            own = replace(own, **{name: least})
    if words:
        wrong = (
            f'Your own numbers of the rule "{rule.key}" let people who are too young, or more of them than adults can watch, work with '
            "what burns and blinds. Below the floor of the library no class is published."
        )
        findings.append(stop("policy-below-floor", own.place, wrong, f'Write "{", ".join(words)}" at the laxest.'))
    return own
