"""The heading of a part, `Title (who, minutes, ...)`, becomes what it says: who does it, for how long, where, about which recipe."""

import re
from dataclasses import dataclass

from builder.model.finding import Finding, stop
from builder.model.lesson import Where, Who
from builder.model.nearest import did_you_mean
from builder.model.place import Name
from builder.read.amounts import parse_duration
from builder.read.blocks import Heading
from builder.read.text_error import AmountError

_HEADING = re.compile(r"(.*?)\s*\(([^()]*)\)")
_RECIPE = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_WHERE = {where.value: where for where in (Where.CLASS_ONLY, Where.HOME_ONLY)}
_EXAMPLE = '"## Melt the butters (students, 15 min)"'


@dataclass(frozen=True)
class PartHeading:
    """What the heading of a part says."""

    title: str
    who: Who
    minutes: int
    where: Where
    recipe: Name | None


def read_part_heading(heading: Heading, findings: list[Finding]) -> PartHeading | None:
    """Read one heading; None where it does not say who and for how long."""
    match = _HEADING.fullmatch(heading.text)
    if not match or not match[1]:
        wrong = "The heading of a part says who does it and how long it takes, and this one does not."
        remedy = f"Write it like this: {_EXAMPLE}. Who is {', '.join(Who)}."
        findings.append(stop("part-without-who", heading.place, wrong, remedy))
        return None
    words = [word.strip() for word in match[2].split(",")]
    who = _who(words[0], heading, findings)
    minutes = _minutes(words[1] if len(words) > 1 else "", heading, findings)
    extras = _extras(words[2:], heading, findings)
    if who is None or minutes is None or extras is None:
        return None
    return PartHeading(match[1], who, minutes, *extras)


def _who(word: str, heading: Heading, findings: list[Finding]) -> Who | None:
    try:
        return Who(word.casefold())
    except ValueError:
        remedy = f"Write one of these: {', '.join(Who)}.{did_you_mean(word, list(Who))}"
        findings.append(stop("who-unknown", heading.place, f'"{word}" does not say who does this part.', remedy))
        return None


def _minutes(word: str, heading: Heading, findings: list[Finding]) -> int | None:
    try:
        minutes = parse_duration(word).minutes
    except AmountError:
        minutes = None
    if minutes is None or minutes.denominator != 1:
        wrong = f'"{word}" does not say how many minutes this part takes.' if word else "The heading does not say how long this part takes."
        findings.append(stop("minutes-unreadable", heading.place, wrong, f"Write the minutes after who does it: {_EXAMPLE}."))
        return None
    return int(minutes)


def _extras(words: list[str], heading: Heading, findings: list[Finding]) -> tuple[Where, Name | None] | None:
    wheres = [_WHERE[word.casefold()] for word in words if word.casefold() in _WHERE]
    recipes = [word for word in words if word.casefold() not in _WHERE]
    unknown = [word for word in recipes if not _RECIPE.fullmatch(word)]
    for word in unknown:
        remedy = f"Write class only, home only, or the file name of a recipe.{did_you_mean(word, _WHERE)}"
        findings.append(stop("word-unknown", heading.place, f'"{word}" has no meaning in the heading of a part.', remedy))
    if len(wheres) > 1 or len(recipes) > 1:
        wrong = "A part is done in one place and is about one recipe, and more are named here."
        findings.append(stop("part-heading-unclear", heading.place, wrong, "Keep one of them, or make two parts."))
        return None
    if unknown:
        return None
    return (wheres[0] if wheres else Where.EVERYWHERE, Name(recipes[0], heading.place) if recipes else None)
