"""What README.md shows works: its studio publishes without a finding, its finding is the one that the command prints."""

import json
import re
from pathlib import Path

from builder import cli

README = (Path(__file__).parent.parent / "README.md").read_text(encoding="utf-8")
FILES = dict(re.findall(r"^`([\w/.-]+)`\n\n```\w+\n(.*?)^```$", README, flags=re.DOTALL | re.MULTILINE))


def lay_out(folder, **changed):
    for name, text in (FILES | changed).items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def test_the_readme_shows_a_whole_studio():
    assert set(FILES) == {"studio.yaml", "recipes/orchard-bar.yaml", "classes/first-bar/class.yaml", "classes/first-bar/lesson.md"}


def test_its_studio_publishes_without_a_finding(tmp_path, capsys):
    lay_out(tmp_path / "loft")
    status = cli.main(["publish", str(tmp_path / "loft"), "--to", str(tmp_path / "out"), "--today", "2027-01-02"])
    printed = capsys.readouterr()
    assert status == 0
    assert "Nothing found" in printed.out
    assert (tmp_path / "out" / "site" / "index.html").is_file()


def test_its_supplies_are_read_without_a_finding(tmp_path, capsys):
    supplies = re.search(r"```yaml\n(- \{ingredient: .*?)^```$", README, flags=re.DOTALL | re.MULTILINE).group(1)
    lay_out(tmp_path, **{"shelf/supplies.yaml": supplies})
    assert cli.main(["check", str(tmp_path), "--today", "2027-01-02"]) == 0
    assert "Nothing found" in capsys.readouterr().out


def test_its_stock_is_read_and_taken_off(tmp_path, capsys):
    stock = re.search(r"```yaml\n(- \{ingredient: olive oil, have: .*?)^```$", README, flags=re.DOTALL | re.MULTILINE).group(1)
    gloves = "- {item: nitrile gloves, pack: 100, price: 12.50, each student: 2}\n"
    lay_out(tmp_path, **{"stock.yaml": stock, "shelf/supplies.yaml": gloves})
    assert cli.main(["shop", str(tmp_path), "--today", "2027-01-02"]) == 0
    assert re.search(r"Nitrile gloves +10 +60 +nothing +50", capsys.readouterr().out)


def test_its_finding_is_what_the_command_prints(tmp_path, capsys):
    recipe = FILES["recipes/orchard-bar.yaml"].replace("olive oil: 65 %", "olve oil: 65 %")
    lay_out(tmp_path, **{"recipes/orchard-bar.yaml": recipe})
    status = cli.main(["check", str(tmp_path), "--today", "2027-01-02"])
    block = re.search(r"## Reading a finding\n\n((?:    .*\n)+)", README)
    shown = "".join(line[4:] for line in block.group(1).splitlines(keepends=True))
    assert status == 1
    assert shown in capsys.readouterr().err


def test_its_commands_exist(capsys):
    for command in ("check", "publish", "weigh", "plan", "shop", "card"):
        assert f"`stillroom {command} " in README
        try:
            cli.main([command, "--help"])
        except SystemExit as end:
            assert end.code == 0
    assert "usage" in capsys.readouterr().out


def test_it_names_every_key_of_the_json(tmp_path, capsys):
    lay_out(tmp_path)
    cli.main(["weigh", str(tmp_path), "orchard-bar", "--oils", "1 kg", "--json", "--today", "2027-01-02"])
    batch = json.loads(capsys.readouterr().out)
    cli.main(["weigh", str(tmp_path), "orchard-bar", "--class", "first-bar", "--json", "--today", "2027-01-02"])
    of_class = json.loads(capsys.readouterr().out)
    keys = {*batch, *of_class, *(f"batch.{key}" for key in batch["batch"])} - {"format", "version", "batch.name", "batch.product"}
    assert {key for key in keys if f"`{key}`" not in README} == set()
