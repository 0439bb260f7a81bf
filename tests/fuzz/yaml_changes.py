"""One change to the text of a YAML file that still knows what is a key, a value, an entry of a list."""

import random
import re
from collections.abc import Sequence
from random import Random

import yaml
from yaml.nodes import Node, ScalarNode

from tests.fuzz import vocabulary as say
from tests.fuzz.bases import LOADER, scalars, words
from tests.making import sure


def change_yaml(text: str, chance: random.Random) -> str:
    """Change one thing; a text that is no YAML any more comes back as it was."""
    try:
        root = yaml.compose(text, LOADER)
    except (yaml.YAMLError, RecursionError):
        return text
    found = [one for one in scalars(root) if one.start_mark.index < one.end_mark.index <= len(text)]
    if not found:
        return text
    return chance.choice(_CHANGES)(text, found, sure(root), chance)


def _put(text: str, node: Node, new: str) -> str:
    return text[: node.start_mark.index] + new + text[node.end_mark.index :]


def _value(text: str, found: Sequence[ScalarNode], _: Node, chance: Random) -> str:
    kinds = (say.NUMBERS, say.VALUES, say.DATES, words(), say.LONG)
    return _put(text, chance.choice(found), chance.choice(chance.choices(kinds, (4, 4, 2, 4, 1))[0]))


def _amount(text: str, found: Sequence[ScalarNode], _: Node, chance: Random) -> str:
    """Change the number, the unit or both of something that looks like an amount."""
    amounts = [one for one in found if re.match(r"[\d.]+", one.value)]
    if not amounts:
        return text
    one = chance.choice(amounts)
    number, unit = sure(re.match(r"([\d.]*)\s*(.*)", one.value, re.DOTALL)).groups()
    if chance.random() < 0.3:
        number = (
            str(float(number.strip(".") or 1) * chance.choice((10, 100, 1000, 0.1, 0.01, 1e-6, -1, 1e12, 0.999)))
            if number.count(".") < 2
            else "1"
        )
    elif chance.random() < 0.5:
        number = chance.choice(say.NUMBERS)
    if chance.random() < 0.4:
        unit = chance.choice(say.UNITS)
    return _put(text, one, f"{number} {unit}".strip())


def _sign(text: str, found: Sequence[ScalarNode], _: Node, chance: Random) -> str:
    one = chance.choice(found)
    at = chance.randint(one.start_mark.index, one.end_mark.index)
    return text[:at] + chance.choice(say.SIGNS) + text[at:]


def _swap(text: str, found: Sequence[ScalarNode], _: Node, chance: Random) -> str:
    """Let two texts change places."""
    first, second = sorted(chance.choices(found, k=2), key=lambda one: one.start_mark.index)
    if first.end_mark.index > second.start_mark.index:
        return text
    one, other = (text[node.start_mark.index : node.end_mark.index] for node in (first, second))
    return _put(_put(text, second, one), first, other)


def _mappings(root: Node) -> list[tuple[ScalarNode, Node]]:
    left, found, met = [root], [], set()
    while left:
        one = left.pop()
        if isinstance(one, yaml.ScalarNode) or id(one) in met:
            continue
        met.add(id(one))
        if isinstance(one, yaml.MappingNode):
            found += [pair for pair in one.value if pair[1].end_mark.index <= len(text_limit(pair))]
            left += [value for _, value in one.value]
        else:
            left += one.value
    return found


def text_limit(pair: tuple[ScalarNode, Node]) -> range:
    """Return the text that a key and its value were read from."""
    return range(max(pair[1].end_mark.index, pair[0].end_mark.index))


def _drop(text: str, _: Sequence[ScalarNode], root: Node, chance: Random) -> str:
    """Take out a key with its value, or a value alone."""
    pairs = _mappings(root)
    if not pairs:
        return text
    key, value = chance.choice(pairs)
    if chance.random() < 0.3:
        return _put(text, value, "")
    end = value.end_mark.index
    return text[: key.start_mark.index] + text[end + (text[end : end + 2] == ", ") * 2 :].lstrip(" " * (chance.random() < 0.5))


def _double(text: str, _: Sequence[ScalarNode], root: Node, chance: Random) -> str:
    """Write a key with its value once more, behind itself or behind another."""
    pairs = _mappings(root)
    if not pairs:
        return text
    (key, value), other = chance.choice(pairs), chance.choice(pairs)[0]
    again = text[key.start_mark.index : value.end_mark.index].rstrip()
    at = (key if chance.random() < 0.5 else other).start_mark
    line = text[: at.index].rpartition("\n")[2]
    return text[: at.index] + again + (", " if line.strip() else "\n" + " " * at.column) + text[at.index :]


def _nest(text: str, found: Sequence[ScalarNode], _: Node, chance: Random) -> str:
    """Put a text one storey deeper: into a list, into a mapping, or many of them."""
    one = chance.choice(found)
    own = text[one.start_mark.index : one.end_mark.index]
    return _put(text, one, chance.choice(("[{}]", "{{x: {}}}", "[{0}, {0}]", "{{name: {0}, date: {0}}}", "[[[[{}]]]]")).format(own))


def _rename(text: str, _: Sequence[ScalarNode], root: Node, chance: Random) -> str:
    """Return a key another key's name, or a word of somewhere else."""
    pairs = _mappings(root)
    if not pairs:
        return text
    key = chance.choice(pairs)[0]
    return _put(text, key, chance.choice(pairs)[0].value if chance.random() < 0.6 else chance.choice(words()))


_CHANGES = (_value, _value, _amount, _amount, _amount, _sign, _swap, _swap, _drop, _drop, _double, _nest, _rename)
