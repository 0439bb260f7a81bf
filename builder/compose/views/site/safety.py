"""What a class page says of safety, in short: whole cautions stand on the sheets, before the step that they are about."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Risk:
    """One hazard: its name, what it does, and who works with it, as far as the lesson proves it (else empty)."""

    name: str
    what: str
    who: str = ""


@dataclass(frozen=True)
class SafetyView:
    """What is hazardous in class, the gravest first, and what to know of the product at home."""

    in_class: tuple[Risk, ...]
    at_home: tuple[Risk, ...]
