"""The console command: arguments in, an exit status out. How they are written stands in `arguments.py`, what they do in `commands.py`.

Exit status: 0 nothing stops, 1 a stop, 2 the command itself was wrong, 3 the machine did not let it be done (rights, a full disk, a stop
from the keyboard). Findings go to stderr, results to stdout.
"""

from __future__ import annotations

import os
import sys
import zoneinfo
from collections.abc import Sequence

from builder.refusals import CommandError, NotDoneError, not_loaded

# Hours are those of the package tzdata: what a machine itself knows of time zones is another's, and of another day.
zoneinfo.reset_tzpath(to=())

WRONG_COMMAND, NOT_DONE = 2, 3
MEND = "Mend that (rights, room on the disk), and give the command again."


def _complete() -> None:
    """Answer a shell that asks which words may come next; it ends the program."""
    from builder.tasks.completion import complete

    complete()


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and give its exit status."""
    if "_ARGCOMPLETE" in os.environ:
        _complete()
    try:
        # Loaded here, so that what this machine lacks is told in a sentence.
        from builder.arguments import parse

        options = parse(sys.argv[1:] if arguments is None else arguments)
        # Loaded once it is known that there is a command to run: it takes a second, and help needs none of it.
        from builder.commands import task_of

        return task_of(options.command)(options)
    except CommandError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return WRONG_COMMAND
    except ImportError as error:
        print(f"stillroom: {not_loaded(error)}", file=sys.stderr)
        return NOT_DONE
    except NotDoneError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return NOT_DONE
    except BrokenPipeError:
        # Whoever read our output has stopped reading (`| head`); nothing more can be said to them.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_DONE
    except OSError as error:
        at = f"{error.filename}: " if error.filename else ""
        print(f"stillroom: {at}{error.strerror or error}; nothing was changed. {MEND}", file=sys.stderr)
        return NOT_DONE
    except KeyboardInterrupt:
        print("stillroom: stopped; the output folder is as it was", file=sys.stderr)
        return NOT_DONE
