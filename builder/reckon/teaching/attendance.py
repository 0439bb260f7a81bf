"""Who comes on a date, and the groups in which they work."""

from dataclasses import dataclass
from math import ceil

from builder.model.dates.studio_class import ClassDate, StudioClass
from builder.model.roster.roster import Guest
from builder.model.studio import Studio
from builder.reckon.roster.guests import reckon_guests


@dataclass(frozen=True)
class Attendance:
    """The students of a date, or a full class where `date` is None; `group_sizes` are the people of each group, the last may be smaller.

    `guests` are those on the roster, in its order.
    """

    date: ClassDate | None
    students: int
    group_sizes: tuple[int, ...]
    last_group: int
    guests: tuple[Guest, ...]

    @property
    def groups(self) -> int:
        """Return how many groups there are."""
        return len(self.group_sizes)


def reckon_attendance(studio: Studio, studio_class: StudioClass, date: ClassDate | None) -> Attendance:
    """Return who comes: those enrolled, in as few groups as hold them."""
    students, size = date.enrolled if date else studio_class.seats, studio_class.group_size
    groups = ceil(students / size)
    last = students - (groups - 1) * size
    sizes = (*[size] * (groups - 1), last) if groups else ()
    return Attendance(date, students, sizes, last, reckon_guests(studio, studio_class, date))
