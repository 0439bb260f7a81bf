"""Which task each command is. A task prints results to stdout, findings to stderr, and gives the exit status.

Decided: each command loads its own task and no other. Why: to load everything takes longer than to weigh a recipe.
"""

import argparse
from collections.abc import Callable


def task_of(command: str) -> Callable[[argparse.Namespace], int]:
    """Return the task of a command, which takes its options; nothing else is loaded. Raises KeyError for what is no command."""
    match command:
        case "start":
            from builder.tasks.start import start as task
        case "add":
            from builder.tasks.adding.add import add as task
        case "editor":
            from builder.tasks.editor import write_for_editors as task
        case "completion":
            from builder.tasks.completion import print_shell_code as task
        case "preview":
            from builder.tasks.preview import preview as task
        case "publish":
            from builder.tasks.publish import publish as task
        case "check":
            from builder.tasks.publish import check as task
        case "label":
            from builder.tasks.label import label as task
        case "weigh":
            from builder.tasks.weigh import weigh as task
        case "plan":
            from builder.tasks.plan import plan as task
        case "shop":
            from builder.tasks.shop import shop as task
        case "card":
            from builder.tasks.card import card as task
        case "guide":
            from builder.tasks.guide import guide as task
        case "reference":
            from builder.tasks.look_up import print_reference as task
        case "explain":
            from builder.tasks.look_up import explain_name as task
        case "list":
            from builder.tasks.look_up import list_names as task
        case _:
            raise KeyError(command)
    return task
