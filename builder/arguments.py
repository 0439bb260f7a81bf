"""How each command is written: its words, its options, a sentence, and an example. Nothing that works is loaded here.

Decided: the first word is looked for among the commands before the rest is read. Why: who mistypes it is told the nearest, and no more.
Decided: an option is written whole. Why: `--to`, a folder for one command, would be `--today` for another, and its list that of other days.
"""

import argparse
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from builder.list_names import ListName
from builder.model.recipe.container_form import ContainerForm
from builder.refusals import no_such

_ABOUT = "Turn a studio folder of recipes and lessons into checked class pages, sheets and labels."
_STATUS = """\
exit status:
  0  nothing stops         1  a stop was found
  2  the command is wrong  3  this machine did not let it be done

Inside a studio's folder STUDIO can be left out. `stillroom COMMAND --help` shows an example of each.
`stillroom completion SHELL` prints what lets a shell complete these words."""
SHELLS = ("bash", "zsh", "fish", "powershell")


def parse(arguments: Sequence[str]) -> argparse.Namespace:
    """Read the words of a command. Raises SystemExit for help and for what is no command, and CommandError for a mistyped one."""
    # Of a command that is known the others need not be made.
    parser = _parser_of(arguments[:1]) if arguments and arguments[0] in _COMMANDS else parser_of_all()
    within, what = parser, "command"
    for word in arguments:
        known = _commands(within)
        if word.startswith("-") or not known:
            break
        if word not in known:
            no_such(what, word, known)
        within, what = known[word], f"thing to {word}"
    _refuse_unknown_options(within, arguments)
    return parser.parse_args(arguments)


def _refuse_unknown_options(command: argparse.ArgumentParser, arguments: Sequence[str]) -> None:
    """Raise CommandError for the first option that a command does not have, with the nearest that it has."""
    known = [option for option in command._option_string_actions if option.startswith("--")]
    for word in arguments:
        option = word.partition("=")[0]
        if option == "--":
            return
        if option.startswith("--") and option not in known:
            no_such("option", option, known, f"`{command.prog}` has")


@cache
def parser_of_all() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    return _parser_of(_COMMANDS)


def _parser_of(names: Iterable[str]) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="stillroom",
        description=_ABOUT,
        epilog=_STATUS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="say which version this is")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name in names:
        _COMMANDS[name](commands)
    return parser


class _Version(argparse.Action):
    """Prints the version. It is looked up when somebody asks, since that takes longer than all of the help."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object, **__: object) -> None:
        from importlib.metadata import PackageNotFoundError, version

        try:
            print(f"stillroom {version('stillroom')}")
        except PackageNotFoundError:
            print("stillroom, from a folder where it is not installed")
        parser.exit()


def _commands(parser: argparse.ArgumentParser) -> Mapping[str, argparse.ArgumentParser]:
    """Return the commands of a parser by their words; none where it has none."""
    return next((action.choices for action in parser._actions if isinstance(action, argparse._SubParsersAction)), {})


def _command(commands: Any, name: str, does: str, example: str) -> argparse.ArgumentParser:
    """Make one command: what it does in a sentence, and an example."""
    parser: argparse.ArgumentParser = commands.add_parser(
        name,
        help=does,
        description=f"{does[:1].upper()}{does[1:]}.",
        epilog=f"example:\n  {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    return parser


def _start(commands: Any) -> None:
    parser = _command(commands, "start", "begin a studio: ask a few questions, then write its first files", "stillroom start loft")
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="a new or an empty folder")
    parser.add_argument("--plain", action="store_true", help="ask nothing, and write what has to be put in by you")
    parser.add_argument("--name", metavar="NAME", help="the name on your door")
    parser.add_argument("--region", metavar="REGION", help="whose rules hold; without it, it is asked for, with all that are known")
    parser.add_argument("--address", metavar="LINES", help="the postal address, its lines parted by semicolons")
    parser.add_argument("--email", metavar="ADDRESS", help="how people reach you")
    parser.add_argument("--units", metavar="UNITS", help="in which units people weigh where you are: grams or ounces")
    parser.add_argument("--scale", action="append", metavar="SCALE", help='a scale of yours, such as "0.1 g up to 5 kg"; once for each')
    parser.add_argument("--product", metavar="KIND", help="what is made first, such as lotion (`stillroom list kinds`)")
    parser.add_argument("--called", metavar="NAME", help="what you call it")


def _add(commands: Any) -> None:
    parser = _command(
        commands,
        "add",
        "add a recipe, a class, a date, a card, a container or a language to a studio",
        'stillroom add recipe "Hedge lotion" --product lotion',
    )
    things = parser.add_subparsers(dest="thing", required=True, metavar="THING")
    recipe = _command(things, "recipe", "add a recipe of a kind of product", 'stillroom add recipe "Hedge lotion" --product lotion')
    recipe.add_argument("name", metavar="NAME", nargs="?", help="what you call it")
    recipe.add_argument("--product", metavar="KIND", help="its kind of product (`stillroom list kinds`)")
    recipe.add_argument("--from", dest="table", type=Path, metavar="FILE", help="take its lines from a table of yours: .csv, .txt or .xlsx")
    recipe.add_argument("--sheet", metavar="SHEET", help="with --from: which sheet of a workbook, where several have something in them")
    recipe.add_argument("--column", metavar="HEAD", help="with --from: the head of the column with the amounts, where several have some")
    recipe.add_argument(
        "--means",
        action="append",
        metavar="THEIRS=OURS",
        help='with --from: what a name in the table means, such as "lye=sodium hydroxide"',
    )
    a_class = _command(things, "class", "add a class that makes a recipe", 'stillroom add class "A first lotion" --recipe hedge-lotion')
    a_class.add_argument("name", metavar="TITLE", nargs="?", help="its title")
    a_class.add_argument("--recipe", metavar="RECIPE", help="what is made (without it: the only recipe)")
    day = _command(things, "date", "add a date to a class", 'stillroom add date "2027-03-06 10:00" --class a-first-lotion --enrolled 5')
    day.add_argument("when", metavar="WHEN", nargs="?", help='day and time, such as "2027-03-06 10:00"')
    day.add_argument("--class", dest="for_class", metavar="CLASS", help="the class (without it: the only one)")
    day.add_argument("--enrolled", metavar="N", help="how many people have booked")
    card = _command(
        things, "card", "add the card of an ingredient as your supplier sells it", 'stillroom add card "Weir soap base" --kind "soap base"'
    )
    card.add_argument("name", metavar="NAME", nargs="?", help="the name of the ingredient")
    card.add_argument("--kind", metavar="KIND", help="its kind, such as oil, clay or soap base")
    container = _command(
        things, "container", "add a container of yours", 'stillroom add container "2 oz tin" --holds "2 fl oz" --shape "round lid"'
    )
    container.add_argument("name", metavar="NAME", nargs="?", help="what you call it")
    container.add_argument(
        "--holds", metavar="SIZE", help='filled to the brim, such as "2 fl oz", or inside, such as "30 cm x 8 cm x 7 cm"'
    )
    container.add_argument("--shape", metavar="SHAPE", help=", ".join(ContainerForm))
    language = _command(
        things, "language", "add the file of a language, with every sentence to translate", "stillroom add language Spanish --code es_MX"
    )
    language.add_argument("name", metavar="NAME", nargs="?", help="its name in English")
    language.add_argument("--code", metavar="CODE", help="its code and that of the country, such as es_MX")
    for one in (recipe, a_class, day, card, container, language):
        one.add_argument("--studio", type=Path, metavar="STUDIO", help="the studio (without it: the one around this folder)")


def _check(commands: Any) -> None:
    parser = _command(commands, "check", "print every finding and write nothing", "stillroom check loft --reading")
    _studio(parser)
    parser.add_argument("--reading", action="store_true", help="also say how each sheet reads: grade, longest step, steps of many orders")


def _preview(commands: Any) -> None:
    parser = _command(commands, "preview", "show a studio in the browser while you write it; nothing is written", "stillroom preview loft")
    _studio(parser)
    parser.add_argument("--port", type=int, metavar="N", help="the port of this machine (without it: a free one)")


def _publish(commands: Any) -> None:
    parser = _command(commands, "publish", "check a studio, then write site/ and print/", "stillroom publish loft --to ../out")
    _studio(parser)
    parser.add_argument("--to", type=Path, metavar="FOLDER", help="the output folder (default: STUDIO/output)")
    parser.add_argument("--only-sound", action="store_true", help="with a stop, still publish what no stop is about")


def _label(commands: Any) -> None:
    parser = _command(
        commands,
        "label",
        "print the labels of one student again",
        "stillroom label loft first-lotion --date 2027-03-06 --place 5 --to again",
    )
    _studio_and(parser, "for_class", "CLASS", "the name of a folder in classes/ (without it: the only one)")
    parser.add_argument("--date", metavar="DATE", help="one of its dates, such as 2027-03-06 (without it: the first to come)")
    parser.add_argument(
        "--place", type=count_of, required=True, metavar="N", help="whose: the place on the roster of the date, counted from 1"
    )
    parser.add_argument(
        "--first",
        type=count_of,
        metavar="N",
        help="the first free label of a sheet that has been begun (without it: where the date's ended)",
    )
    parser.add_argument("--to", type=Path, default=Path(), metavar="FOLDER", help="where the PDF goes (default: this folder)")


def _weigh(commands: Any) -> None:
    parser = _command(
        commands, "weigh", "work out one recipe at one size, or as it is written", 'stillroom weigh loft orchard-bar --oils "1 kg"'
    )
    _studio_and(parser, "recipe", "RECIPE", "the name of a file in recipes/ without its ending (without it: the only one)")
    size = parser.add_mutually_exclusive_group()
    size.add_argument("--containers", type=int, metavar="N", help="enough for so many containers")
    size.add_argument("--total", metavar="WEIGHT", help='a batch of this weight, such as "2 kg"')
    size.add_argument("--oils", metavar="WEIGHT", help='a batch with this weight of oils, such as "1 kg"')
    size.add_argument("--mould", "--mold", metavar="SIZE", help='a batch that fills a mould, such as "30 cm x 8 cm x 7 cm"')
    size.add_argument("--class", dest="for_class", metavar="NAME", help="the batches of a class")
    parser.add_argument("--date", metavar="DATE", help="with --class: one of its dates, such as 2027-03-06")
    parser.add_argument("--json", action="store_true", help="print a JSON document with every worked number")


def _plan(commands: Any) -> None:
    parser = _command(
        commands,
        "plan",
        "show how a class is taught and watched, and which format suits it",
        "stillroom plan loft first-bar --date 2027-03-06",
    )
    _studio_and(parser, "for_class", "CLASS", "the name of a folder in classes/ (without it: the only one)")
    parser.add_argument("--date", metavar="DATE", help="one of its dates, such as 2027-03-06")


def _shop(commands: Any) -> None:
    parser = _command(
        commands, "shop", "list what to buy for all coming dates, or for some of them", "stillroom shop loft --until 2027-04-30"
    )
    _studio(parser)
    parser.add_argument("--from", dest="first", type=day_of, metavar="DATE", help="leave out the dates before this day")
    parser.add_argument("--until", type=day_of, metavar="DATE", help="leave out the dates after this day")
    parser.add_argument("--class", dest="classes", action="extend", nargs="+", metavar="NAME", help="only the dates of these classes")


def _list(commands: Any) -> None:
    parser = _command(commands, "list", "list what can be named in a file", "stillroom list containers")
    parser.add_argument("what", metavar="WHAT", help=", ".join(ListName))
    parser.add_argument(
        "studio", type=Path, nargs="?", metavar="STUDIO", help="with this studio's own (default: the one around this folder)"
    )
    parser.add_argument("--like", metavar="WORDS", help="only what has these words in it")


def _card(commands: Any) -> None:
    parser = _command(commands, "card", "print an ingredient card with its sources", 'stillroom card "olive oil"')
    parser.add_argument("name", metavar="NAME", help="the name of an ingredient")
    parser.add_argument(
        "--studio", type=Path, metavar="STUDIO", help="look on this studio's shelf first (default: the one around this folder)"
    )


def _explain(commands: Any) -> None:
    parser = _command(commands, "explain", "say what a finding, a word of ours or a figure means", "stillroom explain superfat")
    parser.add_argument(
        "name", metavar="NAME", help="the name of a finding such as lye-too-much, a word such as superfat, a figure or an ingredient"
    )


def _guide(commands: Any) -> None:
    parser = _command(
        commands,
        "guide",
        "print how a class comes from an idea to its labels, with worked examples, or write it as web pages with pictures",
        "stillroom guide walk",
    )
    parser.add_argument("name", nargs="?", metavar="NAME", help="a page; without it, the list of all")
    parser.add_argument("--to", type=Path, metavar="FOLDER", help="write all pages as HTML into this folder, with their pictures")
    parser.add_argument("--files", type=Path, metavar="FOLDER", help="write the studio that the page shows into this new folder")


def _reference(commands: Any) -> None:
    parser = _command(
        commands,
        "reference",
        "print what a file may say and how things are worked out, or write it as web pages",
        "stillroom reference recipes/orchard-bar.yaml",
    )
    parser.add_argument("name", nargs="?", metavar="NAME", help="a page, or a file such as recipes/bar.yaml; without it, all names")
    parser.add_argument("--to", type=Path, metavar="FOLDER", help="write all pages as HTML into this folder")


def _editor(commands: Any) -> None:
    parser = _command(
        commands,
        "editor",
        "write what lets a text editor complete and explain the lines of a studio's files",
        "stillroom editor loft --mark",
    )
    _studio(parser)
    parser.add_argument("--mark", action="store_true", help="also put the line that editors look for at the head of each file")


def _completion(commands: Any) -> None:
    parser = _command(commands, "completion", "print what lets a shell complete these commands", "stillroom completion bash >> ~/.bashrc")
    parser.add_argument("shell", choices=SHELLS, help="the shell in which you type")


def _studio(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "studio", type=Path, nargs="?", metavar="STUDIO", help="the folder that holds studio.yaml (default: the one around this folder)"
    )
    _today(parser)


def _studio_and(parser: argparse.ArgumentParser, dest: str, metavar: str, meaning: str) -> None:
    parser.add_argument(
        "studio", nargs="?", metavar="STUDIO", help="the folder that holds studio.yaml (default: the one around this folder)"
    )
    parser.add_argument(dest, nargs="?", metavar=metavar, help=meaning)
    _today(parser)


def _today(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--today", type=day_of, default=None, metavar="DATE", help="work as on this day, such as 2027-01-31")


_COMMANDS: Mapping[str, Callable[[Any], None]] = {
    "start": _start, "add": _add, "check": _check, "preview": _preview, "publish": _publish, "label": _label, "weigh": _weigh,
    "plan": _plan, "shop": _shop, "list": _list, "card": _card, "explain": _explain, "guide": _guide, "reference": _reference,
    "editor": _editor, "completion": _completion,
}  # fmt: skip


def count_of(text: str) -> int:
    """Read a number that counts from 1. Raises ArgumentTypeError for any other text."""
    if not text.isascii() or not text.isdigit() or int(text) < 1 or len(text) > 6:
        raise argparse.ArgumentTypeError(f'"{text}" is not a number that counts from 1, such as 5')
    return int(text)


def day_of(text: str) -> date:
    """Read a day of an option. Raises ArgumentTypeError."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f'"{text}" is not a day; write it as 2027-03-06') from None
