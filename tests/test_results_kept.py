"""What a run has worked out is known to the next one: it finds, works out and composes what it would without, over random edits."""

import re
import shutil
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path, PurePosixPath
from random import Random

import pytest

from builder import pipeline
from builder import sums as files_summed
from builder.cache import compiled, folder, results, sums
from builder.cache.constants import UnkeptError, dumps, loads
from builder.compose.label_layout.label_plans import LabelPlan, labels_planned
from builder.compose.publication import compose_documents
from builder.model import remembered
from builder.model.document import Document
from builder.model.recipe.quantity import Mass
from builder.model.recipe.size import TotalSize
from builder.words.say import speaking
from tests.fuzz.bases import SOUND, Files, choose, read
from tests.fuzz.spoiling import change_text, lay_out
from tests.making import sure
from tests.published import EXAMPLE

# So many studios, and changes to each.
STUDIOS, CHANGES = 20, 6
DAY = date(2027, 1, 1)
Result = tuple[pipeline.Outcome, list[tuple[LabelPlan, ...]], list[Document]]


@pytest.fixture(scope="module")
def stocked(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Yield a cache that holds what ships and nothing of a studio; the code is taken for old, and the results of every run are kept."""
    cache, of_this_run = tmp_path_factory.mktemp("stocked"), sure(folder.cache_folder())
    if of_this_run.exists():
        shutil.copytree(of_this_run, cache / of_this_run.name, ignore=shutil.ignore_patterns(f"{sums.OF_RESULTS}*"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(cache))
        patch.setattr(files_summed, "_BEGUN", time.time() + 1000)
        patch.setattr(results, "sum_of_run", sums.sum_of_run)
        patch.setattr(results, "_AT_LEAST", -1.0)
        patch.setattr(results, "_WORTH", 0.0)
        sums._sum_of_code.cache_clear()
        sums._sum_of_what_ships.cache_clear()
        anew(SOUND)
        yield cache


@pytest.fixture(autouse=True)
def _kept_from_the_first(stocked: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Begin each test without a result that is kept; what ships need not be read again for each."""
    shutil.copytree(stocked, tmp_path / "cache")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    assert kept_files() == []


def looked_at(studio: Path) -> Result:
    outcome = pipeline.check(studio, on=DAY)
    read = sure(outcome.studio)
    with speaking(read.speaks.messages):
        labels = [labels_planned(read, sheet) for sheet in outcome.plans]
        made = () if outcome.held.everything else compose_documents(*pipeline._editions(studio, read, outcome, DAY)).documents
    return outcome, labels, [with_cover(one) for one in made]


def with_cover(document: Document) -> Document:
    """Return a document that joins others as it is where each of these has a page."""
    joined = document.joined
    return replace(document, html=joined.cover((1,) * len(joined.sheets), 1)) if joined else document


def next_run(studio: Path) -> Result:
    """Check as another process would: it knows nothing but what was kept."""
    remembered.forget()
    with results.results_known(studio):
        return looked_at(studio)


def anew(studio: Path) -> Result:
    remembered.forget()
    return looked_at(studio)


def assert_same(one: Result, other: Result) -> None:
    (found, labels, made), (found_anew, labels_anew, made_anew) = one, other
    # As text, since a place takes no part in equality.
    assert repr(found.findings) == repr(found_anew.findings)
    assert (found.plans, found.held, found.studio, labels) == (found_anew.plans, found_anew.held, found_anew.studio, labels_anew)
    assert made == made_anew


def kept_files() -> list[Path]:
    return list(sure(folder.cache_folder()).glob(f"{sums.OF_RESULTS}*"))


def write(files: Files, studio: Path) -> None:
    shutil.rmtree(studio, ignore_errors=True)
    lay_out(files, studio)


@pytest.mark.long
def test_a_run_that_knows_the_last_one_finds_what_it_would_find_without(tmp_path: Path) -> None:
    for seed in range(STUDIOS):
        change_and_check(Random(seed), tmp_path / f"studio-{seed}")
    assert kept_files()


def change_and_check(chance: Random, studio: Path) -> None:
    first = choose(chance)
    files = dict(first)
    for _ in range(CHANGES):
        write(files, studio)
        assert_same(next_run(studio), anew(studio))
        name = chance.choice(sorted(files))
        if files[name] != first[name] and chance.random() < 0.5:
            files[name] = first[name]
        else:
            change_text(files, name, chance)


RECIPE, JUDGED = "builder.read.studios._recipe", "builder.check.label.claims.claims_in"
FOUND = "builder.check._found_in"
CLASS, FRONT = "builder.reckon._plans", "builder.compose.label_layout.composed._front"
COMPOSED, COVER = "builder.compose.publication._known", "builder.compose.publication._cover"


def worked_out(monkeypatch: pytest.MonkeyPatch, run: Callable[[], object]) -> Counter[str]:
    """Return how often each function works something out in a run that is not taken from what was kept."""
    names: Counter[str] = Counter()
    timed = remembered._timed

    def watch(function: Callable[..., object], *args: object, **kwargs: object) -> object:
        names[f"{function.__module__}.{function.__qualname__}"] += 1
        return timed(function, *args, **kwargs)

    with monkeypatch.context() as patched:
        patched.setattr(remembered, "_timed", watch)
        run()
    return names


@pytest.mark.long
def test_what_has_not_changed_is_not_worked_out_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    studio = tmp_path / "studio"
    files = dict(read(SOUND))
    write(files, studio)
    first = worked_out(monkeypatch, lambda: next_run(studio))
    assert first[CLASS] == len([name for name in files if name.endswith("lesson.md")])
    assert first[FRONT]
    lesson = next(name for name in sorted(files) if name.endswith("lesson.md"))
    write({**files, lesson: files[lesson] + b"\nOne more word.\n"}, studio)
    again = worked_out(monkeypatch, lambda: next_run(studio))
    assert again[CLASS] == 1
    assert 0 < again[FOUND] < first[FOUND]
    assert not again[FRONT], "no label speaks of a lesson"
    assert again[COMPOSED] * first[CLASS] == first[COMPOSED]
    unchanged = worked_out(monkeypatch, lambda: next_run(studio))
    assert not (unchanged[CLASS] or unchanged[COMPOSED] or unchanged[COVER])
    monkeypatch.setattr(sums, "_sum_of_what_ships", lambda _: b"other code")
    assert worked_out(monkeypatch, lambda: next_run(studio))[CLASS] == first[CLASS]


@pytest.mark.long
def test_who_weighs_again_has_nothing_read_or_judged_again_but_what_was_changed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    studio, size = tmp_path / "studio", TotalSize(Mass(Fraction(900)))
    files = dict(read(SOUND))
    recipes = sorted(name for name in files if name.startswith("recipes/"))
    about = PurePosixPath(recipes[0]).stem
    weighed: list[pipeline.Outcome] = []

    def weigh() -> None:
        remembered.forget()
        with results.results_known(studio, "recipe"):
            weighed.append(pipeline.weigh(studio, about, size, on=DAY))

    write(files, studio)
    assert worked_out(monkeypatch, weigh)[RECIPE] == len(recipes)
    again = worked_out(monkeypatch, weigh)
    assert not again[RECIPE] and not again[JUDGED]
    write({**files, recipes[0]: files[recipes[0]] + b'about: "It cures eczema."\n'}, studio)
    changed = worked_out(monkeypatch, weigh)
    assert changed[RECIPE] == 1 and changed[JUDGED]
    first, known, last = weighed
    assert (repr(known.findings), known.batch) == (repr(first.findings), first.batch)
    assert "claim-forbidden" in {one.name for one in last.findings} - {one.name for one in first.findings}
    remembered.forget()
    without = pipeline.weigh(studio, about, size, on=DAY)
    assert (repr(last.findings), last.batch) == (repr(without.findings), without.batch)


def test_no_two_functions_keep_their_results_under_one_name() -> None:
    assert len({id(memory.known) for memory in remembered._memories.values()}) == len(remembered._memories)
    assert not any(name.endswith((".made", ".in_words")) for name in remembered._memories)


def test_nothing_that_somebody_wrote_of_a_person_is_kept(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    others = re.compile(r"classes/(?!soap-lab-in-pairs/)|recipes/(?!green-lab-bar\.)")
    files = {name: data for name, data in read(EXAMPLE).items() if not others.match(name)}
    words = ("Qwuzzle", "Vrexmoor", "zintleberry", "Plixwort", "quorvish")
    cells = (f"{words[0]} {words[1]}", "2027-02-13", "47", f"latex; {words[2]}", f"We spoke of {words[3]} on the phone.", f"{words[4]} bar")
    roster = f"name,date,age,allergies,settled,their name for it\n{','.join(cells)}\n"
    files["classes/soap-lab-in-pairs/roster.csv"] = roster.encode()
    files["studio.yaml"] += b"labels: {names of their own: yes}\n"
    write(files, studio)
    outcome, labels, made = next_run(studio)
    assert any(word in one.html for one in made for word in words[:2])
    assert any(words[4] in text.name for plans in labels for plan in plans for text in plan.texts)
    assert any(guest.name.startswith(words[0]) for sheet in outcome.plans for guest in sheet.guests)
    (kept,) = kept_files()
    data = kept.read_bytes().decode("latin-1").casefold()
    assert "soap-lab-in-pairs" in data
    assert not [word for word in words if word.casefold() in data]
    assert_same(next_run(studio), anew(studio))


def test_nothing_is_kept_of_a_roster_that_cannot_be_read(tmp_path: Path) -> None:
    studio, files = tmp_path / "studio", dict(read(SOUND))
    files["classes/one-bar/roster.csv"] = b"name,age,Qwuzzle Vrexmoor,,\nPlixwort,zintleberry\n"
    write(files, studio)
    outcome, _, _ = next_run(studio)
    assert any(one.place.file == "classes/one-bar/roster.csv" for one in outcome.findings)
    (kept,) = kept_files()
    data = kept.read_bytes().decode("latin-1").casefold()
    assert not [word for word in ("qwuzzle", "vrexmoor", "plixwort", "zintleberry") if word in data]


def test_the_time_of_what_may_not_be_kept_does_not_count(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    files = dict(read(SOUND))
    write(files, studio)
    anew(studio)
    assert remembered.seconds_spent()[CLASS] > 0
    for name in [one for one in files if one.endswith("lesson.md")]:
        files[name.replace("lesson.md", "roster.csv")] = b"name\nQwuzzle Vrexmoor\n"
    write(files, studio)
    outcome, _, _ = anew(studio)
    assert all(sheet.names_somebody for sheet in outcome.plans) and CLASS not in remembered.seconds_spent()


def test_what_holds_a_person_is_never_kept(tmp_path: Path) -> None:
    with pytest.raises(UnkeptError):
        dumps([tmp_path], never=(Path,))


@pytest.mark.long
def test_what_is_broken_is_not_believed(tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    write(dict(read(SOUND)), studio)
    before = next_run(studio)
    (kept,) = kept_files()
    data = kept.read_bytes()
    kept.write_bytes(data[: len(data) // 2])
    assert compiled.find(kept.name, loads) is None
    assert_same(next_run(studio), before)


SQUARE = b'<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d"></svg>'
# What stands elsewhere than in the text of a class, and is shown or linked to by documents about it: files that come, and go (None).
ELSEWHERE: dict[str, dict[str, bytes | None]] = {
    "a page more": {"pages/safety.md": b"# Safe here\n\nText.\n"},
    "its title": {"pages/safety.md": b"# Safe and sound\n\nText.\n"},
    "what the studio says of itself": {"studio.yaml": read(SOUND)["studio.yaml"] + b"tagline: Something else\n"},
    "a template": {"layouts/sheets/teacher.html": b'{% extends "ours/sheets/teacher.html" %}\n{% block title %}Mine{% endblock %}\n'},
    "no template": {"layouts/sheets/teacher.html": None},
    "a style": {"layouts/styles/own.css": b"h1 { color: #333333 }\n"},
    "the size of a picture": {"classes/one-bar/new.svg": SQUARE % (9, 9)},
    "no picture": {"classes/one-bar/new.svg": None},
    "a picture again": {"classes/one-bar/new.svg": SQUARE % (9, 8)},
    "the title of the other class": {
        "classes/one-lotion/class.yaml": re.sub(rb"(?m)^title: .*", b"title: Named anew", read(SOUND)["classes/one-lotion/class.yaml"])
    },
    "a page that a lesson links to": {"pages/safety.md": None},
    "and again": {"pages/safety.md": b"# Safe here\n\nText.\n"},
    "the other class": {name: None for name in read(SOUND) if name.startswith("classes/one-lotion/")},
}


@pytest.mark.long
def test_documents_about_a_class_follow_what_changes_elsewhere(tmp_path: Path) -> None:
    studio, files = tmp_path / "studio", dict(read(SOUND))
    links = b"\nSee [safety](page:safety) and [lotion](class:one-lotion).\n"
    lesson = files["classes/one-bar/lesson.md"].replace(b"\n## ", links + b"\n![A bar](new.svg)\n\n## ", 1)
    files["classes/one-bar/lesson.md"] = lesson + links
    files["classes/one-bar/new.svg"] = SQUARE % (7, 7)
    last: list[Document] = []
    for what, changed in ELSEWHERE.items():
        files = {name: data for name, data in (files | changed).items() if data is not None}
        write(files, studio)
        known = next_run(studio)
        assert_same(known, anew(studio))
        assert known[2] != last, what
        last = known[2]
