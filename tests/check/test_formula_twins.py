"""The passing twin of each rule on formulas: the failing studio of `findings/`, mended as its finding says, is silent.

Each row names a folder of `findings/` and the texts of its recipe (or class) that are exchanged.
"""

import re
from pathlib import Path

import pytest

from tests.test_findings import FINDINGS, check, lay_out

CHECK = Path(__file__).parent.parent.parent / "builder" / "check"
MODULES = [
    next(CHECK.rglob(f"{name}.py"))
    for name in (
        "acid_left_over", "acids_on_skin", "alkali_on_skin", "keeping", "ph_by_kind",
        "base_overloaded", "charges_opposed", "dust_unsaid", "emulsion", "fire_unsaid", "fizz_and_water", "free_from", "heat",
        "label_unsaid", "oil_on_bath", "phototoxic", "plants", "preservative_amount", "preservative_fit", "preservative_ph",
        "soap_additions", "too_rough",
    )
]  # fmt: skip
PH = 'measured: "meter, 1 December 2026"}'
BLEND = "phenoxyethanol and ethylhexylglycerin blend"
TWINS = {
    "preservative-too-little": {"blend: 0.3 %": "blend: 0.6 %"},
    "preservative-over-usual": {"winter blend: 0.9 %": "winter blend: 0.6 %"},
    "ph-outside-preservative": {"low: 6.4, high: 6.8": "low: 4.6, high: 4.9"},
    "ph-not-measured": {"fills:": f"pH: {{low: 4.8, high: 5.2, {PH}\nfills:"},
    "ph-not-on-the-scale": {"low: 48, high: 52": "low: 4.8, high: 5.2"},
    "preservation-in-part": {"potassium sorbate: 0.4 %": "potassium sorbate: 0.4 %\n      sodium benzoate: 0.4 %"},
    "preservative-inactivated": {"behentrimonium methosulfate blend": "emulsifying wax"},
    "preservative-without-water": {f"      {BLEND}: 0.9 %\n": "", "coconut oil: 78.5 %": "coconut oil: 79.4 %"},
    "preservative-unknown": {"      winter blend: 0.9 %\n": ""},
    "no-preservative--seed-extract": {"grapefruit seed extract": BLEND},
    "no-preservative--card-without-figures": {"our preservative": BLEND},
    "fresh-food-in-product": {"      banana puree: 20 %\n": ""},
    "fresh-food-in-product--milk": {"goat milk": "glycerin", "      glycerin: 3 %\n": ""},
    "keeps-unsupported": {"keeps: 24 months": "keeps: 3 months"},
    "keeps-unsupported--single-use": {"keeps: 3 months\n": ""},
    "single-use-unsaid": {"single use: yes": "single use: yes\ndirections: Use it at once."},
    "alkali-on-skin": {"bicarbonate: 4 %": "bicarbonate: 0.9 %"},
    "ph-burns": {"low: 11.8, high: 12.1": "low: 9.4, high: 9.8"},
    "ph-burns--no-soap": {"low: 1.8, high: 2": "low: 5, high: 5.4"},
    "ph-not-for-skin": {"low: 9, high: 9.3": "low: 5, high: 5.4"},
    "ph-not-for-skin--sour": {"low: 3.1, high: 3.4": "low: 3.6, high: 4"},
    "soap-ph-unusual": {"high: 10.9": "high: 10.5"},
    "soap-ph-unusual--low": {"low: 8, high: 8.3": "low: 9, high: 9.3"},
    "no-preservative--syrup": {"coconut oil: 76.2 %": "coconut oil: 79.2 %", "      honey: 3 %\n": ""},
    "no-antioxidant--in-water": {"keeps: 6 months": "keeps: 3 months"},
    "water-gets-in": {"white sugar: 70 %": f"white sugar: 69.1 %\n      {BLEND}: 0.9 %"},
    "emulsifier-missing": {"shea butter: 6 %": "emulsifying wax: 6 %"},
    "emulsifier-too-little": {"emulsifying wax: 3 %": "emulsifying wax: 7 %", "      glycerin: 4 %\n": ""},
    "hlb-far-off": {"polysorbate 80: 5 %": "polysorbate 80: 2 %", "sorbitan oleate: 1 %": "sorbitan oleate: 4 %"},
    "emulsifier-missing--beeswax-alone": {"water: rest": "water: rest, triethanolamine: 0.6 %"},
    "emulsifier-too-little--wool-fat": {"lanolin: 10 %, olive oil: 39 %": "lanolin: 30 %, olive oil: 19 %"},
    "emulsifier-too-little--borax": {"borax: 0.6 %": "triethanolamine: 1.2 %"},
    "alkali-left-over": {"borax: 2 %": "triethanolamine: 0.6 %"},
    "hlb-far-off--water-in-oil": {"sunflower oil: 14 %": "sunflower oil: 44 %, vitamin E: 0.6 %"},
    "too-rough": {"walnut shell powder: 10 %": "jojoba beads: 10 %"},
    "dust-unsaid": {"fills:": "label cautions: [Do not breathe the powder in.]\nfills:"},
    "fire-unsaid": {"fills:": "label cautions: [Flammable.]\nfills:"},
    "charges-opposed": {"xanthan gum": "hydroxyethylcellulose"},
    "fizz-and-water": {"cornstarch: 8 %": "cornstarch: 10 %", "      witch hazel: 2 %\n": ""},
    "acid-left-over": {"bicarbonate: 45 %": "bicarbonate: 55 %", "citric acid: 45 %": "citric acid: 35 %"},
    "oil-floats-on-bath": {"epsom salt: 90 %": "epsom salt: 86 %\n      polysorbate 80: 4 %"},
    "oil-floats-on-bath--scent": {"epsom salt: 60 %": "epsom salt: 57 %\n      polysorbate 20: 3 %"},
    "slippery-unsaid": {"fills:": "label cautions: [The floor can be slippery.]\nfills:"},
    "directions-missing": {"fills:": "directions: Pour a capful under running water.\nfills:"},
    "stain-unsaid": {"fills:": "label cautions: [Rinse the tub after use.]\nfills:"},
    "food-look-alike": {"[Makes": "[Not to be eaten., Makes"},
    "spoils-in-water": {"      honey: 3 %\n": ""},
    "plants-in-drain": {"fills:": "directions: Hang it in a bag under the tap.\nfills:"},
    "plants-in-oil": {"coconut oil: 77 %": "coconut oil: 79 %", "      calendula petals: 2 %\n": ""},
    "added-too-hot": {
        "      cedarwood essential oil: 0.6 %\n": "",
        "blend: 0.9 %\n": "blend: 0.9 %\n      cedarwood essential oil: 0.6 %\n",
    },
    "heated-to-flash-point": {"      sweet orange essential oil: 1 %\n": "", "coconut oil: 78 %": "coconut oil: 79 %"},
    "heated-too-far": {"120 degC": "75 degC"},
    "heated-too-far--base": {"80 degC": "65 degC"},
    "not-melted": {"55 degC": "75 degC"},
    "not-melted--soap": {"stearic acid": "shea butter"},
    "heated-to-flash-point--choice": {"sweet orange": "lavender"},
    "not-free-from": {"      shea butter: 4 %\n": ""},
    "not-free-from--class": {"      vitamin E: 0.6 %\n": ""},
    "free-from-open": {"fragrance oil": "lavender essential oil"},
    "too-much-in-soap": {"table salt: 12 %": "table salt: 3 %"},
    "beer-in-lye": {"liquid: {water: 50 %, beer: 50 %}": "later: {beer: 15 %}"},
    "milk-in-lye": {"liquid: {water: 50 %, goat milk: 50 %}": "later: {goat milk: 15 %}"},
    "speeds-trace": {"clove bud essential oil": "lavender essential oil"},
    "base-overloaded": {"clear base: 94 %": "clear base: 98 %", "shea butter: 6 %": "shea butter: 2 %"},
    "base-overloaded--choice": {"at most: 2 %": "at most: 0.9 %"},
    "too-much-in-soap--choice": {"at most: 6 %": "at most: 3 %"},
    "acid-too-sour": {"low: 3.1, high: 3.2": "low: 3.6, high: 3.8"},
    "acid-ph-open": {"fills:": f"pH: {{low: 3.8, high: 4, {PH}\nfills:"},
    "sun-caution-missing": {"fills:": "label cautions: [Use a sunscreen while you use this and for a week afterwards.]\nfills:"},
    "phototoxic-unlimited": {"clementine oil": "juniper berry essential oil"},
    "over-usual-limit--together": {"bergamot essential oil": "lavender essential oil"},
    "scent-over-usual--children": {"youngest user: 6": "youngest user: 13"},
    "scent-over-usual--small-children": {"youngest user: 2": "youngest user: 13"},
    "scent-over-usual--wash": {"lavender essential oil: 5 %": "lavender essential oil: 2 %", "sunflower oil: 24 %": "sunflower oil: 27 %"},
    "option-not-offered--small-children": {"youngest user: 2": "youngest user: 13"},
    "over-usual-limit--face": {"used on: [face]": "used on: [body]", "accepts: {scent-over-usual: Not the point of this case.}\n": ""},
    "over-legal-limit--aluminium": {"kaolin clay: 10 %": "kaolin clay: 4 %", "white sugar: 60 %": "white sugar: 66 %"},
}


@pytest.mark.parametrize("case", TWINS)
def test_the_mended_twin_is_silent(case: str, tmp_path: Path) -> None:
    studio = tmp_path / "studio"
    lay_out(FINDINGS / case, studio)
    recipe = next((FINDINGS / case / "recipes").iterdir()).name
    path = studio / "recipes" / recipe
    text = path.read_text(encoding="utf-8")
    for old, new in TWINS[case].items():
        assert old in text
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    assert check(studio)[2] == ""


def test_every_rule_on_formulas_has_a_twin() -> None:
    names = {case.split("--")[0] for case in TWINS}
    of_modules = {name for module in MODULES for name in re.findall(r'"([a-z]+(?:-[a-z]+)+)",$', module.read_text(encoding="utf-8"), re.M)}
    assert {name for name in of_modules if (FINDINGS / name).is_dir()} <= names
