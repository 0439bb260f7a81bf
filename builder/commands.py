"""Which task each command is. A task prints results to stdout, findings to stderr, and gives the exit status.

Decided: each command loads its own task and no other. Why: to load everything takes longer than to weigh a recipe.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping


def _start(options: argparse.Namespace) -> int:
    from builder.tasks.start import start

    return start(options)


def _add(options: argparse.Namespace) -> int:
    from builder.tasks.adding.add import add

    return add(options)


def _preview(options: argparse.Namespace) -> int:
    from builder.tasks.preview import preview

    return preview(options)


def _editor(options: argparse.Namespace) -> int:
    from builder.tasks.editor import write_for_editors

    return write_for_editors(options)


def _completion(options: argparse.Namespace) -> int:
    from builder.tasks.completion import shell_code

    print(shell_code(options.shell))
    return 0


def _publish(options: argparse.Namespace) -> int:
    from builder.tasks.publish import publish

    return publish(options)


def _check(options: argparse.Namespace) -> int:
    from builder.tasks.publish import check

    return check(options)


def _weigh(options: argparse.Namespace) -> int:
    from builder.tasks.weigh import weigh

    return weigh(options)


def _label(options: argparse.Namespace) -> int:
    from builder.tasks.label import label

    return label(options)


def _plan(options: argparse.Namespace) -> int:
    from builder.tasks.plan import plan

    return plan(options)


def _shop(options: argparse.Namespace) -> int:
    from builder.tasks.shop import shop

    return shop(options)


def _card(options: argparse.Namespace) -> int:
    from builder.tasks.card import card

    return card(options)


def _guide(options: argparse.Namespace) -> int:
    from builder.tasks.guide import guide

    return guide(options)


def _reference(options: argparse.Namespace) -> int:
    from builder.tasks.look_up import print_reference

    return print_reference(options)


def _explain(options: argparse.Namespace) -> int:
    from builder.tasks.look_up import explain_name

    return explain_name(options)


def _list(options: argparse.Namespace) -> int:
    from builder.tasks.look_up import list_names

    return list_names(options)


RUN: Mapping[str, Callable[[argparse.Namespace], int]] = {
    "start": _start,
    "add": _add,
    "editor": _editor,
    "completion": _completion,
    "preview": _preview,
    "publish": _publish,
    "check": _check,
    "label": _label,
    "weigh": _weigh,
    "plan": _plan,
    "shop": _shop,
    "card": _card,
    "guide": _guide,
    "reference": _reference,
    "explain": _explain,
    "list": _list,
}
