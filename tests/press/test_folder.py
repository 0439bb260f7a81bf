"""The output folder changes as a whole, or not at all."""

import pytest

from builder.press.folder import MARK, FolderError, replaced


def write(output, text):
    with replaced(output) as building:
        (building / "page.html").write_text(text, encoding="utf-8")


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_new_folder_is_made_with_its_parents(tmp_path):
    write(tmp_path / "a" / "output", "one")
    assert names(tmp_path / "a") == ["output"]
    assert names(tmp_path / "a" / "output") == [MARK, "page.html"]


def test_an_empty_folder_may_be_taken(tmp_path):
    (tmp_path / "output").mkdir()
    write(tmp_path / "output", "one")
    assert (tmp_path / "output" / "page.html").read_text(encoding="utf-8") == "one"


def test_the_old_output_goes_with_everything_in_it(tmp_path):
    output = tmp_path / "output"
    write(output, "one")
    (output / "old.html").touch()
    write(output, "two")
    assert names(output) == [MARK, "page.html"]
    assert (output / "page.html").read_text(encoding="utf-8") == "two"
    assert names(tmp_path) == ["output"]


def test_an_error_leaves_the_old_output_as_it_was(tmp_path):
    output = tmp_path / "output"
    write(output, "one")
    with pytest.raises(ZeroDivisionError), replaced(output) as building:
        (building / "page.html").write_text("half", encoding="utf-8")
        raise ZeroDivisionError
    assert (output / "page.html").read_text(encoding="utf-8") == "one"
    assert names(tmp_path) == ["output"]


def test_a_folder_with_other_files_is_never_touched(tmp_path):
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "letter.txt").write_text("dear", encoding="utf-8")
    with pytest.raises(FolderError) as error, replaced(tmp_path / "letters"):
        pass
    assert "were not written by this program" in error.value.wrong
    assert error.value.remedy == "Choose an empty folder or a new name."
    assert names(tmp_path / "letters") == ["letter.txt"]


def test_a_file_cannot_become_the_output(tmp_path):
    (tmp_path / "output").write_text("a file", encoding="utf-8")
    with pytest.raises(FolderError, match="is a file"), replaced(tmp_path / "output"):
        pass


def test_a_run_cut_short_between_the_two_renames_is_made_good(tmp_path):
    output = tmp_path / "output"
    write(output, "one")
    output.rename(tmp_path / ".output.before")
    with pytest.raises(ZeroDivisionError), replaced(output):
        raise ZeroDivisionError
    assert (output / "page.html").read_text(encoding="utf-8") == "one"
    assert names(tmp_path) == ["output"]


def test_what_a_run_cut_short_has_left_is_cleared_away(tmp_path):
    output = tmp_path / "output"
    write(output, "one")
    for left in (".output.building", ".output.before"):
        (tmp_path / left).mkdir()
        (tmp_path / left / MARK).touch()
    write(output, "two")
    assert names(tmp_path) == ["output"]


def test_a_swap_that_fails_puts_the_old_output_back(tmp_path, monkeypatch):
    output = tmp_path / "output"
    write(output, "one")
    rename = type(output).rename

    def fail(self, target):
        if self.name == ".output.building":
            raise OSError("no room")
        return rename(self, target)

    monkeypatch.setattr(type(output), "rename", fail)
    with pytest.raises(OSError, match="no room"):
        write(output, "two")
    assert (output / "page.html").read_text(encoding="utf-8") == "one"


def test_where_nothing_can_be_written_the_error_says_so(tmp_path):
    (tmp_path / "a").write_text("a file", encoding="utf-8")
    with pytest.raises(FolderError, match="Nothing can be written"), replaced(tmp_path / "a" / "output"):
        pass
