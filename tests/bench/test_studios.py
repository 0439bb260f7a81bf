"""The studios of the benchmark are sound, and as large as they are said to be."""

from pathlib import Path

from tests.bench.studios import write_studio
from tests.test_usual import findings_of


def test_the_smallest_studio_is_sound(tmp_path: Path) -> None:
    studio = write_studio(tmp_path / "studio", 5)
    found, said = findings_of(studio)
    recipes, classes = list((studio / "recipes").glob("*.yaml")), list((studio / "classes").iterdir())
    assert (len(recipes), len(classes)) == (5, 5)
    assert [(file, name) for file, name in found] == [], said


def test_a_smaller_studio_is_the_beginning_of_a_larger_one(tmp_path: Path) -> None:
    few, more = (write_studio(tmp_path / str(size), size) for size in (9, 30))
    files = [path.relative_to(few) for path in few.rglob("*") if path.is_file()]
    assert all((few / file).read_bytes() == (more / file).read_bytes() for file in files)
    assert len(list((more / "classes").iterdir())) == 30
