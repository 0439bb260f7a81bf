"""Molar masses and densities of the library against general reference libraries: molmass for masses, chemicals for densities.

molmass adds up the standard atomic weights of a formula. chemicals holds the IAPWS-95 equation of state of water, and the correlation of
Perry's handbook (8th edition, table 2-32) for ethanol. Which formula a substance has is a fact of chemistry, and stands here.
"""

import pytest
from chemicals import iapws95_rho, iapws95_Tsat, volume
from chemicals.dippr import EQ105
from molmass import Formula

from builder.read.values.bounds import FIGURES
from tests.content.test_library import BY_NAME, STUDIO
from tests.making import sure

FORMULAS = {
    "Ascorbic acid": "C6H8O6",
    "Borax": "Na2B4O7(H2O)10",
    "Citric acid": "C6H8O7",
    "Citric acid monohydrate": "C6H8O7",  # The card counts the acid in its crystals, of which a part is water.
    "Cream of tartar": "KC4H5O6",
    "Epsom salt": "MgSO4(H2O)7",
    "Glycerin": "C3H8O3",
    "Lactic acid": "C3H6O3",
    "Malic acid": "C4H6O5",
    "Potassium hydroxide": "KOH",
    "Sea salt": "NaCl",
    "Sodium bicarbonate": "NaHCO3",
    "Sodium carbonate": "Na2CO3",
    "Sodium citrate": "Na3C6H5O7(H2O)2",
    "Sodium hydroxide": "NaOH",
    "Sodium lactate": "NaC3H5O3",
    "Table salt": "NaCl",
    "Tartaric acid": "C4H6O6",
    "Triethanolamine": "C6H15NO3",
    "Vinegar": "C2H4O2",
    "Water": "H2O",
}
ROOM, NORMAL = 293.15, 101325  # 20 degC in K, one atmosphere in Pa.


def mass(formula: str) -> float:
    return Formula(formula).mass


def test_every_molar_mass_of_a_card_is_looked_up_here() -> None:
    assert {name for name, card in BY_NAME.items() if "molar mass" in card.figures} == set(FORMULAS)


@pytest.mark.parametrize("name", FORMULAS)
def test_molar_masses_of_cards(name: str) -> None:
    for figure in BY_NAME[name].figures["molar mass"].all:
        assert float(figure.typical) == pytest.approx(mass(FORMULAS[name]), abs=0.01)


@pytest.mark.parametrize(("constant", "formula"), [("molar mass of glycerol", "C3H8O3"), ("molar mass of water", "H2O")])
def test_molar_masses_of_constants(constant: str, formula: str) -> None:
    assert float(STUDIO.constants[constant].typical) == pytest.approx(mass(formula), abs=0.01)


def test_every_molar_mass_of_the_constants_is_looked_up_here() -> None:
    assert {name for name, figure in STUDIO.constants.items() if figure.unit == "g/mol"} == {
        "molar mass of glycerol",
        "molar mass of water",
    }


# What follows from the masses by stoichiometry alone: grams of hydroxide for one gram of the acid.
@pytest.mark.parametrize(
    ("name", "formula", "protons"), [("Citric acid", "C6H8O7", 3), ("Lactic acid", "C3H6O3", 1), ("Vinegar", "C2H4O2", 1)]
)
@pytest.mark.parametrize(("alkali", "of_alkali"), [("Sodium hydroxide", "NaOH"), ("Potassium hydroxide", "KOH")])
def test_grams_of_alkali_for_a_gram_of_acid(name: str, formula: str, protons: int, alkali: str, of_alkali: str) -> None:
    acid, base = BY_NAME[name].figures, BY_NAME[alkali].figures
    by_cards = acid["protons"].in_use.typical * base["molar mass"].in_use.typical / acid["molar mass"].in_use.typical
    assert float(by_cards) == pytest.approx(protons * mass(of_alkali) / mass(formula), rel=1e-4)


def test_citric_acid_in_its_crystals_with_water() -> None:
    purity = sure(BY_NAME["Citric acid monohydrate"].figure("purity"))
    in_crystals = 100 * mass("C6H8O7") / mass("C6H10O8")
    assert float(purity.low) == pytest.approx(0.995 * in_crystals, abs=0.01)
    assert float(purity.highest) == pytest.approx(1.005 * in_crystals, abs=0.01)


def test_a_value_stated_in_sodium_hydroxide_becomes_one_in_potassium_hydroxide() -> None:
    bounds = FIGURES["saponification"]
    assert float(sure(bounds.or_slip)) / float(sure(bounds.slip)) == pytest.approx(mass("KOH") / mass("NaOH"), rel=1e-5)


@pytest.mark.parametrize("when", ["20 degC", "25 degC"])
def test_the_density_of_water(when: str) -> None:
    kelvin = float(when.removesuffix(" degC")) + 273.15
    figure = next(one for one in BY_NAME["Water"].figures["density"].all if one.when == when)
    assert float(figure.typical) == pytest.approx(iapws95_rho(kelvin, NORMAL) / 1000, abs=5e-6)


def test_the_density_of_water_to_which_relative_densities_refer() -> None:
    assert float(STUDIO.constants["water density at 20 degC"].typical) == pytest.approx(iapws95_rho(ROOM, NORMAL) / 1000, abs=5e-6)


def test_the_boiling_point_of_water_at_the_level_of_the_sea() -> None:
    boils = float(STUDIO.constants["boiling point of water"].typical)
    assert boils == pytest.approx(iapws95_Tsat(NORMAL) - 273.15, abs=1e-3)


def test_the_density_of_ethanol_as_it_is_sold() -> None:
    """It lies above that of pure ethanol, and above that of an ideal mixture with its water by what such mixtures contract, 4 % at most.

    (The contraction of ethanol and water at its strongest, near half and half by volume, is 3.6 %: from memory, handbook tables.)
    """
    row = volume.rho_data_Perry_8E_105_l.loc["64-17-5"]
    pure = EQ105(ROOM, row.C1, row.C2, row.C3, row.C4) * mass("C2H6O") / 1e6
    water = iapws95_rho(ROOM, NORMAL) / 1000
    assert pure == pytest.approx(0.789, abs=0.002)
    figure = sure(BY_NAME["Ethanol"].figure("density"))
    # 92.3 to 93.8 % by weight, as the card says of what is sold.
    strong, weak = (1 / (share / pure + (1 - share) / water) for share in (0.938, 0.923))
    assert strong < float(figure.low) <= float(figure.highest) < weak * 1.04
