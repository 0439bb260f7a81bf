"""For whom a pot is: the class, a group, a student, or the teacher."""

from enum import StrEnum


class PotFor(StrEnum):
    """Whose pot it is; the teacher's is for what is spare and shown."""

    CLASS = "class"
    GROUP = "group"
    STUDENT = "student"
    TEACHER = "teacher"
