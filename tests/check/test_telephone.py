"""Numbers as people write them, and what a telephone anywhere dials (ITU-T E.164). Numbers are those that nobody has.

Such numbers: 555-0100 to 555-0199 in North America (the numbering plan's own reserve), 01632 960xxx in the United Kingdom and 020 91x xxxx
in Ireland (their regulators' ranges for drama), all from memory; others are invented. How numbers are written: ITU-T E.123, from memory.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.model.dates.booking import Venue
from builder.rules.dates.telephone import Undialled, dialled
from tests.studios import sound_studio
from tests.test_findings import check, lay_out

STUDIO, _ = sound_studio()


def turned(number: str, region: str, country: str = "") -> str | Undialled:
    venue = Venue("1 Test Row", "Testham", country) if country else None
    return dialled(replace(STUDIO, profile=replace(STUDIO.profile, region=region, venue=venue)), number)


@pytest.mark.parametrize(
    ("number", "region", "country", "expected"),
    [
        ("802-555-0142", "US", "", "+18025550142"),
        ("(802) 555-0142", "US", "US", "+18025550142"),
        ("1-802-555-0142", "Canada", "", "+18025550142"),
        ("+1 802 555 0142", "EU", "", "+18025550142"),
        ("011 44 1632 960123", "US", "", "+441632960123"),
        ("01632 960123", "UK", "", "+441632960123"),
        ("+44 (0)1632 960123", "UK", "", "+441632960123"),
        ("0044 1632 960123", "EU", "IE", "+441632960123"),
        ("(020) 915 0142", "EU", "IE", "+353209150142"),
        ("01 99 00 12 34", "EU", "FR", "+33199001234"),
        ("1 99 00 12 34", "EU", "FR", "+33199001234"),
        ("06 1 555 0142", "EU", "HU", "+3615550142"),
        # In Italy the zero is a part of the number.
        ("06 555 0142", "EU", "IT", "+39065550142"),
        ("+39 06 555 0142", "US", "", "+39065550142"),
        ("55 50 01 42", "EU", "DK", "+4555500142"),
        # Of a country that no row knows: as it is written.
        ("+61 2 5550 0142", "US", "", "+61255500142"),
        ("+43 (0)1 55501", "EU", "AT", "+43155501"),
    ],
)
def test_a_whole_number_is_dialled_from_anywhere(number: str, region: str, country: str, expected: str) -> None:
    assert turned(number, region, country) == expected


@pytest.mark.parametrize(
    ("number", "region", "country", "why"),
    [
        ("802 555 0142, evenings", "US", "", Undialled.NOT_A_NUMBER),
        ("javascript:steal()", "US", "", Undialled.NOT_A_NUMBER),
        ("1-800-SOAPBAR", "US", "", Undialled.NOT_A_NUMBER),
        ("555-0142", "US", "", Undialled.LENGTH),
        ("+1 555 0142", "US", "", Undialled.LENGTH),
        # Without its zero it may be a number of the next town.
        ("960123", "UK", "", Undialled.LENGTH),
        ("1632 960123", "UK", "", Undialled.LENGTH),
        ("020 915 0142", "EU", "", Undialled.NO_COUNTRY),
        ("020 915 0142", "EU", "AU", Undialled.NO_COUNTRY),
        ("+999 12", "US", "", Undialled.LENGTH),
    ],
)
def test_what_may_be_part_of_a_number_is_not_completed(number: str, region: str, country: str, why: Undialled) -> None:
    assert turned(number, region, country) is why


def test_every_country_of_a_region_has_a_row() -> None:
    """The members of the European Union, from memory: 27."""
    countries = [row.country for row in STUDIO.calling_codes]
    assert len(countries) == len(set(countries)) == 27 + 3
    assert {row.region for row in STUDIO.calling_codes if row.region} == set(STUDIO.regions) - {"EU"}
    assert all(row.known.value == "memory" and row.source.key == "itu-t-e-164" for row in STUDIO.calling_codes)


@pytest.mark.parametrize(
    ("number", "said"),
    [
        ("802 555 0142, evenings", '"802 555 0142, evenings" is more than a telephone number.'),
        ("+1 555 0142", '"+1 555 0142" has too few or too many figures for its country.'),
        ("555-0142", '"555-0142" is no whole number of the country US: one has 10 figures'),
        ("802-555-0142", ""),
    ],
)
def test_a_number_without_a_link_says_why(tmp_path: Path, number: str, said: str) -> None:
    lay_out(None, tmp_path / "studio")
    profile = tmp_path / "studio/studio.yaml"
    text = profile.read_text(encoding="utf-8")
    profile.write_text(text.replace("email: teacher@test.example", f'email: teacher@test.example, phone: "{number}"'), encoding="utf-8")
    _, _, err = check(tmp_path / "studio")
    assert said in err and ("phone-not-dialled" in err) is bool(said)
