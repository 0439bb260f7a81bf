"""The goals: each a ratio of two things that are measured one after the other in the same run.

Against the plain loop 0.36 is out of reach. Of 96 processor seconds of 256 sheets 42 went into laying them out as they are kept, 23 into
reading the HTML, tags, fonts and writing, 22 into trying sizes and ways to save a page (349 layouts in all), and 8 into giving back memory:
with none of the last two it would be 0.85, since each sheet has to be laid out once in both. By the clock two cores halve it; what is
nearest, 0.47 to 0.66, is limited by the first five seconds, which nothing can share, and by those tries, of which home sheets of six and
four pages and teachers' sheets of five want more than longer ones did.
How a text breaks is remembered, without which it would be 109 s. What is left has no single cause. By samples of it columns take a fifth,
laid out until they are even, drawing a seventh, values of styles an eighth, matching selectors and breaking lines a tenth each. To share
values of styles among sheets won nothing, to work out percentages once for each style a fiftieth; to keep garbage to the end would win a
fifteenth, and take three times the memory.

To know that nothing has changed takes a third as long as to load the modules that know what to do with it: it is the sum of 37 MB in 701
files of the output, most of it to read them. Our own code and what ships are known by their times.

`weigh` is measured in a studio where the recipe has been weighed before, at another size each time: a third of that is Python making some
340 frozen dataclasses. With the recipe changed in between it takes longer, since the code that reads is loaded, and the first time more
than twice as long. With one word changed `check` loads the modules in a third of its time, reads back what the last run worked out in a
tenth, and then works out the class that changed and those with a roster, of which nothing is kept (`builder/cache/results.py`).

With one word changed in a studio of 104 classes 1,600 of 1,700 documents are known, since each is composed from what its class sees
(`builder/compose/seen_by_classes.py`). What is left: the pages of the site that are about all classes, a second; to read back what the
last run worked out and to check, another; to write, with a look at each PDF that is kept, more than one; and to press what has changed.

A process that presses takes 115 MB for 8 classes and 117 MB for 24. The one that reads and composes grows by 1 MB with each class: a third
of that is finished HTML.
"""

import re
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import count, pairwise
from pathlib import Path
from tempfile import mkdtemp

from tests.bench.measure import ROOT, Taken, command, python, seconds, typical
from tests.bench.studios import write_studio

EXAMPLE = ROOT / "site_example"
# What has to be known to say that nothing has changed, and what any run that reads a studio cannot do without.
TO_KNOW = "import builder.cli, builder.tasks.publish"
TO_READ = "import pydantic, pint"
# Of all changes of a word in one run, so that none is made twice.
_CHANGES = count()


@dataclass(frozen=True)
class Goal:
    """What is measured against what, and the most that it may come to. `long` is what takes many minutes."""

    name: str
    against: str
    at_most: float
    ratio: Callable[["Bench"], float]
    long: bool = False


class Bench:
    """One run in a scratch folder. What several goals need is measured once, a median of so many `times`."""

    def __init__(self, scratch: Path, times: int, sizes: tuple[int, ...]) -> None:
        self.scratch, self.times, self.sizes = scratch, times, sizes
        self.studio = scratch / "example"
        shutil.copytree(EXAMPLE, self.studio, ignore=shutil.ignore_patterns("output"))
        python("-m", "builder", "card", "Olive oil")  # the first run of a version reads what ships
        assert list(scratch.glob("cache/stillroom/*")), "nothing is kept: wait ten seconds after a change of the code"

    def part(self, name: str) -> float:
        return seconds(self.times, lambda: python("-m", "tests.bench.parts", name, self.studio, self.scratch / "blank"))

    def imports(self, code: str) -> float:
        return seconds(self.times, lambda: python("-c", code))

    @cached_property
    def full(self) -> float:
        """Return the processor time that a first publication of the example takes."""
        return self.first.seconds

    @cached_property
    def first(self) -> Taken:
        """Return what a first publication of the example takes."""
        return self.publication(self.studio, self.scratch / "out")

    @cached_property
    def plain(self) -> Taken:
        """Return what the plain loop over the finished HTML of the example takes."""
        python("-m", "tests.bench.parts", "html", self.studio, self.scratch / "blank")
        return typical(self.times, lambda: python("-m", "tests.bench.parts", "plain", self.studio, self.scratch / "blank"))

    def publication(self, studio: Path, output: Path) -> Taken:
        return typical(self.times, lambda: command("publish", studio, "--to", output), lambda: shutil.rmtree(output, ignore_errors=True))

    def again(self, studio: Path, output: Path, before: Callable[[], object] = lambda: None) -> float:
        return seconds(self.times, lambda: command("publish", studio, "--to", output), before)

    def generated(self, classes: int) -> Path:
        folder = self.scratch / f"studio-{classes}"
        return folder if folder.exists() else write_studio(folder, classes)


def _against_the_plain_loop(bench: Bench) -> float:
    return bench.full / bench.plain.seconds


def _by_the_clock(bench: Bench) -> float:
    return bench.first.clock / bench.plain.clock


def _all_but_pdfs(bench: Bench) -> float:
    return bench.part("without") / bench.full


def _again(bench: Bench) -> float:
    assert bench.full
    bench.again(bench.studio, bench.scratch / "out")  # what has come out twice alike is known
    return bench.again(bench.studio, bench.scratch / "out") / bench.imports(TO_KNOW)


def _one_word(bench: Bench) -> float:
    assert bench.full
    words = _words_changed(bench.studio)
    return bench.again(bench.studio, bench.scratch / "out", lambda: next(words)) / bench.full


def _one_word_of_100(bench: Bench) -> float:
    studio, output = bench.generated(100), bench.scratch / "out-100"
    full, words = bench.publication(studio, output).seconds, _words_changed(studio)
    return bench.again(studio, output, lambda: next(words)) / full


def _words_changed(studio: Path) -> Iterator[str]:
    """Change one word of the first sentence of one lesson, each time to another."""
    lesson = min(studio.glob("classes/*/lesson.md"))
    text = lesson.read_text(encoding="utf-8")
    first = re.search(r"^(?![#\s>|:-]|\d+\.).*?\b(?P<word>[a-z]{4,})\b", text, re.MULTILINE)
    assert first, f"{lesson} has no sentence"
    for number in _CHANGES:
        word = "".join("abcdefghij"[int(digit)] for digit in f"{number:05}")
        lesson.write_text(text[: first.start("word")] + word + text[first.end("word") :], encoding="utf-8")
        yield word


def _check(bench: Bench) -> float:
    words = _words_changed(bench.studio)
    return seconds(bench.times, lambda: command("check", bench.studio), lambda: next(words)) / bench.part("parse")


def _check_again(bench: Bench) -> float:
    command("check", bench.studio)
    return seconds(bench.times, lambda: command("check", bench.studio)) / bench.part("parse")


def _weigh(bench: Bench) -> float:
    recipe, sizes = min((bench.studio / "recipes").glob("*.yaml")).stem, count(1)
    weigh = partial(_weigh_so_much, bench, recipe, sizes)
    weigh()  # what is read and judged is known from then on
    return seconds(bench.times, weigh) / bench.imports(TO_READ)


def _weigh_so_much(bench: Bench, recipe: str, sizes: Iterator[int]) -> Taken:
    return command("weigh", bench.studio, recipe, "--total", f"{next(sizes)} kg")


def _growth(bench: Bench) -> float:
    """Return how far the last stretch is steeper or flatter than the first, as a share of it: of checks of studios that nobody has seen."""
    taken = [seconds(bench.times, partial(_first_check, bench, size)) for size in bench.sizes]
    stretches = zip(pairwise(bench.sizes), pairwise(taken), strict=True)
    slopes = [(more - less) / (many - few) for (few, many), (less, more) in stretches]
    return max(abs(slope / slopes[0] - 1) for slope in slopes[1:])


def _first_check(bench: Bench, classes: int) -> Taken:
    studio = Path(mkdtemp(dir=bench.scratch))
    return command("check", shutil.copytree(bench.generated(classes), studio, dirs_exist_ok=True))


def _memory(bench: Bench) -> float:
    return _memory_of_pressing(bench, 100) / _memory_of_pressing(bench, 10)


def _memory_of_pressing(bench: Bench, classes: int) -> int:
    output = bench.scratch / f"pressed-{classes}"
    python("-m", "tests.bench.parts", "publish", bench.generated(classes), output)
    return int(output.with_suffix(".memory").read_text(encoding="utf-8"))


GOALS = (
    Goal("full publication of the example", "plain loop over the same finished HTML", 0.36, _against_the_plain_loop),
    Goal("full publication, by the clock", "plain loop over the same finished HTML", 0.36, _by_the_clock),
    Goal("all but the PDFs", "full publication", 0.08, _all_but_pdfs),
    Goal("publish again, nothing changed", "start of Python with the modules to know that", 1.5, _again),
    Goal("one word of one lesson changed", "full publication of the example", 0.08, _one_word),
    Goal("one word of one lesson changed", "full publication of 100 classes", 0.02, _one_word_of_100, long=True),
    Goal("check again, nothing changed", "parsing the same YAML with positions", 3, _check_again),
    Goal("check, one word changed", "parsing the same YAML with positions", 3, _check),
    Goal("weigh of one recipe", "start of Python with pydantic and pint", 2, _weigh),
    Goal("growth of a first check with the classes", "the first stretch (how far off)", 0.1, _growth),
    Goal("peak memory of a process that presses", "that of 10 classes, of 100", 1.1, _memory, long=True),
)
