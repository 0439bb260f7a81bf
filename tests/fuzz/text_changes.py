"""One change to a lesson, a page, a roster or a template, or to the bytes of any file."""

import random
from collections.abc import Sequence
from random import Random

from tests.fuzz import vocabulary as say
from tests.fuzz.bases import words


def change_prose(text: str, chance: random.Random) -> str:
    """Change a lesson or a page."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    kind = chance.randrange(8)
    if kind == 0:
        del lines[at]
    elif kind == 1:
        lines.insert(at, chance.choice(say.PROSE))
    elif kind == 2:
        lines[at] = chance.choice(say.PROSE)
    elif kind == 3:
        other = chance.randrange(len(lines))
        lines[at], lines[other] = lines[other], lines[at]
    elif kind == 4:
        lines[at] = _within(lines[at], chance.choice((*say.SIGNS, *say.VALUES, *say.NUMBERS)), chance)
    elif kind == 5:
        lines[at] = _within(lines[at], chance.choice(say.LONG), chance)
    elif kind == 6:
        braces = [number for number, line in enumerate(lines) if "{" in line or line.startswith("#")] or [at]
        at = chance.choice(braces)
        lines[at] = lines[at].replace(chance.choice("{}:(),"), chance.choice(("", "{", "}", ":", "(", ",")), 1)
    else:
        lines[at] = _word(lines[at], chance)
    return "\n".join(lines)


def _within(line: str, new: str, chance: Random) -> str:
    at = chance.randint(0, len(line))
    return line[:at] + new + line[at:]


def _word(line: str, chance: Random) -> str:
    parts = line.split(" ")
    parts[chance.randrange(len(parts))] = chance.choice((*words(), *say.NUMBERS, "not", "never", "into", "lye", "water"))
    return " ".join(parts)


def change_table(text: str, chance: random.Random) -> str:
    """Change one cell, one row or the heading of a table in CSV."""
    rows = [line.split(",") for line in text.split("\n")]
    row = chance.choice(rows)
    kind = chance.randrange(6)
    if kind == 0:
        row.append(chance.choice(say.CELLS))
    elif kind == 1:
        row.pop()
    elif kind == 2:
        rows.append(list(row) * chance.choice((1, 2, 50)))
    elif kind == 3:
        return text.replace(",", chance.choice((";", "\t", "|", ", ", "")))
    else:
        row[chance.randrange(len(row)) if row else 0 :][:1] = [""]
        if row:
            row[chance.randrange(len(row))] = chance.choice((*say.CELLS, *say.DATES, *say.NUMBERS))
    return "\n".join(",".join(one) for one in rows)


def change_template(text: str, chance: random.Random) -> str:
    """Break a template of the studio's own."""
    lines = text.split("\n")
    at = chance.randrange(len(lines))
    lines[at : at + chance.randint(0, 2)] = [chance.choice(say.TEMPLATES)] if chance.random() < 0.8 else []
    return "\n".join(lines)


def change_style(text: str, chance: random.Random) -> str:
    """Change a style of the studio's own."""
    return _other_line(text, say.STYLES, chance)


def change_drawing(text: str, chance: random.Random) -> str:
    """Change a drawing."""
    return _other_line(text, say.DRAWINGS, chance)


def _other_line(text: str, lines: Sequence[str], chance: Random) -> str:
    """Put a line in place of one, of two or of none, or within one."""
    found = text.split("\n")
    at = chance.randrange(len(found))
    new = chance.choice((*lines, *say.SIGNS))
    found[at : at + chance.randint(0, 2)] = [_within(found[at], new, chance) if chance.random() < 0.3 else new]
    return "\n".join(found)


def change_bytes(data: bytes, chance: random.Random) -> bytes:
    """Cut, empty, mix up or save in another encoding."""
    at = chance.randint(0, len(data))
    text = data.decode("utf-8", "replace")
    return chance.choice((
        lambda: data[:at], lambda: b"", lambda: data[at:], lambda: data + data, lambda: data.replace(b"  ", b"\t"),
        lambda: data[:at] + bytes([chance.randrange(256)]) + data[at:], lambda: text.encode("utf-16"),
        lambda: text.encode("latin-1", "replace").replace(b"e", b"\xe9", 1), lambda: b"\xef\xbb\xbf" + data,
        lambda: data.replace(b"\n", chance.choice((b"\r\n", b"\r", b"\n\n", b"\x0b", b"\xe2\x80\xa8"))),
        lambda: data + b"\n" * 1_000_001, lambda: b"\0" * 100, lambda: b"# \n\n", lambda: b"---\n" + data + b"\n---\n" + data,
    ))()  # fmt: skip
