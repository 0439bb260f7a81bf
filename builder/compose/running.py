"""What the teacher's sheet says of running the class: why this format, who watches whom, the plan of the room, who weighs what."""

from builder.compose.format_words import advice_line, how_it_is_made, taken_home
from builder.compose.seating import view_seating
from builder.compose.supervision_words import POLICY, ahead_lines, carried_words, rule_rows, watch_rows
from builder.compose.time_words import FORMATS, format_sentence
from builder.compose.views.running import FormatView, RunningView
from builder.compose.weighing_words import weighing_rows
from builder.model.class_sheet import ClassSheet
from builder.model.studio import Studio


def view_format(studio: Studio, sheet: ClassSheet) -> FormatView:
    """Give the format with its sentences and the advice on it."""
    return FormatView(
        name=FORMATS[sheet.format],
        sentences=tuple(text for text in (*how_it_is_made(studio, sheet), taken_home(sheet), format_sentence(sheet)) if text),
        speaks_for=tuple(map(advice_line, sheet.teaching.speaks_for)),
        speaks_against=tuple(map(advice_line, sheet.teaching.speaks_against)),
    )


def view_running(studio: Studio, sheet: ClassSheet) -> RunningView:
    """Give everything on running a class."""
    return RunningView(
        taught=view_format(studio, sheet),
        watch=watch_rows(sheet),
        carried=carried_words(sheet),
        rules=rule_rows(sheet),
        ahead_lines=ahead_lines(sheet),
        policy=POLICY,
        seating=view_seating(sheet),
        cups=weighing_rows(sheet),
    )
