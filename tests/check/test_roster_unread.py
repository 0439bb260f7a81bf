"""A cell of a workbook that cannot be read is told as that where it stands in the column of a choice."""

from dataclasses import replace

from builder.check.roster.roster_choices import find_roster_choices_unknown
from builder.model.place import NOWHERE
from builder.model.roster.roster import UnreadCell
from tests.making import told
from tests.reckon.test_guests import LOTION, STUDIO, people


# A formula without a result, or an error of the spreadsheet, was chosen by nobody: the cell and what to do are named, no option is guessed.
def test_a_cell_of_a_choice_that_cannot_be_read_is_told_as_that() -> None:
    roster = people(["scent"], [("",), ("no scent",)])
    unread = replace(roster.rows[0], choices={"scent": UnreadCell("", NOWHERE, "E3: #REF! is an error of the spreadsheet: correct it")})
    roster = replace(roster, rows=(unread, *roster.rows[1:]))
    (found,) = told(find_roster_choices_unknown(replace(STUDIO, rosters={LOTION.key: roster})))
    assert found.name == "roster-option-unknown" and "offers no" not in found.wrong
    assert found.wrong == "What scent this person has chosen cannot be read: E3: #REF! is an error of the spreadsheet: correct it."
    assert "no scent" in found.remedy and "Did you mean" not in found.remedy
