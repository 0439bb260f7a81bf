"""Lye solutions that staff make before the students meet them: what is stirred into what, how often, and into which bottles it goes."""

from dataclasses import dataclass
from fractions import Fraction

from builder.model.recipe.quantity import Mass, sum_masses
from builder.model.studio import Scale
from builder.model.teaching.lesson import Part
from builder.model.teaching.pot_for import PotFor


@dataclass(frozen=True)
class Bottles:
    """Marked bottles of one solution, one for each pot of a planned batch (`purpose`); each pot takes the weight `each`."""

    purpose: PotFor
    number: int
    each: Mass


@dataclass(frozen=True)
class LyeSolution:
    """One solution of alkali: `alkalis` are stirred into `liquids`, each a weight by name for one mixing, which is done `times` times.

    `ready_mixed`: it has the strength that the recipe states (hydroxide by weight), one mixing is for all pots, and it holds some more
    than they take. `bought`: it comes at that strength, `alkalis` and `liquids` are what is in it, and nobody mixes it. Else each mixing is
    for one pot and is poured whole; its strength is the weight of the alkali in that of the solution.
    `scale` is the one that holds a ready-mixed solution, and weighs all that it is made of.
    `part` is the part of the lesson in which it is made, where one names it; `ahead`: before the students come.
    """

    recipe: str
    alkalis: tuple[tuple[str, Mass], ...]
    liquids: tuple[tuple[str, Mass], ...]
    strength: Fraction
    times: int
    bottles: tuple[Bottles, ...]
    ready_mixed: bool
    bought: bool = False
    scale: Scale | None = None
    ahead: bool = True
    part: Part | None = None

    @property
    def mixed_on(self) -> Scale | None:
        """Return the scale on which staff mix it once for all pots; None where they do not."""
        return self.scale if self.ready_mixed and not self.bought else None

    @property
    def solution(self) -> Mass:
        """Return the weight of one mixing."""
        return sum_masses(mass for _, mass in (*self.alkalis, *self.liquids))

    @property
    def alkali(self) -> Mass:
        """Return the weight of the alkali as bought in one mixing."""
        return sum_masses(mass for _, mass in self.alkalis)
