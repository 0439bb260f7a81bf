"""What a class page says of safety, in short: whole cautions stand on the sheets, before the step that they are about."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Risk:
    """One hazard: its name, and what it does."""

    name: str
    what: str


@dataclass(frozen=True)
class RiskGroup:
    """What is hazardous to the same people: who works with it, as far as the lesson proves it, and the hazards, the gravest first."""

    heading: str
    risks: tuple[Risk, ...]
