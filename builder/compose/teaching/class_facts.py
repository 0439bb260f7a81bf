"""Facts of a class that the catalogue, its page and its sheets say in the same words."""

from datetime import datetime, timedelta

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates import dates
from builder.compose.edition import Edition
from builder.compose.picture_files import Shown, picture_view
from builder.compose.recipe.wording import duration, listed, sentence, whole_minutes
from builder.compose.views.site.dates import DateView
from builder.compose.views.site.picture import PictureView
from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.teaching.class_plan import ClassPlan
from builder.words.say import say, say_count


def coming_dates(edition: Edition, studio_class: StudioClass) -> tuple[ClassDate, ...]:
    """Return the dates from today on, in order."""
    return tuple(sorted((date for date in studio_class.dates if date.on.date() >= edition.today), key=lambda date: date.on))


def by_next_date(edition: Edition) -> tuple[tuple[StudioClass, ClassPlan], ...]:
    """Return the classes in the order of their next dates, those without one last."""

    def order(entry: tuple[StudioClass, ClassPlan]) -> tuple[bool, list[datetime], str]:
        held = [date.on for date in coming_dates(edition, entry[0]) if date.takes_place]
        return (not held, held, entry[0].title.casefold())

    return tuple(sorted(edition.classes, key=order))


def view_date(edition: Edition, studio_class: StudioClass, date: ClassDate) -> DateView:
    """Return one date with its free seats, and what has become of it."""
    free = studio_class.seats - date.enrolled
    if date.cancelled is not None:
        seats, state, note = [say("cancelled")], "cancelled", sentence(date.cancelled)
    else:
        seats = [say_count("{count}\u00a0seat left", "{count}\u00a0seats left", free) if free > 0 else say("full")]
        seats += [_waiting(date.waiting)] if date.waiting else []
        state, note = "free" if free > 0 else "full", _moved(edition, date)
    day, locale = date.on.date(), edition.locale
    return DateView(
        machine=_machine(date.on),
        day=dates.long_date(day, locale),
        time=dates.clock(date.on, locale),
        seats=sentence(", ".join(seats)),
        state=state,
        note=note,
        weekday=dates.weekday(day, locale, short=True),
        short=dates.short_date(day, locale),
        hours=dates.clock_span(date.on, ends(studio_class, date), locale),
        fragment=date_fragment(date),
    )


def ends(studio_class: StudioClass, date: ClassDate) -> datetime:
    """Return the time at which a date is over."""
    return date.on + timedelta(minutes=float(studio_class.length.minutes))


def date_fragment(date: ClassDate) -> str:
    """Return the name of a date on its class page; it never changes."""
    return f"date-{date.first_set:%Y-%m-%d-%H%M}"


def _waiting(number: int) -> str:
    return say_count("{count}\u00a0on the waiting list", "{count}\u00a0on the waiting list", number)


def _machine(moment: datetime) -> str:
    return moment.isoformat(timespec="minutes")


def _moved(edition: Edition, date: ClassDate) -> str:
    """Return in words from when a date was moved; of several moves the last, which is what people still have in mind."""
    if not date.moved_from:
        return ""
    before = date.moved_from[-1]
    hour = dates.clock(before, edition.locale)
    if before.date() == date.on.date():
        return say("Moved from {time}", time=hour)
    return say("Moved from {day}, {time}", day=dates.long_date(before.date(), edition.locale), time=hour)


def picture_of(edition: Edition, studio_class: StudioClass, here: Address, shown: Shown) -> PictureView | None:
    """Return the picture of a class, as seen from a document; None where it has none."""
    if studio_class.picture is None:
        return None
    return picture_view(edition, here, picture_file(studio_class), studio_class.picture.alt, shown)


def picture_file(studio_class: StudioClass) -> str:
    """Return the path in the studio folder of the picture of a class."""
    assert studio_class.picture is not None
    return f"{addresses.class_folder(studio_class.key)}/{studio_class.picture.file}"


def youngest(studio_class: StudioClass) -> str:
    """Return in words from what age a class may be taken."""
    return ages_from(studio_class.youngest)


def ages_from(least: int) -> str:
    """Return in words from what age on something is."""
    return say_count("ages {count}\u00a0and\u00a0up", "ages {count}\u00a0and\u00a0up", least)


def length(studio_class: StudioClass) -> str:
    """Return in words how long a class is."""
    return duration(whole_minutes(studio_class.length))


def price(edition: Edition, studio_class: StudioClass) -> str:
    """Return in words what a class costs."""
    return dates.price(studio_class.price, edition.studio.profile.currency, edition.locale)


def staff(teachers: int, assistants: int) -> str:
    """Return in words who is in the room for the students."""
    people = [say_count("{count}\u00a0teacher", "{count}\u00a0teachers", teachers)] if teachers else []
    people += [say_count("{count}\u00a0assistant", "{count}\u00a0assistants", assistants)] if assistants else []
    return listed(people)
