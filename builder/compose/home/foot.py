"""What stands at the foot of each page of a take-home sheet: whom to call and, with lye, what to do first, where two lines hold both.

Decided: where the numbers to call leave no room for all of it, the foot says what is most urgent, and each caution says the rest itself.
"""

from collections.abc import Sequence

from builder.compose.teaching.lesson_flow import Foot
from builder.compose.views.caution import Call
from builder.words.say import message, say

LETTERS = 196  # So many fit in two lines of the foot.
# All that our own caution on lye says in brief, in fewer words.
OF_LYE = message(
    "Lye: brush off if dry, wet clothes off. Eyes: lids open. Running water at once, at least 20 minutes, until help takes over. "
    "Swallowed: no vomiting."
)


def foot_of_home(calls: Sequence[Call], *, with_lye: bool) -> tuple[Foot, str]:
    """Return whose first aid the foot bears, and what it says beside the numbers to call."""
    if not with_lye:
        return Foot.EMPTY, say("Local rules and the safety data sheet come first.")
    numbers = sum(len(f"{call.whose}: {call.number} · ") for call in calls)
    if numbers + len(say(OF_LYE)) <= LETTERS:
        return Foot.LYE, say(OF_LYE)
    return Foot.EMPTY, say("Skin or eyes: running water at once, at least 20 minutes. Swallowed: no vomiting.")
