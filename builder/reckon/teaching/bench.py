"""A bench from part to part: which hazards a part brings by its words, and which an earlier part has left there.

Lye that has been mixed stays raw soap in all later parts, unless a heading says `no raw soap`, or fats are still being weighed and nothing
has yet said that lye met them. What is hot stays hot until a wait or a day is over or a part begins `cooled`; where lye is weighed, the
pot stands elsewhere. Scent oil that stands weighed in a cup is neat until a step stirs it in by name.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from builder.model.hazard import Hazard
from builder.model.recipe.column import Role
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.lesson import CautionHere, Part, Who
from builder.reckon.teaching.handling import handled_in, hazards_in, lye_said
from builder.rules.hands.done import is_done
from builder.rules.hazard import HEAT, heat_left
from builder.rules.lye_words import hazards_said

LYE = (Hazard.CAUSTIC, Hazard.DRY_LYE, Hazard.RAW_SOAP)
_SCENT = r"\b(?:(?:essential|fragrance|flavou?r|perfume) oils?|{})\b"


@dataclass
class Bench:
    """A bench: whether lye was mixed and met fat, what is hot, which scents were weighed, the day, a wait.

    `lye_stands`: lye that was mixed is no raw soap until something says that it met fat, since it stands marked and covered till then.
    """

    studio: Studio
    batch: WorkedBatch
    lye: bool = False
    soap: bool = False
    hot: tuple[str, ...] = ()
    scents: tuple[str, ...] = ()
    day: int = 0
    cooling: bool = False
    lye_stands: bool = False

    def work(self, part: Part, *, is_cold: bool) -> tuple[str, ...]:
        """Return what a part brings by its words and by what is there already, and remember what it leaves."""
        self._cool(part)
        if not is_done(part):
            return ()
        said = self._said(part)
        named = hazards_in(self.studio, part, self.batch)
        raw = self._is_raw(part)
        left = [Hazard.RAW_SOAP] if raw else []
        if not self._weighs(part, Role.ALKALI):
            left += heat_left(self.hot, is_soap=raw or Hazard.RAW_SOAP in (*said, *named))
        self.lye = self.lye or any(hazard in LYE for hazard in (*said, *named))
        self.soap = self.soap or self._makes_soap(part, said)
        self.hot = tuple(hazard for hazard in HEAT if hazard in self.hot or (hazard in named and not is_cold))
        return tuple(dict.fromkeys((*said, *left, *self._scents(part))))

    def _scents(self, part: Part) -> tuple[str, ...]:
        """Return the hazard of scent oil that was weighed in an earlier part, where a step speaks of it by its name."""
        names = "|".join(map(re.escape, self.scents))
        words = re.compile(_SCENT.format(names), re.IGNORECASE) if names else None
        spoken = words is not None and any(words.search(one.words) for step in part.steps for one in step.sentences)
        cards = [w.line.ingredient for w in handled_in(self.studio, part, self.batch).weighed]
        self.scents += tuple(f"{card.name.split()[0]} oil" for card in cards if Hazard.NEAT_ESSENTIAL_OIL in card.hazards)
        return (Hazard.NEAT_ESSENTIAL_OIL,) if spoken else ()

    def _cool(self, part: Part) -> None:
        day = part.days_later - part.days_before
        if (self.cooling and not part.in_the_wait) or part.cooled or day != self.day:
            self.hot, self.cooling = (), False
        self.day, self.cooling = day, self.cooling or part.who is Who.WAITING

    def _said(self, part: Part) -> tuple[str, ...]:
        """Return what the words of a part bring of lye and raw soap."""
        lye = [Hazard.CAUSTIC] if Hazard.CAUSTIC in lye_said(self.studio, part, self.batch) else []
        raw = self.batch.recipe.lye is not None and Hazard.RAW_SOAP in hazards_said(part, self.studio.lye_words)
        return (*lye, *([Hazard.RAW_SOAP] if raw else []))

    def _is_raw(self, part: Part) -> bool:
        weighs_fat = not self.soap and self._weighs(part, Role.OIL)
        lye = self.soap if self.lye_stands else self.lye
        return self.batch.recipe.lye is not None and lye and not part.no_raw_soap and not weighs_fat

    def _makes_soap(self, part: Part, said: Sequence[str]) -> bool:
        """Tell whether lye is in the fat once a part is over: it speaks of raw soap, or of lye that it neither weighs nor dissolves."""
        placed = (self.studio.cautions.get(block.name.text) for block in part.blocks if isinstance(block, CautionHere))
        raw = Hazard.RAW_SOAP in said or any(one is not None and one.hazard == Hazard.RAW_SOAP for one in placed)
        dissolves = Hazard.DRY_LYE in hazards_said(part, self.studio.lye_words) or self._weighs(part, Role.ALKALI)
        return raw or (Hazard.CAUSTIC in said and not dissolves)

    def _weighs(self, part: Part, role: Role) -> bool:
        return any(w.line.role is role for w in handled_in(self.studio, part, self.batch).weighed)
