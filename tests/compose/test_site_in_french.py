"""A site in French: its plurals and dates are those of French, wherever its sentences come from.

The few sentences of booking are the project's own translation; all others stand in made-up letters, since a language counts only when it is
whole. French takes the singular for 1 and for 0, and writes dates and hours so: Unicode CLDR, plural rules and locale fr_CA, from memory.
"""

import pytest
from babel.messages.pofile import write_po
from bs4 import BeautifulSoup, Tag

from builder.words.say import speaking
from tests.compose.conftest import FILES, read_edition, write_studio
from tests.compose.test_another_language import marked
from tests.composing import composed
from tests.messages import messages
from tests.published import squeeze

FRENCH: dict[str, str | tuple[str, str]] = {
    "{count}\u00a0seat left": ("{count}\u00a0place libre", "{count}\u00a0places libres"),
    "from {count}\u00a0year": ("dès {count}\u00a0an", "dès {count}\u00a0ans"),
    "{from_age}, under {age} with an adult": "{from_age}, avec un adulte avant {age}\u00a0ans",
    "Seats as of {day}.": "Places en date du {day}.",
    "Ask for a seat": "Demander une place",
    "full": "complet",
}
DATES = """dates:
  - {on: 2027-02-06 10:00, enrolled: 4}
  - {on: 2027-03-06 14:30, enrolled: 3}
  - {on: 2027-08-01 10:00, enrolled: 5}
"""


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Tag:
    folder = tmp_path_factory.mktemp("in-french")
    catalog = messages()
    for message in catalog:
        if message.id:
            english = message.id if isinstance(message.id, str) else message.id[0]
            said = FRENCH.get(english, marked(english))
            # CLDR has three forms: for 0 and 1, for whole millions, and for all else.
            is_counted = not isinstance(message.id, str)
            message.string = said if not is_counted else (said, said, said) if isinstance(said, str) else (said[0], said[1], said[1])
    catalog.locale = "fr_CA"
    lesson_of = FILES["classes/first/class.yaml"]
    first = lesson_of[: lesson_of.index("dates:")] + DATES
    studio = FILES["studio.yaml"] + "language: Site french\nbooking: {with an adult under: 18}\n"
    write_studio(folder, studio_yaml=studio, classes__first__class_yaml=first)
    file = next(folder.rglob("studio.yaml")).parent / "shelf/languages/site-french.po"
    file.parent.mkdir(parents=True)
    with file.open("wb") as opened:
        write_po(opened, catalog)
    edition = read_edition(file.parent.parent.parent)
    assert edition.studio.speaks.name == "Site french"
    with speaking(edition.studio.speaks.messages):
        (document,) = composed("class page", edition)
    (book,) = BeautifulSoup(document.html, "html.parser").select(".book")
    return book


def test_plurals_are_those_of_french(page: Tag) -> None:
    assert [squeeze(one.get_text()) for one in page.select(".seats")] == ["1 place libre", "2 places libres", "complet"]
    assert "dès 16 ans, avec un adulte avant 18 ans" in squeeze(page.get_text(" "))


def test_days_hours_and_prices_are_written_as_in_french(page: Tag) -> None:
    days = [squeeze(one.get_text()) for one in page.select(".day")]
    assert days == [
        "samedi 6 février 2027",
        "samedi 6 mars 2027",
        "dimanche 1 août 2027",
    ]
    first, second, _ = (squeeze(one.get_text()) for one in page.select(".hours"))
    assert (first, second) == ("10 h 00 – 11 h 00", "14 h 30 – 15 h 30")
    assert squeeze(page.select(".price")[0].get_text()) == "48 $ US"
    assert "Places en date du 15 janvier 2027." in squeeze(page.get_text(" "))
