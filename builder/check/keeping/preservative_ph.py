"""The pH of a product with water against the window in which its preservative works."""

from collections.abc import Iterator
from fractions import Fraction

from builder.check.figure_words import DEFER, range_of
from builder.check.formula.formulas import FormulaPart, Formulation, formulas_of
from builder.check.formula.usual_ph import usual_ph_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, FindingKind
from builder.model.recipe.figure import Figure
from builder.model.recipe.ingredient import WATERY
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.plain_number import plain_number

_WHY = "Outside of its window a preservative does little, however much there is, and the product spoils unseen."


@rule_on(
    STUDIO,
    FindingKind(
        "ph-outside-preservative", ACCEPTABLE_STOP | CAUTION, "The measured pH lies outside the window in which the preservative works."
    ),
    FindingKind("ph-not-measured", CAUTION, "The preservative works only in a window of pH, and nobody has measured that of the product."),
)
def find_preservatives_out_of_their_ph(studio: Studio) -> Iterator[Finding]:
    """Compare the pH that was measured, or else the pH that such a product usually has, with the window of each preservative."""
    for formula in formulas_of(studio):
        windows = [(part, part.card.figure("pH window")) for part in formula.of_kind("preservative")]
        known = [(part, window) for part, window in windows if window]
        if formula.first(*WATERY) is None and not formula.with_lye:
            continue
        none_works = bool(known) and not any(_measured(formula, window) for _, window in known) and len(known) == len(windows)
        for part, window in known:
            if formula.recipe.ph:
                if not _measured(formula, window):
                    yield _outside(formula, part, window, none_works=none_works)
            elif usual := usual_ph_of(formula, studio):
                yield from _by_what_is_usual(formula, part, window, *usual)


def _measured(formula: Formulation, window: Figure) -> bool:
    ph = formula.recipe.ph
    return ph is not None and window.low <= ph.low and ph.high <= window.highest


def _outside(formula: Formulation, part: FormulaPart, window: Figure, *, none_works: bool) -> Finding:
    assert formula.recipe.ph is not None
    wrong = (
        f"{part.card.name} works at {_window(window)}, and {formula.recipe.name} was measured at pH "
        f"{_ends(formula.recipe.ph.low, formula.recipe.ph.high)}. {_WHY}"
    )
    remedy = (
        "Bring the pH into the window, a drop of acid or of a mild alkali at a time, and measure again a day later; or choose a "
        f"preservative that works where the product is. {DEFER}"
    )
    place = formula.recipe.at("pH")
    if none_works and formula.stays_on:
        return stop("ph-outside-preservative", place, wrong, remedy, acceptable=True)
    return caution("ph-outside-preservative", place, wrong, remedy)


def _by_what_is_usual(formula: Formulation, part: FormulaPart, window: Figure, such_a: str, usual: Figure) -> Iterator[Finding]:
    low, high = usual.low, usual.highest
    such = f"{such_a} usually has pH {_ends(low, high)} ({basis_of(usual)})"
    if high < window.low or window.highest < low:
        yield caution(
            "ph-outside-preservative",
            part.place,
            f"{part.card.name} works at {_window(window)}, and {such}. {_WHY}",
            "Choose a preservative that works at that pH, or measure and write what you found, as in "
            f'`pH: {{low: 4.8, high: 5.2, measured: "strip, 2026-11"}}`. {DEFER}',
        )
    elif low < window.low or window.highest < high:
        yield caution(
            "ph-not-measured",
            part.place,
            f"{part.card.name} works at {_window(window)}, {such}, and it is not said what {formula.recipe.name} has. {_WHY}",
            "Measure the finished product with a strip or a meter (a soap as 1 part in 99 parts of distilled water), adjust it where it "
            "lies "
            f'outside, and write what you found, as in `pH: {{low: 4.8, high: 5.2, measured: "strip, 2026-11"}}`. {DEFER}',
        )


def _window(window: Figure) -> str:
    return f"pH {range_of(window, '')} ({basis_of(window)})"


def _ends(low: Fraction, high: Fraction) -> str:
    return plain_number(low) if low == high else f"{plain_number(low)} to {plain_number(high)}"
