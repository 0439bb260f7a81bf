"""The families of allergens that cards name, and that a recipe or a class may promise to be free from."""

from enum import StrEnum


class AllergenFamily(StrEnum):
    """What people are allergic to, by the name that sheets print."""

    TREE_NUT = "tree nut"
    PEANUT = "peanut"
    WHEAT = "wheat"
    OAT = "oat"
    MILK = "milk"
    SOY = "soy"
    SESAME = "sesame"
    BEE_PRODUCTS = "bee products"
    WOOL_ALCOHOLS = "wool alcohols"
    DAISY_FAMILY = "daisy family"
    MUSTARD = "mustard"
    EGG = "egg"
    FISH = "fish"
    COCONUT = "coconut"
