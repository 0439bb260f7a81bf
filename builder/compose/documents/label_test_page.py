"""Pages that show how far a printer is off: what to do, then for each label sheet its outlines, and rulers from the edges of the paper.

Decided: the words have a page of their own. Why: beside each other they hid the outlines of six labels, which are what is compared.
"""

from builder.compose.addresses import Address
from builder.compose.document_kind import Composed
from builder.compose.edition import Edition
from builder.compose.frames import sheet_frame
from builder.compose.label.label_texts import Paragraph, Run
from builder.compose.label_layout.label_layout import LaidOut, box_of
from builder.compose.label_layout.label_lines import Block, Setter
from builder.compose.label_layout.label_pages import labels_view, place, position_of, shift_of
from builder.compose.label_layout.label_sheets import known_sheets
from builder.compose.recipe.wording import number
from builder.compose.scopes import LABELS
from builder.compose.views.labels import LabelsView, MarkView, PositionView
from builder.model.label.label_sheet import LabelSheet
from builder.model.studio import Studio
from builder.words.fold import fold
from builder.words.listed import listed
from builder.words.say import say, say_count

# All in millimetres: rulers of 100 mm whose zero lies on the edge of the paper, and where they lie.
LONG, ACROSS_AT, DOWN_AT = 100, 130.0, 40.0
HAIR = 0.1
TEXT_AT, TEXT_WIDE, WORDS, POINTS = (25.0, 25.0), 150.0, 12.0, 9.0


def compose_test_page(edition: Edition, studio: Studio, _: Address) -> Composed | None:
    """Make a test page of each label sheet that is asked for or used, or of the first one of its paper; none where no class is published.

    Plain paper that is cut along printed marks needs none of its own.
    """
    used = (sheet for one in LABELS.all(edition) for label in one.labels[:1] for sheet in _sheets_of(label.laid_out) if not sheet.is_cut)
    sheets = list({sheet.name: sheet for sheet in (*_asked_for(studio), *used)}.values()) or list(known_sheets(studio))[:1]
    if not sheets or not edition.plans:
        return None
    names = listed([f'"{sheet.name}"' for sheet in sheets])
    title = say_count("Test page for the label sheet {sheet}", "Test pages for the label sheets {sheet}", len(sheets), sheet=names)
    pages: list[tuple[PositionView, ...]] = [(_instructions(edition),)]
    for sheet in sheets:
        outlines = labels_view(edition, title, sheet, [PositionView(art="outline")] * sheet.positions)
        pages.append((*outlines.pages[0], _rulers(edition), _name(edition, sheet)))
    return Composed(LabelsView(sheet_frame(edition, title, title), title, tuple(pages)))


def _asked_for(studio: Studio) -> list[LabelSheet]:
    """Return the sheets that the studio and its classes ask for, each once."""
    wishes = (studio.profile.labels, *(a_class.labels for a_class in studio.classes.values()))
    found = (studio.label_sheets.get(fold(one.sheet)) for one in wishes if one.sheet)
    return list({sheet.name: sheet for sheet in found if sheet and sheet.paper == studio.profile.paper}.values())


def _sheets_of(laid: LaidOut) -> tuple[LabelSheet, ...]:
    return (laid.sheet, laid.back.sheet) if laid.back else (laid.sheet,)


def _instructions(edition: Edition) -> PositionView:
    """Return a page without outlines that says what to do with those that follow."""
    right, down = shift_of(edition.studio.profile.labels)
    return position_of(
        Setter(edition.studio.typefaces).stack([(line, WORDS) for line in _words(right, down)], *TEXT_AT, TEXT_WIDE, 2.0) or ()
    )


def _name(edition: Edition, sheet: LabelSheet) -> PositionView:
    """Name a sheet in its last label, where neither a ruler nor an outline is crossed."""
    box, (x, y) = box_of(sheet, 3.0), sheet.position(sheet.positions - 1)
    right, down = shift_of(edition.studio.profile.labels)
    setter = Setter(edition.studio.typefaces)
    at = x + right + box.x, y + down + box.y
    return position_of(setter.stack([((Run(_sheet(sheet), bold=True),), POINTS)], *at, box.width, 0, at[1] + box.height) or ())


def _rulers(edition: Edition) -> PositionView:
    """Draw the rulers, moved like the labels."""
    right, down = shift_of(edition.studio.profile.labels)
    marks = [MarkView("tick", place(right, ACROSS_AT + down, LONG, HAIR)), MarkView("tick", place(DOWN_AT + right, down, HAIR, LONG))]
    for at in range(5, LONG + 1):
        long = 6 if at % 10 == 0 else 4 if at % 5 == 0 else 2
        marks.append(MarkView("tick", place(at + right - HAIR / 2, ACROSS_AT + down - long, HAIR, long)))
        marks.append(MarkView("tick", place(DOWN_AT + right - long, at + down - HAIR / 2, long, HAIR)))
    setter = Setter(edition.studio.typefaces)
    blocks: list[Block] = []
    for at in range(10, LONG + 1, 10):
        figure: Paragraph = (Run(str(at)),)
        blocks += setter.stack([(figure, 7)], at + right - 1.5, ACROSS_AT + down + 0.6, 8.0, 0) or ()
        blocks += setter.stack([(figure, 7)], DOWN_AT + right + 0.8, at + down - 1.4, 8.0, 0) or ()
    return position_of(blocks, marks=tuple(marks))


def _words(right: float, down: float) -> tuple[Paragraph, ...]:
    return (
        (Run(say("1. Print the pages that follow at their actual size (100 %) on plain paper.")),),
        (Run(say("2. Lay a real ruler with its zero on the edge of the paper. Where each printed ruler says 50, read yours.")),),
        (Run(say("3. If yours reads 51 along the top, print 1 mm further left: add -1 mm to what right says. So with down at the side.")),),
        (Run(say("4. If 50 printed millimetres are not 50 mm long, the printer has scaled the page: look for its setting.")),),
        (Run(say("5. Hold the page with a sheet of labels against the light: the outlines lie on the cuts.")),),
        (
            Run(
                say(
                    "These pages were moved by right: {right} mm, down: {down} mm (studio.yaml, under labels).",
                    right=f"{right:g}",
                    down=f"{down:g}",
                )
            ),
        ),
    )


def _sheet(sheet: LabelSheet) -> str:
    width, height = (number(side.millimetres, 1) for side in (sheet.width, sheet.height))
    return say("Sheet {sheet}: labels of {width} mm by {height} mm.", sheet=sheet.name, width=width, height=height)
