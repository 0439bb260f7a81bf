"""One recipe is read alike from every form in which spreadsheets write it. The forms are common practice, no source."""

from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from builder import units
from builder.read.notebook.amounts import decimal_mark, read_amount
from builder.read.notebook.notebook import Notebook, read_notebook
from builder.read.notebook.table import NotebookError
from tests.notebook.tables import ENCODINGS, ROWS, parted, soap_sheet, with_part, workbook

GRAMS = {"Olive oil": "500.5", "Coconut oil": "299.5", "Shea butter": "200", "Sodium hydroxide": "135.5", "Water": "300"}
# NIST SP 811 (2008), appendix B.9: one avoirdupois ounce is 28.349523125 g, one pound 453.59237 g.
OUNCE, POUND = Fraction("28.349523125"), Fraction("453.59237")


def read(folder: Path, data: bytes, name: str = "n.csv", *, sheet: str | None = None, column: str | None = None) -> Notebook:
    (folder / name).write_bytes(data)
    return read_notebook(folder / name, sheet, column)


def refused(folder: Path, data: bytes, name: str = "n.csv", **how: Any) -> str:
    with pytest.raises(NotebookError) as error:
        read(folder, data, name, **how)
    return str(error.value)


def grams(notebook: Notebook) -> dict[str, Fraction]:
    return {entry.name: entry.amount.value for entry in notebook.entries}


@pytest.mark.parametrize("ends", ["\r\n", "\n", "\r"], ids=["CRLF", "LF", "CR"])
@pytest.mark.parametrize("mark", [".", ","])
@pytest.mark.parametrize("sign", [",", ";", "\t"], ids=["comma", "semicolon", "tab"])
@pytest.mark.parametrize("encoding", ENCODINGS)
def test_the_same_lines_come_from_every_encoding_sign_and_decimal_mark(
    tmp_path: Path, encoding: str, sign: str, mark: str, ends: str
) -> None:
    notebook = read(tmp_path, ENCODINGS[encoding](parted(sign, mark, ends=ends)))
    assert grams(notebook) == {name: Fraction(text) for name, text in GRAMS.items()}
    assert notebook.not_read == ('"Crème bar"', 'the column "%"')


def test_a_line_that_tells_the_sign_is_believed(tmp_path: Path) -> None:
    assert grams(read(tmp_path, b"sep=;\r\n" + parted(";", ",").encode())) == {name: Fraction(text) for name, text in GRAMS.items()}


def test_a_workbook_says_the_same_as_its_export(tmp_path: Path) -> None:
    data = workbook(soap_sheet)
    assert grams(read(tmp_path, data, "n.xlsx")) == {name: Fraction(text) for name, text in GRAMS.items()}
    shares = read(tmp_path, with_nothing_but_oils(), "n.xlsx", column="%")
    assert {entry.name: entry.amount.text for entry in shares.entries} == {
        "Olive oil": "50 %",
        "Coconut oil": "30 %",
        "Shea butter": "20 %",
    }


def with_nothing_but_oils() -> bytes:
    def fill(sheet: Any) -> None:
        soap_sheet(sheet)
        sheet.delete_rows(6, 2)

    return workbook(fill)


@pytest.mark.parametrize(("cells", "mark"), [
    (["1,5", "200"], ","), (["1.5", "200"], "."), (["1,234.5"], "."), (["1.234,5"], ","), (["0,125"], ","), (["0.125"], "."),
    (["1,234", "2.5"], "."), (["1.234", "2,5"], ","), (["1.234.567"], ","), (["200", "300"], "."), (["1 234,5"], ","), (["1'234.5"], "."),
    (["12,5 g", "1,250 g"], ","), (["12,5000"], ","),
])  # fmt: skip
def test_the_decimal_mark_is_told_by_all_amounts_together(cells: list[str], mark: str) -> None:
    assert decimal_mark(cells) == mark


@pytest.mark.parametrize("cells", [["1,234"], ["1.234", "200"], ["1,5", "2.5"]])
def test_what_can_mean_two_amounts_is_not_guessed(cells: list[str]) -> None:
    with pytest.raises(ValueError, match=r"decimal|thousands"):
        decimal_mark(cells)


@pytest.mark.parametrize(("cell", "unit", "mark", "grams"), [
    ("16", "oz", ".", 16 * OUNCE), ("1 lb 4 oz", "", ".", POUND + 4 * OUNCE), ("2,5", "lb", ",", Fraction("2.5") * POUND),
    ("1 1/2 oz", "", ".", Fraction(3, 2) * OUNCE), ("1.250,5", "g", ",", Fraction("1250.5")), ("1 250", "g", ".", Fraction(1250)),
    ("0.45 kg", "g", ".", Fraction(450)), (".5", "oz", ".", OUNCE / 2), ("450g", "oz", ".", Fraction(450)),
])  # fmt: skip
def test_weights_are_read_in_ounces_and_grams(cell: str, unit: str, mark: str, grams: Fraction) -> None:
    assert read_amount(cell, unit, mark).value == grams


@pytest.mark.parametrize("unit", units.MASS_UNITS)
def test_a_notebook_has_every_unit_of_weight_that_a_recipe_may_have(tmp_path: Path, unit: str) -> None:
    heads = grams(read(tmp_path, f"ingredient,weight ({unit})\nolive oil,2\n".encode()))
    cells = grams(read(tmp_path, f"ingredient,weight\nolive oil,2 {unit}\n".encode()))
    assert heads == cells == {"olive oil": 2 * units.grams_in(unit)}


@pytest.mark.parametrize(("rows", "says"), [
    ([("Ingredient", "Weight"), ("Olive oil", "500")], "no unit"),
    ([("Ingredient", "Weight (g)"), ("Olive oil", "about 500")], 'line 2: the amount "about 500"'),
    ([("Ingredient", "Weight (g)"), ("Olive oil", "-500")], "below zero"),
    ([("Ingredient", "Weight (g)"), ("", "500")], "correct what is wrong"),
    ([("Ingredient", "Weight (g)"), ("Olive oil", "500"), ("Total", "600")], "and the lines above come to 500 g"),
    ([("Ingredient", "Batch 1 (g)", "Batch 2 (g)"), ("Olive oil", "500", "1000")], '--column: "Batch 1 (g)", "Batch 2 (g)"'),
    ([("Olive oil", "500"), ("Coconut oil", "200")], "no line heads the columns"),
    ([("Ingredient", "Weight (g)")], "no ingredient with an amount"),
    ([("Ingredient", "Amount"), ("Olive oil", "50 %"), ("Water", "20 g")], "in one way"),
    ([("Ingredient", "Amount"), ("Olive oil", "2 cups"), ("Water", "1 cup")], 'line 3: the amount "1 cup"'),
])  # fmt: skip
def test_what_cannot_be_read_is_told_with_its_line(tmp_path: Path, rows: list[tuple[str, ...]], says: str) -> None:
    assert says in refused(tmp_path, parted("\t", ".", rows).encode())


@pytest.mark.parametrize(("heads", "taken", "not_read"), [
    (("Ingredient", "Amount", "Cost per oz"), "5", 'the column "Cost per oz"'),
    (("Ingredient", "oz", "$/oz"), "5", 'the column "$/oz"'),
    (("Ingredient", "g", "SAP (g)"), "5", 'the column "SAP (g)"'),
    (("Ingredient", "oz", "g"), "7", 'the column "oz"'),
    (("Ingredient", "%", "Weight (oz)"), "7", 'the column "%"'),
])  # fmt: skip
def test_prices_are_no_amounts_and_weights_come_first(tmp_path: Path, heads: tuple[str, ...], taken: str, not_read: str) -> None:
    rows = [heads, ("Olive oil", "5 oz" if "Amount" in heads else "5", "7")]
    notebook = read(tmp_path, parted("\t", ".", rows).encode())
    assert notebook.entries[0].amount.text.split(" ")[0] == taken
    assert notebook.not_read == (not_read,)


def test_an_amount_beside_another_weight_is_asked_about(tmp_path: Path) -> None:
    rows = [("Ingredient", "Amount", "Weight (oz)"), ("Olive oil", "5 oz", "7")]
    assert "say which with --column" in refused(tmp_path, parted("\t", ".", rows).encode())


def test_sums_that_are_right_are_left_out(tmp_path: Path) -> None:
    rows = [
        *ROWS[:2],
        ("Oils", "", ""),
        *ROWS[2:5],
        ("Total oils", "1000", ""),
        ("Lye", "", ""),
        *ROWS[5:],
        ("Sum", "435.5", ""),
        ("Total", "1435.5", ""),
    ]
    notebook = read(tmp_path, parted(";", ",", rows).encode())
    assert grams(notebook) == {name: Fraction(text) for name, text in GRAMS.items()}
    assert [entry.heading for entry in notebook.entries] == ["Oils", "Oils", "Oils", "Lye", "Lye"]


def _formula(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet["B4"] = "=B3*0.6"


def _date(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet["B5"] = date(2027, 3, 4)


def _merged(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet["B4"] = None
    sheet.merge_cells("B3:B4")


def _hidden(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet.row_dimensions[4].hidden = True


def _error(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet["B4"] = "#DIV/0!"


def _far_off(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet["ZZ90000"] = "x"


def _second_sheet(sheet: Any) -> None:
    soap_sheet(sheet)
    sheet.title = "one"
    soap_sheet(sheet.parent.create_sheet("two"))


@pytest.mark.parametrize(("fill", "says"), [
    (_formula, "B4: a formula whose result is not in the file"), (_date, "B5: a date stands here"), (_merged, "B3:B4: these cells"),
    (_hidden, "line 4: this line is hidden"), (_error, "B4: #DIV/0!"), (_far_off, "90000 lines"),
    (_second_sheet, "(one, two): say which with --sheet"),
])  # fmt: skip
def test_what_a_workbook_hides_is_told(tmp_path: Path, fill: Any, says: str) -> None:
    assert says in refused(tmp_path, workbook(fill), "n.xlsx")


def test_what_nobody_reads_may_be_as_it_is(tmp_path: Path) -> None:
    def fill(sheet: Any) -> None:
        soap_sheet(sheet)
        sheet["B1"] = date(2019, 5, 4)
        for column, cells in (("C", ("=B3/10", "#N/A")), ("D", ("from the mill", date(2027, 3, 4)))):
            for line, cell in enumerate(cells, 3):
                sheet[f"{column}{line}"] = cell
        sheet.merge_cells("D5:D6")
        sheet.merge_cells("A1:D1")
        sheet.row_dimensions[1].hidden = True
        for line, row in enumerate((("Notes", None), ("Next time", "more clay"), (None, date(2027, 3, 4))), 10):
            sheet.cell(line, 1, row[0])
            sheet.cell(line, 2, row[1])
        hidden = sheet.parent.create_sheet("lists")
        hidden["A1"], hidden.sheet_state = "olive oil", "hidden"

    notebook = read(tmp_path, workbook(fill), "n.xlsx")
    assert grams(notebook) == {name: Fraction(text) for name, text in GRAMS.items()}
    assert notebook.not_read == ('"Crème bar"', 'the column "%"', '"Notes"', '"Next time more clay"', '"2027-03-04"')


def test_an_amount_that_is_none_is_no_note(tmp_path: Path) -> None:
    rows = [*ROWS, ("Lavender essential oil", "a pinch", "")]
    assert 'the amount "a pinch"' in refused(tmp_path, parted(";", ".", rows).encode())
    assert 'the amount "5 drops"' in refused(tmp_path, parted(";", ".", [*ROWS, ("", "", ""), ("Lavender", "5 drops", "")]).encode())


def test_a_hidden_column_is_not_read_and_a_text_keeps_its_own_decimal_mark(tmp_path: Path) -> None:
    def fill(sheet: Any) -> None:
        for row in (("Ingredient", "Weight (g)", "Weight (oz)"), ("Olive oil", 650, 22.5), ("Water", 300, "10,5")):
            sheet.append(row)
        sheet.column_dimensions["B"].hidden = True

    notebook = read(tmp_path, workbook(fill), "n.xlsx")
    assert grams(notebook) == {"Olive oil": Fraction("22.5") * OUNCE, "Water": Fraction("10.5") * OUNCE}
    assert notebook.not_read == ('the hidden column "Weight (g)"',)

    def with_thousands(sheet: Any) -> None:
        fill(sheet)
        sheet["C3"] = "1,234"

    assert "can mean thousands or three decimals" in refused(tmp_path, workbook(with_thousands), "n.xlsx")


def test_a_head_over_each_part_is_a_heading_and_shares_of_one_are_no_percentages(tmp_path: Path) -> None:
    rows = [("Oils", "Weight (g)"), ("Olive oil", "650"), ("", ""), ("Lye solution", "Weight (g)"), ("Water", "300")]
    assert [(entry.name, entry.heading) for entry in read(tmp_path, parted(";", ".", rows).encode()).entries] == [
        ("Olive oil", ""), ("Water", "Lye solution"),
    ]  # fmt: skip
    shares = [("Ingredient", "%"), ("Water", "0.8"), ("Sunflower oil", "0.2")]
    assert "as shares of one do" in refused(tmp_path, parted(";", ".", shares).encode())


def test_a_sheet_can_be_named(tmp_path: Path) -> None:
    assert len(read(tmp_path, workbook(_second_sheet), "n.xlsx", sheet="two").entries) == 5
    assert "there are: one, two" in refused(tmp_path, workbook(_second_sheet), "n.xlsx", sheet="three")


def test_a_sum_of_binary_fractions_and_a_unit_in_the_format_are_read_as_they_are_shown(tmp_path: Path) -> None:
    def fill(sheet: Any) -> None:
        sheet.append(["Ingredient", "Amount"])
        sheet.append(["Olive oil", 0.1 + 0.2])
        sheet["B2"].number_format = '0.0" kg"'

    assert [entry.amount.text for entry in read(tmp_path, workbook(fill), "n.xlsx").entries] == ["0.3 kg"]


def _bomb(_: bytes) -> bytes:
    return b"<x>" + b" " * 40_000_000 + b"</x>"


def _entities(sheet: bytes) -> bytes:
    head, _, rest = sheet.partition(b"<worksheet")
    return (
        b'<!DOCTYPE x [<!ENTITY a "b"><!ENTITY c "&a;&a;&a;">]>' + b"<worksheet" + rest
        if not head.startswith(b"<?")
        else (head + b'<!DOCTYPE x [<!ENTITY a "b"><!ENTITY c "&a;&a;&a;">]><worksheet' + rest)
    )


@pytest.mark.parametrize(("data", "says"), [
    (b"PK not a workbook", "no workbook"), (b"", "no line heads"), (b"\xd0\xcf\x11\xe0 old", "(.xls)"),
    (with_part(workbook(soap_sheet), "xl/worksheets/sheet1.xml", _bomb), "unpacks to far more"),
    (with_part(workbook(soap_sheet), "xl/worksheets/sheet1.xml", _entities), "cannot be opened"),
    (with_part(workbook(soap_sheet), "xl/worksheets/sheet1.xml", lambda data: data[:200]), "cannot be opened"),
    (workbook(soap_sheet)[:3000], "no workbook"),
], ids=["a head alone", "empty", "an old workbook", "a bomb", "entities", "cut within", "cut off"])  # fmt: skip
def test_hostile_files_are_refused(tmp_path: Path, data: bytes, says: str) -> None:
    assert says in refused(tmp_path, data, "n.xlsx" if data.startswith(b"PK") else "n.csv")
