"""What a teacher answers, or gives as an option, is read; what cannot be is a ValueError that says what to write."""

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from builder.read.text.text_error import TextError
from builder.read.values.amounts import parse_box, parse_division, parse_mass, parse_volume
from builder.read.values.values import parse_date, parse_mail_address
from builder.start.added import NewDate
from builder.start.starters import ScaleStart, usual_scales
from builder.words.fold import fold
from builder.words.nearest import did_you_mean

T = TypeVar("T")
UNITS = ("grams", "ounces")
OTHER_UNITS = {"g": "grams", "gram": "grams", "metric": "grams", "oz": "ounces", "ounce": "ounces", "lb": "ounces", "pounds": "ounces"}
_SCALE = re.compile(r"(?P<reads>.+?)\s*(?:,|;|-|–|\bup to\b|\bto\b)\s*(?P<up>.+)", re.IGNORECASE)
_AMOUNT = re.compile(r"\d[\d.]*\s*[a-z]+", re.IGNORECASE)


def read_text(text: str) -> str:
    """Read a text, which must not be empty. Raises ValueError."""
    if not text.strip():
        raise ValueError("Write something; you can change it later.")
    return " ".join(text.split())


def read_lines(text: str) -> tuple[str, ...]:
    """Read lines that are parted by semicolons. Raises ValueError."""
    lines = tuple(" ".join(line.split()) for line in text.split(";") if line.strip())
    if not lines:
        raise ValueError('Write the lines with a semicolon between them: "1 Example Street; Example Town".')
    return lines


def read_mail(text: str) -> str:
    """Read a mail address."""
    return _read(parse_mail_address, text)


def one_of(
    names: Sequence[str], what: str, also: Mapping[str, str] | None = None, *, listed: bool = False, more: str = ""
) -> Callable[[str], str]:
    """Make the reader of one name of a list: by the name without regard to case, by its number, or by another word for it (folded, `also`).

    `listed`: the list stands above the question, and is not told again. `more` is said of what is none of them.
    The reader raises ValueError.
    """
    by_name = {fold(name): name for name in names}
    by_name |= {word: name for word, name in (also or {}).items() if name in names and word not in by_name}

    def read(text: str) -> str:
        if text.isdigit() and 0 < int(text) <= len(names):
            return names[int(text) - 1]
        found = by_name.get(fold(text))
        if found is None:
            possible = " Write its number or its name." if listed else f" Possible are: {', '.join(names)}."
            meant = dict.fromkeys(name for word, name in by_name.items() if word in fold(text))
            near = f' Did you mean "{next(iter(meant))}"?' if len(meant) == 1 else did_you_mean(text, names)
            raise ValueError(f'"{text}" is no {what}.{possible}{near}{more}')
        return found

    return read


def read_scale(text: str) -> ScaleStart:
    """Read a scale: the least that it shows, and the most that it holds. Raises ValueError."""
    if re.search(r"\d,\d", text):
        raise ValueError(
            f'Write decimals with a point, as all files of a studio have them: "{re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text)}".'
        )
    if len(_AMOUNT.findall(text)) > 2:
        raise ValueError("These are several scales. Name one; you are asked for the next.")
    match = _SCALE.fullmatch(text.strip())
    if match is None:
        raise ValueError('Write what it shows at the least and what it holds at the most: "0.1 g up to 5 kg".')
    least, most = _read(parse_division, match["reads"])[0], _read(parse_mass, match["up"])
    if least >= most:
        raise ValueError("It cannot hold less than the least that it shows. Write the smaller one first.")
    return ScaleStart("scale", _spaced(match["reads"]), _spaced(match["up"]))


def _spaced(amount: str) -> str:
    """Return an amount with a space before its unit (`0.01g`: 0.01 g)."""
    return re.sub(r"(?<=\d)(?=[a-z])", " ", amount.strip())


def scales_of(scales: Iterable[ScaleStart], units: str) -> tuple[ScaleStart, ...]:
    """Return the scales of a studio under names of their own, or those that are usual where it names none. Raises ValueError."""
    told = tuple(dict.fromkeys(scales))
    if not told:
        return usual_scales(units)
    if not any(parse_division(one.reads_to)[1] == "g" for one in told):
        wrong = "One scale at least has to read in grams, since every batch is weighed in grams first."
        raise ValueError(f'{wrong} Most scales switch: what does yours show then? Name it as one more, for example "1 g up to 5 kg".')
    if units == "ounces" and not any(parse_division(one.reads_to)[1] == "oz" for one in told):
        raise ValueError('You weigh in ounces: what does a scale of yours show in ounces? For example "0.005 oz up to 11 lb".')
    return tuple(
        ScaleStart("scale" if len(told) == 1 else f"scale {number}", one.reads_to, one.up_to) for number, one in enumerate(told, 1)
    )


def read_number(text: str) -> int:
    """Read a whole number of people. Raises ValueError."""
    if not text.isdigit():
        raise ValueError("Write a whole number, or 0 for nobody yet.")
    return int(text)


def read_date(text: str) -> NewDate:
    """Read a day with its time."""
    return NewDate(_read(parse_date, text))


def read_size(text: str) -> str:
    """Read the size of a container: what it holds, or the inside of a mould. Gives the line of `containers.yaml`."""
    key, parse = ("inside", parse_box) if re.search(r"\bx\b|×|\bby\b", text) else ("capacity", parse_volume)
    _read(parse, text)
    return f"{key}: {text.strip()}"


def _read(parse: Callable[[str], T], text: str) -> T:
    try:
        return parse(text)
    except TextError as error:
        raise ValueError(f"{error.wrong} {error.remedy}") from None
