"""What has to be ready for a class beside what is weighed: gear for each person, what is for safety, what stands where."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Worn:
    """One piece of gear, and how many people need one of it."""

    item: str
    people: int


@dataclass(frozen=True)
class Preparation:
    """Everything to get ready. `at_benches`, `at_demo` and `at_sink` are what stands there; `kit` is for safety and stands in reach."""

    worn: tuple[Worn, ...]
    kit: tuple[str, ...]
    at_benches: tuple[str, ...]
    at_demo: tuple[str, ...]
    at_sink: tuple[str, ...]
