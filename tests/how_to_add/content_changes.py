"""Additions to what ships: rows and files of content/, with the sentences of the tests that belong to them. All of it is invented."""

from builder.library import CONTENT
from tests.how_to_add.change import Addition, Change, after, at_the_end, new, one_more

TRIED = "tests/how_to_add/tried.py::"
TRANSLATED = "tests/content/test_languages.py::test_every_text_that_can_reach_a_label_is_translated[Canada-French]"
FRENCH = "content/languages/french.po"
PRACTICE = "common-practice,how this test has it,practice,"


def _card(name: str, inci: str, kind: str, source: str = "bpc-1911") -> str:
    """Write a card like that of olive oil, of which nothing is known but its saponification value."""
    return f"""
name: {name}
label name:
  inci: {inci}
  plain: {name.casefold()}
  known: memory
saponified as: Lunarate
kind: {kind}
counts as: fat
mixes with: oil
figures:
  saponification:
    - {{low: 188, high: 190, unit: mg/g, source: {source}, at: nowhere, known: memory}}
"""


def _in_french(english: str, french: str) -> Change:
    return at_the_end(f'\nmsgid "{english}"\nmsgstr "{french}"\n')


def _in_german(text: str) -> str:
    """Translate one message of the file from which languages are made, and leave the others open."""
    assert not text
    messages = (CONTENT / "languages" / "messages.pot").read_text(encoding="utf-8")
    head = 'msgid ""\nmsgstr ""\n"Language: de_DE\\n"\n"Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n'
    return head + messages[messages.index("\n\n") :].replace('msgid "Bath salts"\nmsgstr ""', 'msgid "Bath salts"\nmsgstr "Badesalz"')


REGION = """
Norland:
  in words: Norland
  law: the law of Norland
  locale: en_GB
  keeps the law of: {is: EU, source: common-practice, at: invented, known: practice}
  colours that are allowed: {is: eu, source: common-practice, at: invented, known: practice}
  net contents: {is: metric, source: common-practice, at: invented, known: practice}
  liquids: {is: liquids go by volume, source: common-practice, at: invented, known: practice}
  languages: {is: English, source: common-practice, at: invented, known: practice}
  heading: {is: Holds, source: common-practice, at: invented, known: practice}
  best before: {is: Good until the end of, source: common-practice, at: invented, known: practice}
  names: {is: INCI, source: common-practice, at: invented, known: practice}
  water: {is: Aqua, source: common-practice, at: invented, known: practice}
  fragrance: {is: Parfum, source: common-practice, at: invented, known: practice}
  flavour: {is: Aroma, source: common-practice, at: invented, known: practice}
  flavours and scents: {is: by the word for scent, source: common-practice, at: invented, known: practice}
  colours: {is: eu, source: common-practice, at: invented, known: practice}
  exactly one per cent: {is: in its place, source: common-practice, at: invented, known: practice}
  fragrance last: {is: no, source: common-practice, at: invented, known: practice}
  may contain: {is: May contain, source: common-practice, at: invented, known: practice}
  allergens: {is: none, source: common-practice, at: invented, known: practice}
  nano: {is: none, source: common-practice, at: invented, known: practice}
  responsible person: {is: none, source: common-practice, at: invented, known: practice}
  with little room: {is: nothing else holds, source: common-practice, at: invented, known: practice}
"""
DANGERS = "A danger, a claim, a word about allergies"
CONTENT_CHANGES = (
    Addition(
        "An ingredient",
        {
            "content/ingredients/moonpetal-oil.yaml": new(_card("Moonpetal oil", "Lunaria Test Oil", "oil")),
            FRENCH: _in_french("Moonpetal oil", "huile de lune"),
        },
        (TRIED + "test_a_card_is_weighed_and_takes_lye[moonpetal oil]", TRANSLATED),
    ),
    Addition(
        "An ingredient",
        {
            "content/ingredients/starseed-oil.yaml": new(_card("Starseed oil", "Stellaria Test Oil", "oil", "moon-book")),
            FRENCH: _in_french("Starseed oil", "huile d’étoile"),
            "content/sources.yaml": at_the_end("moon-book: {title: A book of invented oils, kind: handbook, about: Invented.}\n"),
        },
        (TRIED + "test_a_card_is_weighed_and_takes_lye[starseed oil]", TRIED + "test_a_new_work_is_cited"),
    ),
    Addition(
        "A limit, a constituent",
        {
            "content/tables/usage_limits.csv": at_the_end(
                "Moonpetal oil,LUNARIA TEST OIL,LUNARIA TEST OIL,oil,2,product,,,all,leave-on,,,,,,common practice,any,practice,"
                + f"{PRACTICE},"
            ),
            "tests/content/test_tables.py": one_more('(len(table("usage_limits.csv")), len(COLOURS)) == (', 309),
        },
        (TRIED + "test_a_limit_is_judged", "tests/content/test_tables.py::test_every_row_is_read"),
    ),
    Addition(
        "A height of type",
        {"content/tables/type_heights.csv": at_the_end("US,text,contents,5000,,g or mL,9 mm,letters," + PRACTICE)},
        (TRIED + "test_a_height_of_type_holds",),
    ),
    Addition(
        "A warning",
        {
            "content/tables/label_warnings.csv": at_the_end(
                ",,,,LUNARIA TEST OIL,,no,Not under a full moon.,full moon,practice," + PRACTICE
            ),
            FRENCH: _in_french("Not under a full moon.", "Pas sous la pleine lune."),
        },
        (TRIED + "test_a_warning_stands_on_the_label", TRANSLATED),
    ),
    Addition(
        "A limit, a constituent",
        {
            "content/tables/essential_oils.csv": at_the_end(
                'Peru balsam oil,MYROXYLON PEREIRAE OIL,Myroxylon balsamum var. pereirae,"balsam, distilled",moonol,1,2,'
                "essential-oil-handbooks,as recalled,memory,"
            ),
            "tests/content/test_essential_oils.py": one_more('assert (len(ROWS), len({row["oil"] for row in ROWS})) == (', 375),
        },
        (
            TRIED + "test_a_constituent_is_counted",
            "tests/content/test_essential_oils.py::test_every_oil_of_the_table_has_a_card_and_every_card_of_an_oil_says_which_it_is",
            "tests/content/test_essential_oils.py::test_a_card_holds_what_every_work_says_of_its_oil",
        ),
    ),
    Addition(
        "A region",
        {
            "content/regions.yaml": at_the_end(REGION),
            "content/tables/type_heights.csv": at_the_end("Norland,text,,,,,2 mm,letters," + PRACTICE),
            "content/starters/regions.yaml": at_the_end(
                "Norland: {currency: EUR, paper: A4, emergency: '112', units: grams, spelling: British, address: [1 Example Street]}\n"
            ),
        },
        (
            TRIED + "test_a_region_has_labels_in_its_words",
            "tests/reference/test_pages.py::test_regions_are_told",
        ),
    ),
    Addition(
        DANGERS,
        {
            "content/tables/unsafe_steps.yaml": at_the_end(
                """
moonlight on lye:
  kind: stop
  says: [<stir> ...3 moonlight]
  why: It is invented.
  instead: Leave it out.
  source: common-practice
  at: invented
  known: practice
"""
            ),
            "tests/check/unsafe_sentences.yaml": at_the_end(
                """
of the moon, pass:
  text: [Walk home in the moonlight.]

of the moon, found:
  text: {Stir it in the moonlight.: moonlight on lye}
"""
            ),
        },
        (
            "tests/check/test_unsafe_sentences.py::test_what_is_right_stays_silent[text-Walk home in the moonlight.]",
            "tests/check/test_unsafe_sentences.py::test_what_hurts_is_found[text-Stir it in the moonlight.-moonlight on lye]",
        ),
    ),
    Addition(
        DANGERS,
        {
            "content/tables/claims.yaml": at_the_end(
                """
moon power:
  stops in: [US, EU, UK, Canada]
  says: [moon power]
  why: It is invented.
  instead: Leave it out.
  source: common-practice
  at: invented
  known: practice
"""
            ),
            "tests/check/claim_sentences.yaml": after(
                ("fine:", "  - A bar as round as the moon."), ("found:", "  With moon power.: {moon power: {US: stop}}")
            ),
        },
        (
            "tests/check/test_claim_sentences.py::test_what_may_be_said_stays_silent[A bar as round as the moon.]",
            "tests/check/test_claim_sentences.py::test_a_claim_is_found_with_its_weight_in_each_region[With moon power.-wanted0]",
        ),
    ),
    Addition(
        DANGERS,
        {
            "content/allergy_words.yaml": at_the_end(
                """
moon nuts:
  words: [moon nuts]
  families: [peanut]
  source: common-practice
  at: invented
  known: practice
"""
            ),
            "tests/reckon/test_allergies.py": after(('        ("nuts", {"tree nut"', '        ("moon nuts", {"peanut"}),')),
        },
        ("tests/reckon/test_allergies.py::test_what_people_write_means_families[moon nuts-families1]",),
    ),
    Addition(
        "A rule on supervision, advice on formats",
        {
            "content/supervision.yaml": at_the_end(
                """
work by moonlight:
  hazards: [glass]
  if broken: caution
  students to a supervisor: [{from age: 4, students: 3}]
  from:
    - {source: common-practice, at: invented, known: practice}
"""
            ),
            "tests/reckon/test_supervision.py": after(
                ("PUBLISHED = [", '    ("work by moonlight", 12, 3, "invented"),'),
            ),
        },
        ("tests/reckon/test_supervision.py::test_one_adult_watches_as_many_as_the_guidance_says[work by moonlight-12-3-invented]",),
    ),
    Addition(
        "A rule on supervision, advice on formats",
        {
            "content/format_advice.yaml": at_the_end(
                """
by moonlight:
  when: {goal: fun}
  suits: [hands-on, demo]
  because: It is invented.
  source: common-practice
  at: invented
  known: practice
"""
            ),
            "tests/reckon/test_teaching.py": after(
                ('        ("first-cold-process-bar", "lye is made or used"),', '        ("salts-and-scrub-party", "by moonlight"),')
            ),
        },
        ("tests/reckon/test_teaching.py::test_advice_fits_the_class[salts-and-scrub-party-by moonlight]",),
    ),
    Addition(
        "A label sheet, a container",
        {
            "content/label_sheets.yaml": at_the_end(
                "moon sheet: {paper: letter, columns: 2, rows: 2, width: 80 mm, height: 90 mm, left: 20 mm, top: 20 mm}\n"
            )
        },
        (TRIED + "test_a_label_sheet_can_be_asked_for",),
    ),
    Addition(
        "A label sheet, a container",
        {
            "content/containers.yaml": at_the_end(
                "5 fl oz moon jar: {capacity: 5 fl oz, shape: round lid, source: common-practice, at: invented, known: practice}\n"
            )
        },
        (TRIED + "test_a_container_is_filled",),
    ),
    Addition(
        "A kind of product",
        {
            "content/products.yaml": at_the_end(
                "moon dust: {identity: Moon dust, contact: bath, made with lye: no, declared by: weight, used on: [body]}\n"
            ),
            **{
                f"content/starters/moon-dust/{name}": new((CONTENT / "starters" / "bath-salts" / name).read_text(encoding="utf-8"))
                for name in ("class.yaml", "french.yaml", "lesson.md")
            },
            "content/starters/moon-dust/recipe.yaml": new(
                (CONTENT / "starters" / "bath-salts" / "recipe.yaml").read_text(encoding="utf-8").replace("bath salts", "moon dust")
            ),
            FRENCH: _in_french("Moon dust", "Poussière de lune"),
        },
        (TRIED + "test_a_kind_of_product_begins_a_studio", TRANSLATED),
    ),
    Addition(
        "A word of the trade",
        {
            "content/terms.yaml": after(
                ("melt and pour:", 'moonset: {means: "The hour at which invented soap sets.", also called: [moon set]}')
            )
        },
        (TRIED + "test_a_word_is_explained", "tests/reference/test_lists.py::test_no_word_means_two_things"),
    ),
    Addition(
        "A language",
        {"content/languages/german.po": _in_german},
        (TRIED + "test_a_language_is_read", "tests/content/test_languages.py::test_languages_are_read"),
    ),
)
