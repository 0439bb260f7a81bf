"""Labels beyond those that are borne by something: for what is spoilt while it is stuck on."""

from collections.abc import Sequence
from dataclasses import replace

from builder.model.teaching.jar import Jar


def spare_labels(jars: Sequence[Jar], count: int) -> tuple[Jar, ...]:
    """Return so many labels more, for those that are spoilt: of each kind one, that of most jars first, and then again; nobody's own."""
    if not count or not jars:
        return ()
    alike: dict[object, list[Jar]] = {}
    for jar in jars:
        alike.setdefault((jar.pot.code, jar.pot.number, jar.variant.chosen, jar.units), []).append(jar)
    kinds = [same[0] for same in sorted(alike.values(), key=len, reverse=True)]
    nobodys = [replace(jar, student=None, guest=None, design="", own_name="") for jar in kinds]
    return tuple(nobodys[number % len(nobodys)] for number in range(count))
