"""A second reader of calendar files for tests: RFC 5545 by the letter, with nothing but the standard library, and no list of zones.

When an event is, in UTC, is worked out from the VTIMEZONE that its file brings. What the standard does not allow is a ValueError, and so is
a rule of a zone of a kind that our files never hold: silence would be no agreement.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta, timezone

# RFC 5545 3.1: name *(";" param) ":" value; a value of a parameter may stand in quotes, and only then hold `:`, `;` and `,`.
_PARAM = r';[A-Za-z0-9-]+=(?:"[^"\x00-\x08\x0a-\x1f\x7f]*"|[^";:,\x00-\x08\x0a-\x1f\x7f]*)'
_LINE = re.compile(rf"(?P<name>[A-Za-z0-9-]+)(?P<params>(?:{_PARAM})*):(?P<value>.*)", re.DOTALL)
_ESCAPED = re.compile(r"\\([\\;,Nn])")
_OFFSET = re.compile(r"([+-])(\d\d)(\d\d)(\d\d)?")
_DAYS = {"MO": 0, "TU": 1, "WE": 2, "TH": 3, "FR": 4, "SA": 5, "SU": 6}


@dataclass
class Component:
    """What stands between BEGIN and END: its lines, each as a name, parameters and the value as it is written, and what is in it."""

    name: str
    lines: list[tuple[str, dict[str, str], str]] = field(default_factory=list)
    parts: list["Component"] = field(default_factory=list)

    def values(self, name: str) -> list[str]:
        """Return the values of all lines of a name."""
        return [value for one, _, value in self.lines if one == name]

    def value(self, name: str) -> str:
        """Return the one value of a name."""
        (value,) = self.values(name)
        return value

    def text(self, name: str) -> str:
        """Return the one value of a name, of type TEXT (3.3.11)."""
        value = self.value(name)
        rest = _ESCAPED.sub("", value)
        if "\\" in rest or ";" in rest or "," in rest:
            raise ValueError(f"{name} holds what has to be escaped: {value}")
        return _ESCAPED.sub(lambda found: "\n" if found[1] in "Nn" else found[1], value)


def read_calendar(data: bytes) -> Component:
    """Read a file that holds one calendar."""
    open_ones = [Component("")]
    for line in _unfolded(data):
        found = _LINE.fullmatch(line)
        if not found:
            raise ValueError(f"no content line: {line}")
        name, value = found["name"].upper(), found["value"]
        if name == "BEGIN":
            open_ones.append(Component(value))
        elif name == "END":
            done = open_ones.pop()
            if done.name != value:
                raise ValueError(f"{value} ends where {done.name} is open")
            open_ones[-1].parts.append(done)
        else:
            params = re.findall(r';([A-Za-z0-9-]+)=(?:"([^"]*)"|([^";:,]*))', found["params"])
            open_ones[-1].lines.append((name, {key.upper(): quoted or bare for key, quoted, bare in params}, value))
    (calendar,) = open_ones.pop().parts
    if open_ones or calendar.name != "VCALENDAR":
        raise ValueError("no calendar, or one that does not end")
    return calendar


def _unfolded(data: bytes) -> Iterator[str]:
    """Yield the content lines (3.1): CRLF ends a line, and a blank after it goes on; no line on the wire has more than 75 octets."""
    if not data.endswith(b"\r\n"):
        raise ValueError("the last line does not end")
    wire = data[:-2].split(b"\r\n")
    if any(len(line) > 75 or b"\n" in line or b"\r" in line for line in wire):
        raise ValueError("a line is too long, or ends in something else than CRLF")
    yield from data[:-2].replace(b"\r\n ", b"").decode("utf-8").split("\r\n")


def moment(calendar: Component, event: Component, name: str) -> datetime:
    """Return a time of an event in UTC (3.3.5). Raises ValueError where it has no zone, or one that the file does not explain."""
    ((params, value),) = [(params, value) for one, params, value in event.lines if one == name]
    if value.endswith("Z"):
        return datetime.strptime(value, "%Y%m%dT%H%M%SZ").replace(tzinfo=UTC)
    local = datetime.strptime(value, "%Y%m%dT%H%M%S")
    (zone,) = [part for part in calendar.parts if part.name == "VTIMEZONE" and part.value("TZID") == params["TZID"]]
    # 3.6.5: what counts is the observance that began last before this time.
    onsets = [(begun, part) for part in zone.parts for begun in _onsets(part, local)]
    _, observance = max(onsets, key=lambda onset: onset[0])
    return local.replace(tzinfo=timezone(_offset(observance.value("TZOFFSETTO")))).astimezone(UTC)


def _onsets(observance: Component, until: datetime) -> Iterator[datetime]:
    """Yield the local times, up to one, at which an observance begins: the first, those of a list, those of a yearly rule."""
    first = datetime.strptime(observance.value("DTSTART"), "%Y%m%dT%H%M%S")
    listed = [datetime.strptime(one, "%Y%m%dT%H%M%S") for value in observance.values("RDATE") for one in value.split(",")]
    rules = [dict(part.split("=") for part in rule.split(";")) for rule in observance.values("RRULE")]
    if any(set(rule) - {"UNTIL"} != {"FREQ", "BYMONTH", "BYDAY"} or rule["FREQ"] != "YEARLY" for rule in rules):
        raise ValueError("a rule of another kind")
    ruled = [_nth_weekday(first, year, rule) for rule in rules for year in range(first.year, until.year + 1)]
    yield from (one for one in (first, *listed, *ruled) if one <= until)


def _nth_weekday(first: datetime, year: int, rule: dict[str, str]) -> datetime:
    number, day = int(rule["BYDAY"][:-2]), _DAYS[rule["BYDAY"][-2:]]
    month = int(rule["BYMONTH"])
    days = [first.replace(year=year, month=month, day=1) + timedelta(days=one) for one in range(31)]
    fitting = [one for one in days if one.month == month and one.weekday() == day]
    return fitting[number - 1 if number > 0 else number]


def _offset(written: str) -> timedelta:
    found = _OFFSET.fullmatch(written)
    if not found:
        raise ValueError(f"no offset: {written}")
    sign, hours, minutes, seconds = found.groups()
    return (-1 if sign == "-" else 1) * timedelta(hours=int(hours), minutes=int(minutes), seconds=int(seconds or 0))
