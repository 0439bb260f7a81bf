"""A shell asks which words may come next, and is told: the commands and options, and the names of recipes and classes that lie there.

Decided: argcomplete. Why: bash, zsh, fish and PowerShell ask the program itself, so that names in the studio are completed too.
"""

import argparse
from pathlib import Path

from builder.arguments import parser_of_all
from builder.list_names import ListName
from builder.tasks.place import classes_in, recipes_in, studio_around


def complete() -> None:
    """Answer the shell, and end the program."""
    import argcomplete

    parser = parser_of_all()
    for action in _actions(parser):
        if action.dest in ("recipe", "for_class", "classes", "what"):
            action.completer = _named  # type: ignore[attr-defined]
    argcomplete.autocomplete(parser)


def print_shell_code(options: argparse.Namespace) -> int:
    """Print what a shell has to read so that it asks."""
    from argcomplete.shell_integration import shellcode

    print(shellcode(["stillroom"], shell=options.shell))
    return 0


def _actions(parser: argparse.ArgumentParser) -> list[argparse.Action]:
    found: list[argparse.Action] = []
    for action in parser._actions:
        found.append(action)
        if isinstance(action, argparse._SubParsersAction):
            found += [inner for one in action.choices.values() for inner in _actions(one)]
    return found


def _named(action: argparse.Action, parsed_args: argparse.Namespace, **_: object) -> list[str]:
    if action.dest == "what":
        return list(ListName)
    named = getattr(parsed_args, "studio", None)
    folder = Path(named) if named and Path(named).is_dir() else studio_around(Path.cwd())
    if folder is None:
        return []
    return recipes_in(folder) if action.dest == "recipe" else classes_in(folder)
