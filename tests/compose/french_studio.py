"""A studio that writes in French, with a class of each format: what it says of its own is in French, so that every other word is ours."""

LESSON_OF_SALTS = """
## Peser et remplir (students, 40 min)

1. Peser {sea salt} de sel et {baking soda} de bicarbonate.
2. Tiédir {glycerin} de glycérine à 70 °C.
3. Mettre au plus {scent} de parfum.
4. Verser {portion} dans le pot.
"""
LESSON_OF_THE_BAR = """
## Regarder la lessive (teacher, 20 min, bar)

1. Mettre les lunettes.
2. Peser {lye water} d’eau froide.
3. Peser {sodium hydroxide} d’hydroxyde de sodium.
4. Verser {lye} dans l’eau.
5. Verser {portion} dans chacun des {containers} moules.
"""
TALK = """
## Parler ensemble (together, 10 min)

1. Poser des questions.
"""
FILES = {
    "studio.yaml": """
name: Atelier d’essai
tagline: Petits cours de savon et de sels
teacher: Personne Inventée
address: [1 rue d’Essai, Essaiville]
contact: {email: bonjour@essai.example, phone: 514-555-0142}
public address: https://essai.example
time zone: America/Toronto
region: Canada
currency: CAD
paper: letter
where:
  name: La cour
  street: 1 rue d’Essai
  town: Essaiville
  state: QC
  postcode: H0H 0H0
  country: CA
  map: https://essai.example/plan
  getting here: Par la cour.
  access: De plain-pied.
  parking: Deux places.
booking:
  until: 2 days
  includes: Tout ce qu’il faut.
  with an adult under: 18
  children: L’adulte regarde sans payer.
  payment: Sur place.
  refunds: En entier jusqu’à 7 jours avant.
scales:
  - {name: balance, reads to: 0.1 g, up to: 10 kg}
scales at home:
  - {name: balance de cuisine, reads to: 1 g, up to: 5 kg}
  - {name: balance de cuisine, reads to: 0.05 oz, up to: 11 lb}
emergency: {number: "112", poison centre: "113"}
""",
    "pages/welcome.md": "# Bienvenue\n\nVoici [le premier cours](class:first).\n",
    "pages/about.md": "# Qui nous sommes\n\nNous sommes peu et soigneux.\n",
    "pages/safety.md": "# Comment nous veillons\n\nNous portons des lunettes.\n",
    "recipes/salts.yaml": """
name: Sels tout simples
product: bath salts
about: Des sels pour le bain.
amounts: weights
phases:
  - name: sels
    ingredients: {sea salt: 600 g, baking soda: 300 g}
  - name: à chaud
    heat to: 70 degC
    ingredients: {glycerin: 100 g}
choices:
  scent: {from: [lavender essential oil, no scent], at most: 1 %}
fills: {container: 4 fl oz jar, weight: 113 g}
tools: [bol]
keeps: 6 months
storage: Garder au sec.
directions: Verser dans le bain.
label cautions: [Ne pas manger.]
""",
    "recipes/bar.yaml": """
name: Savon tout simple
product: cold-process soap
about: Un savon d’une seule huile.
amounts: percent of oils
phases:
  - name: huiles
    ingredients: {olive oil: 100 %}
lye:
  alkali: sodium hydroxide
  purity: 100 %
  superfat: 10 %
  water: {water to lye: 2}
fills: {container: cut soap bar, weight: 100 g}
""",
    "classes/first/class.yaml": """
title: Le premier cours
format: demo with hands-on parts
summary: Des sels et un savon.
for: débutants
goal: learn to make at home
youngest: 16
length: 1 h 10 min
seats: 5
price: 48.00
staff: {teachers: 1, assistants: 1}
group size: 2
makes:
  salts: {each student: 2 containers, at home: [500 g]}
  bar: {batch: one for each group, each student: 1 container, at home: [500 g of oils]}
wear: [souliers fermés]
take home: Deux pots et un savon.
dates:
  - {on: 2027-02-06 10:00, enrolled: 4}
  - {on: 2027-03-06 14:30, enrolled: 3}
  - {on: 2027-08-01 10:00, enrolled: 5, waiting: 1}
""",
    "classes/first/lesson.md": "# Le premier cours\n\nOn fait deux choses.\n" + LESSON_OF_THE_BAR + LESSON_OF_SALTS + TALK,
    "classes/watched/class.yaml": """
title: Regarder un savon
format: demo
summary: Un savon de bout en bout.
for: adultes
goal: fun
youngest: 14
length: 30 min
seats: 8
price: 32.50
staff: {teachers: 1, assistants: 1}
makes:
  bar: {each student: 1 container}
take home: Un savon.
dates:
  - {on: 2027-03-13 10:00, moved from: 2027-03-07 10:00, revision: 1}
  - {on: 2027-04-10 10:00, cancelled: La cour est repavée, revision: 1}
""",
    "classes/watched/lesson.md": "# Regarder un savon\n\nOn regarde.\n" + LESSON_OF_THE_BAR + TALK,
    "classes/salts/class.yaml": """
title: Sels en famille
format: hands-on
summary: Des sels pour chacun.
for: familles
goal: fun
youngest: 8
length: 50 min
seats: 5
price: 18.00
staff: {teachers: 1, assistants: 2}
group size: 5
makes:
  salts: {each student: 1 container}
take home: Un pot de sels.
dates:
  - {on: 2027-03-20 10:00, enrolled: 5}
""",
    "classes/salts/lesson.md": "# Sels en famille\n\nChacun fait le sien.\n" + LESSON_OF_SALTS + TALK,
}
