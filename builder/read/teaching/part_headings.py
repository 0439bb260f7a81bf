"""The heading of a part, `Title (who, minutes, ...)`, becomes what it says: who does it, for how long, where, about which recipe.

Six more words say how things stand: `2 days before`, of what is done ahead, `2 days later`, of what staff do after the class, `in the
wait`, of what is done while a wait lasts, `cooled`, of what begins when nothing is hot any more, `no raw soap`, of what students do
with no soap in their hands that still holds lye, and `group 2`, of what one group does for all.
"""

import re
from dataclasses import replace

from builder.model.finding import Finding, stop
from builder.model.finding_kind import STOP, FindingKind
from builder.model.place import Name
from builder.model.teaching.lesson import Part, Where, Who
from builder.model.teaching.prose import Sentence, sentences_of
from builder.read.teaching.blocks import Heading
from builder.read.text.text_error import AmountError
from builder.read.values.amounts import parse_duration
from builder.words.nearest import did_you_mean

FINDS = (
    FindingKind("minutes-unreadable", STOP, "The heading of a part does not say how long it takes."),
    FindingKind("part-heading-unclear", STOP, "The heading of a part names several places or recipes."),
    FindingKind("part-without-who", STOP, "The heading of a part does not say who does it and how long it takes."),
    FindingKind("who-unknown", STOP, "The heading of a part names somebody who is none of those who do things here."),
)

# What people call those who do a part, and which of ours it is.
_MEANT = dict.fromkeys(("pairs", "pair", "groups", "group", "guests", "participants", "children", "kids"), (Who.STUDENTS.value,))
_MEANT |= dict.fromkeys(("everybody", "everyone", "all", "both", "whole class"), (Who.TOGETHER.value,))
_MEANT |= dict.fromkeys(("instructor", "me", "demo", "studio", "assistant", "assistants", "staff"), (Who.TEACHER.value,))
_MEANT |= dict.fromkeys(("wait", "break", "nobody"), (Who.WAITING.value,))

_HEADING = re.compile(r"(.*?)\s*\(([^()]*)\)")
_RECIPE = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_DAYS_BEFORE = re.compile(r"(\d{1,3}) days? before", re.ASCII | re.IGNORECASE)
_DAYS_LATER = re.compile(r"(\d{1,3}) days? later", re.ASCII | re.IGNORECASE)
_GROUP = re.compile(r"group ([1-9]\d?)", re.ASCII | re.IGNORECASE)
_IN_THE_WAIT, _COOLED, _NO_RAW_SOAP = "in the wait", "cooled", "no raw soap"
_WHERE = {where.value: where for where in (Where.CLASS_ONLY, Where.HOME_ONLY)}
_EXAMPLE = '"## Melt the butters (students, 15 min)"'


def read_part_heading(heading: Heading, findings: list[Finding]) -> Part | None:
    """Read one heading as a part that has no text yet; None where it does not say who and for how long."""
    match = _HEADING.fullmatch(heading.text)
    if not match or not match[1]:
        wrong = "The heading of a part says who does it and how long it takes, and this one does not."
        remedy = f"Write it like this: {_EXAMPLE}. Who is one of {', '.join(Who)}."
        findings.append(stop("part-without-who", heading.place, wrong, remedy))
        return None
    words, time_words = _divide([word.strip() for word in match[2].split(",")])
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
    if not _time_words_fit(who, time_words, heading, findings):
        return None
    where, recipe = extras
    said = {word.casefold() for word in time_words}
    return Part(
        title=match[1],
        who=who,
        minutes=minutes,
        blocks=(),
        where=where,
        recipe=recipe,
        place=heading.place,
        days_before=_number(_DAYS_BEFORE, time_words),
        in_the_wait=_IN_THE_WAIT in said,
        days_later=_number(_DAYS_LATER, time_words),
        cooled=_COOLED in said,
        no_raw_soap=_NO_RAW_SOAP in said,
        group=_number(_GROUP, time_words) or None,
        title_says=_without_brackets(heading),
    )


def _without_brackets(heading: Heading) -> tuple[Sentence, ...]:
    """Return what the title says, without who does the part and for how long."""
    content = heading.written.content
    return sentences_of(replace(heading.written, content=content[: content.rfind("(")]))


def _number(pattern: re.Pattern[str], words: list[str]) -> int:
    return next((int(match[1]) for match in map(pattern.fullmatch, words) if match), 0)


def _divide(words: list[str]) -> tuple[list[str], list[str]]:
    """Take out the words on other days, waits, groups and what has cooled or is not raw; they may stand anywhere after who."""
    of_time = [word for word in words[1:] if _is_of_time(word)]
    return [word for word in words if word not in of_time], of_time


def _is_of_time(word: str) -> bool:
    numbered = any(one.fullmatch(word) for one in (_DAYS_BEFORE, _DAYS_LATER, _GROUP))
    return numbered or word.casefold() in (_IN_THE_WAIT, _COOLED, _NO_RAW_SOAP)


def _time_words_fit(who: Who, words: list[str], heading: Heading, findings: list[Finding]) -> bool:
    """Refuse other days of what is not done on them, a wait or a cooled pot of what is no work of the class, `no raw soap` of staff."""
    for word in words:
        if word.casefold() == _IN_THE_WAIT and who in (Who.AHEAD, Who.WAITING, Who.AFTER):
            wrong, remedy = "Only a part of the class can be laid into a wait.", f'Leave "{word}" out.'
        elif _DAYS_BEFORE.fullmatch(word) and who is not Who.AHEAD:
            wrong, remedy = "Only what is done ahead can be done days before.", f'Write "ahead" for who does it, or leave "{word}" out.'
        elif _DAYS_LATER.fullmatch(word) and who is not Who.AFTER:
            wrong = "Only what the staff do after the class can be done days later."
            remedy = f'Write "after" for who does it, or leave "{word}" out.'
        elif word.casefold() == _COOLED and who in (Who.WAITING, Who.AFTER):
            wrong, remedy = "Only a part of the class, or ahead of it, can begin with everything cooled.", f'Leave "{word}" out.'
        elif word.casefold() == _NO_RAW_SOAP and who not in (Who.STUDENTS, Who.TOGETHER):
            wrong, remedy = "Only of what students do it has to be said that they meet no raw soap.", f'Leave "{word}" out.'
        elif _GROUP.fullmatch(word) and who is not Who.STUDENTS:
            wrong = "Only what students do can be done by one group for all."
            remedy = f'Write "students" for who does it, or leave "{word}" out.'
        else:
            continue
        findings.append(stop("part-heading-unclear", heading.place_of(word), wrong, remedy))
        return False
    return True


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
        remedy = f"Write one of these: {', '.join(Who)}.{did_you_mean(word, list(Who), _MEANT)}"
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
