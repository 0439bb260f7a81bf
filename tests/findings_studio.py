"""Small whole studios on disk for tests of classes: the sound studio's own profile, a few recipes, and the class asked for."""

import shutil
from pathlib import Path

SOUND = Path(__file__).parent / "findings" / "_sound"
RECIPES = {
    "scrub": """name: Sugar scrub
product: scrub
amounts: percent of total
phases:
  - name: dry
    ingredients: {white sugar: 70 %}
  - name: oils
    ingredients: {sunflower oil: rest, vitamin E: 0.5 %, phenoxyethanol and ethylhexylglycerin blend: 0.9 %}
fills: {container: 4 fl oz jar, weight: 110 g, measured: "one filled and weighed, 2026"}
keeps: 3 months
label cautions: [Not to be eaten., "Makes the tub and floor slippery. Hold on, and rinse the tub."]
""",
    "two-lyes": """name: Two-lye bar
product: cold-process soap
amounts: percent of oils
phases:
  - name: oils
    ingredients: {olive oil: 70 %, coconut oil: 30 %}
  - name: at trace
    ingredients: {kaolin clay: 2 %}
lye:
  alkali: {sodium hydroxide: 90 %, potassium hydroxide: 10 %}
  superfat: 8 %
  water: {lye concentration: 30 %}
  ready-mixed: 40 %
fills: {container: bar mould cavity, weight: 100 g}
keeps: 6 months
""",
}
CLASS = """title: {title}
format: hands-on
summary: A class made up for a test.
for: adults
goal: fun
youngest: 18
length: 1 h
seats: 8
price: 60.00
group size: 2
staff: {{teachers: 1, assistants: 3}}
makes:
  {recipe}:
    batch: {batch}
    each student: 2 containers
    spare: 1 container
dates:
  - {{on: 2027-03-06 {hour:02d}:00, enrolled: 7}}
  - {{on: 2027-03-13 {hour:02d}:00, enrolled: 2}}
"""


def write_class(folder: Path, key: str, recipe: str, batch: str, lesson: str) -> None:
    """Add a class to a studio, which is begun where it is not there yet."""
    if not folder.exists():
        shutil.copytree(SOUND, folder)
        shutil.rmtree(folder / "classes")
        (folder / "pages" / "about.md").write_text("# About\n\nWords about us.\n", encoding="utf-8")
        for name, text in RECIPES.items():
            (folder / "recipes" / f"{name}.yaml").write_text(text, encoding="utf-8")
    at = folder / "classes" / key
    hour = 8 + len(list(at.parent.iterdir())) if at.parent.exists() else 8
    at.mkdir(parents=True)
    (at / "class.yaml").write_text(
        CLASS.format(title=key.replace("-", " ").capitalize(), recipe=recipe, batch=batch, hour=hour), encoding="utf-8"
    )
    (at / "lesson.md").write_text(f"# {key}\n\nA lesson.\n{lesson}", encoding="utf-8")
