"""What the staff do before the class and after it, each with its day or its time."""

from datetime import datetime, timedelta

from builder.compose.dates.dates import long_date
from builder.compose.dates.time_words import clock_from
from builder.compose.recipe.wording import short_duration, whole_minutes
from builder.compose.views.running import StaffRow
from builder.model.teaching.class_plan import ClassPlan
from builder.model.teaching.lesson import Part
from builder.model.teaching.timed_part import StaffPart
from builder.words.say import say, say_count


def ahead_rows(plan: ClassPlan, locale: str) -> tuple[StaffRow, ...]:
    """Return what is done ahead: on which day, or at which time so that all of it ends when the class begins."""
    return tuple(staff_row(plan, one, locale) for one in plan.ahead)


def after_rows(plan: ClassPlan, locale: str) -> tuple[StaffRow, ...]:
    """Return what the staff do after the class: from its end on, or on which day."""
    return tuple(staff_row(plan, one, locale) for one in plan.after)


def staff_row(plan: ClassPlan, one: StaffPart, locale: str) -> StaffRow:
    """Return what one part is and how long it takes, with its day or its time."""
    return StaffRow(when_done(plan, one, locale), one.part.title, short_duration(one.part.minutes))


def days_later(part: Part) -> str:
    """Return in words how many days after the class a part is done; nothing on the day itself."""
    return say_count("{count}\u00a0day later", "{count}\u00a0days later", part.days_later) if part.days_later else ""


def _days_before(part: Part) -> str:
    return say_count("{count}\u00a0day before", "{count}\u00a0days before", part.days_before)


def when_done(plan: ClassPlan, one: StaffPart, locale: str) -> str:
    """Return in words the day on which staff do a part, or the time."""
    start: datetime | None = plan.date.on if plan.date else None
    if one.begins is None:
        days = days_later(one.part) or _days_before(one.part)
        if start is None:
            return days
        return f"{days}, {long_date((start + timedelta(days=one.part.days_later - one.part.days_before)).date(), locale)}"
    if start is None:
        ends = whole_minutes(plan.studio_class.length)
        return _from_the_end(one.begins - ends) if one.begins >= ends else say("{time} before the class", time=short_duration(-one.begins))
    at = start + timedelta(minutes=one.begins)
    day = "" if at.date() == start.date() else f"{long_date(at.date(), locale)}, "
    return f"{day}{clock_from(start, locale)(one.begins)}"


def _from_the_end(minutes: int) -> str:
    return say("{time} after the class", time=short_duration(minutes)) if minutes else say("when the class has ended")
