"""The console command: arguments in, an exit status out. What the commands do stands in `commands.py`.

Exit status: 0 nothing stops, 1 a stop, 2 the command itself was wrong, 3 the machine did not let it be done (rights, a full disk, a stop
from the keyboard). Findings go to stderr, results to stdout.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from builder.refusals import CommandError, NotDoneError

WRONG_COMMAND, NOT_DONE = 2, 3


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and give its exit status."""
    options = _parser().parse_args(arguments)
    try:
        # Loaded once it is known that there is a command to run: it takes a second, and help needs none of it.
        from builder.commands import RUN

        return RUN[options.command](options)
    except CommandError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return WRONG_COMMAND
    except NotDoneError as error:
        print(f"stillroom: {error}", file=sys.stderr)
        return NOT_DONE
    except BrokenPipeError:
        # Whoever read our output has stopped reading (`| head`); nothing more can be said to them.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_DONE
    except OSError as error:
        at = f"{error.filename}: " if error.filename else ""
        print(f"stillroom: {at}{error.strerror or error}; nothing was changed", file=sys.stderr)
        return NOT_DONE
    except KeyboardInterrupt:
        print("stillroom: stopped; the output folder is as it was", file=sys.stderr)
        return NOT_DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="stillroom", description="Turn a studio folder of recipes and lessons into checked class pages, sheets and labels."
    )
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    publish = commands.add_parser("publish", help="check a studio, then write site/ and print/")
    _studio(publish)
    publish.add_argument("--to", type=Path, metavar="FOLDER", help="the output folder (default: STUDIO/output)")
    publish.add_argument("--only-sound", action="store_true", help="with a stop, still publish what no stop is about")

    check = commands.add_parser("check", help="print every finding and write nothing")
    _studio(check)

    weigh = commands.add_parser("weigh", help="work out one recipe at one size, or as it is written")
    _studio(weigh)
    weigh.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/ without its ending")
    size = weigh.add_mutually_exclusive_group()
    size.add_argument("--containers", type=int, metavar="N", help="enough for so many containers")
    size.add_argument("--total", metavar="WEIGHT", help='a batch of this weight, such as "2 kg"')
    size.add_argument("--oils", metavar="WEIGHT", help='a batch with this weight of oils, such as "1 kg"')
    size.add_argument("--mould", metavar="SIZE", help='a batch that fills a mould, such as "30 cm x 8 cm x 7 cm"')
    size.add_argument("--class", dest="for_class", metavar="NAME", help="the batches of a class")
    weigh.add_argument("--date", metavar="DATE", help="with --class: one of its dates, such as 2027-03-06")
    weigh.add_argument("--json", action="store_true", help="print a JSON document with every worked number")

    plan = commands.add_parser("plan", help="show how a class is taught and watched, and which format suits it")
    _studio(plan)
    plan.add_argument("for_class", metavar="CLASS", help="the name of a folder in classes/")
    plan.add_argument("--date", metavar="DATE", help="one of its dates, such as 2027-03-06")

    shop = commands.add_parser("shop", help="list what to buy for all coming dates, or for some of them")
    _studio(shop)
    shop.add_argument("--from", dest="first", type=_day, metavar="DATE", help="leave out the dates before this day")
    shop.add_argument("--until", type=_day, metavar="DATE", help="leave out the dates after this day")
    shop.add_argument("--class", dest="classes", action="extend", nargs="+", metavar="NAME", help="only the dates of these classes")

    card = commands.add_parser("card", help="print an ingredient card with its sources")
    card.add_argument("name", metavar="NAME", help="the name of an ingredient")
    card.add_argument("--studio", type=Path, metavar="STUDIO", help="look on this studio's shelf first")

    reference = commands.add_parser("reference", help="print what a file may say and how things are worked out, or write it as web pages")
    reference.add_argument("name", nargs="?", metavar="NAME", help="a page, or a file such as recipes/bar.yaml; without it, all names")
    reference.add_argument("--to", type=Path, metavar="FOLDER", help="write all pages as HTML into this folder")

    explain = commands.add_parser("explain", help="say what a finding means, with an example")
    explain.add_argument("name", metavar="FINDING", help="the name of a finding, such as lye-too-much")
    return parser


def _studio(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("studio", type=Path, metavar="STUDIO", help="the studio folder (it holds studio.yaml)")
    parser.add_argument("--today", type=_day, default=None, metavar="DATE", help="work as on this day, such as 2027-01-31")


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f'"{text}" is not a day; write it as 2027-03-06') from None
