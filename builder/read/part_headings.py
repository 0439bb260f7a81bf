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
        remedy = f"Write it like this: {_EXAMPLE}. Who is one of {', '.join(Who)}."
        findings.append(stop("part-without-who", heading.place, wrong, remedy))
        return None
    words = [word.strip() for word in match[2].split(",")]
    second = words[1] if len(words) > 1 else ""
    if _parse_who(second) and _parse_minutes(words[0]) is not None:
        remedy = f'Write "({second}, {words[0]})".'
        findings.append(stop("who-unknown", heading.place_of(words[0]), "Who does the part is said first, and then for how long.", remedy))
        return None
    who = _who(words[0], heading, findings)
    minutes = _minutes(second, heading, findings)
    extras = _extras(words[2:], heading, findings)
    if who is None or minutes is None or extras is None:
        return None
    return PartHeading(match[1], who, minutes, *extras)


def _parse_who(word: str) -> Who | None:
    return next((who for who in Who if who == word.casefold()), None)


def _parse_minutes(word: str) -> int | None:
    try:
        minutes = parse_duration(word).minutes
    except AmountError:
        return None
    return int(minutes) if minutes.denominator == 1 else None


def _who(word: str, heading: Heading, findings: list[Finding]) -> Who | None:
    who = _parse_who(word)
    if who is None:
        wrong = f'"{word}" does not say who does this part.' if word else "The heading does not say who does this part."
        remedy = f"Write one of these: {', '.join(Who)}.{did_you_mean(word, list(Who))}"
        findings.append(stop("who-unknown", heading.place_of(word), wrong, remedy))
    return who


def _minutes(word: str, heading: Heading, findings: list[Finding]) -> int | None:
    minutes = _parse_minutes(word)
    if minutes is None:
        wrong = f'"{word}" does not say how long this part takes.' if word else "The heading does not say how long this part takes."
        remedy = f"Write whole minutes after who does it: {_EXAMPLE}."
        if _parse_minutes(f"{word} min"):
            wrong, remedy = f'"{word}" has no unit.', f'Write "{word} min".'
        findings.append(stop("minutes-unreadable", heading.place_of(word), wrong, remedy))
    return minutes


def _extras(words: list[str], heading: Heading, findings: list[Finding]) -> tuple[Where, Name | None] | None:
    wheres = [_WHERE[word.casefold()] for word in words if word.casefold() in _WHERE]
    recipes = [word for word in words if word.casefold() not in _WHERE]
    unknown = [word for word in recipes if not _RECIPE.fullmatch(word)]
    for word in unknown:
        remedy = f"Write class only, home only, or the file name of a recipe.{did_you_mean(word, _WHERE)}"
        findings.append(stop("word-unknown", heading.place_of(word), f'"{word}" has no meaning in the heading of a part.', remedy))
    if unknown:
        return None
    if len(wheres) > 1 or len(recipes) > 1:
        wrong = "A part is done in one place and is about one recipe, and more are named here."
        findings.append(stop("part-heading-unclear", heading.place_of(words[-1]), wrong, "Keep one of them, or make two parts."))
        return None
    return (wheres[0] if wheres else Where.EVERYWHERE, Name(recipes[0], heading.place_of(recipes[0])) if recipes else None)
