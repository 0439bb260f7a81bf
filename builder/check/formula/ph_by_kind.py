"""The pH that was measured, against what the kind of product may have.

Decided: a measured pH stops from 11.5 up and from 2 down, in what stays on above 9 and below 3.5; a soap beside 8.5 to 10.5 cautions.
Why: classification law, the standard for soap; a fresh bar and paper on a wet bar read otherwise.
"""

from collections.abc import Iterator

from builder.check.figure_words import range_of
from builder.check.formula.formulas import Formulation, formulas_of
from builder.check.formula.usual_ph import usual_ph_of
from builder.check.rule import STUDIO, rule_on
from builder.model.finding import Finding, caution, stop
from builder.model.finding_kind import ACCEPTABLE_STOP, CAUTION, STOP, FindingKind
from builder.model.recipe.recipe import MeasuredPh
from builder.model.studio import Studio
from builder.rules.basis import basis_of
from builder.words.plain_number import plain_number

BURNS, OF_SOAP, FRESH = "pH that burns", "pH of soap", "pH of a fresh bar at the most"
LOWEST, HIGHEST = "lowest pH of what stays on the skin", "highest pH of what stays on the skin"
_LIKE_SOAP = (
    "Measure a soap as 1 part in 99 parts of distilled water, once it has dissolved: paper laid on a wet bar reads 8 to 9 whatever the bar "
    "is (from memory)."
)


@rule_on(
    STUDIO,
    FindingKind("ph-burns", STOP, "The measured pH burns skin and eyes."),
    FindingKind("ph-not-for-skin", STOP | ACCEPTABLE_STOP, "The measured pH is not one for what stays on the skin."),
    FindingKind("soap-ph-unusual", CAUTION, "The measured pH is not one of soap that has finished."),
)
def find_ph_out_of_place(studio: Studio) -> Iterator[Finding]:
    """Judge what each recipe states; the worst that can be said of it is said alone."""
    for formula in formulas_of(studio):
        ph = formula.recipe.ph
        if ph is not None:
            found = _burns(formula, ph, studio) or _not_for_skin(formula, ph, studio) or _unusual_soap(formula, ph, studio)
            yield from [found] if found else []


def _burns(formula: Formulation, ph: MeasuredPh, studio: Studio) -> Finding | None:
    figure = studio.constants[BURNS]
    if figure.low < ph.low and ph.high < figure.highest:
        return None
    low, high = plain_number(figure.low), plain_number(figure.highest)
    wrong = f"{_measured(formula, ph)} A pH of {low} or less, or of {high} or more, burns skin and eyes ({basis_of(figure)})."
    if formula.with_lye:
        wrong += " There is lye left in this soap, and no curing takes it away."
        remedy = f"Give none of it away. {_LIKE_SOAP} If it stays so, look for what was weighed wrongly, and throw the batch away."
    else:
        remedy = "Give none of it away. Measure again with fresh strips or a calibrated meter, and change the recipe until it is mild."
    return stop("ph-burns", formula.recipe.at("pH"), wrong, remedy)


def _not_for_skin(formula: Formulation, ph: MeasuredPh, studio: Studio) -> Finding | None:
    low, high = studio.constants[LOWEST], studio.constants[HIGHEST]
    if not formula.stays_on or formula.with_lye:
        return None
    place, begin = formula.recipe.at("pH"), f"{_measured(formula, ph)} It stays on the skin"
    if ph.high > high.typical:
        wrong = f"{begin}, and above {plain_number(high.typical)} that dries and burns ({basis_of(high)})."
        remedy = f"Bring it down with a little citric or lactic acid, and measure again. {_usual(formula, studio)}"
        return stop("ph-not-for-skin", place, wrong, remedy.rstrip())
    if ph.low < low.typical:
        wrong = f"{begin}, and below {plain_number(low.typical)} acid peels and burns ({basis_of(low)})."
        remedy = "Raise it with a mild alkali, a little at a time, and measure again; or accept this with the data that show it is safe."
        return stop("ph-not-for-skin", place, wrong, f"{remedy} {_usual(formula, studio)}".rstrip(), acceptable=True)
    return None


def _unusual_soap(formula: Formulation, ph: MeasuredPh, studio: Studio) -> Finding | None:
    figure = studio.constants[OF_SOAP]
    if not formula.with_lye or (figure.low <= ph.low and ph.high <= figure.highest):
        return None
    wrong = f"{_measured(formula, ph)} Soap has pH {range_of(figure, '')} ({basis_of(figure)})."
    if ph.high > figure.highest:
        fresh = plain_number(studio.constants[FRESH].typical)
        wrong += f" What is above may hold free lye; a bar of a day or two can have {fresh}, and a cured one should not (from memory)."
        remedy = f"Give none of it away before it is cured and measured again, or its free alkali titrated. {_LIKE_SOAP}"
    else:
        wrong += " What is below is no longer all soap: an acid has set fatty acid free, or it was measured on the bar itself."
        remedy = _LIKE_SOAP
    return caution("soap-ph-unusual", formula.recipe.at("pH"), wrong, remedy)


def _measured(formula: Formulation, ph: MeasuredPh) -> str:
    low, high = plain_number(ph.low), plain_number(ph.high)
    return f"{formula.recipe.name} was measured at pH {low if low == high else f'{low} to {high}'}."


def _usual(formula: Formulation, studio: Studio) -> str:
    if (found := usual_ph_of(formula, studio)) is None:
        return ""
    such, usual = found
    return f"{'An' if such[0] in 'aeiou' else 'A'} {such} usually has pH {range_of(usual, '')} ({basis_of(usual)})."
