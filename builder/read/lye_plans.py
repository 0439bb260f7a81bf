"""The `lye:` lines of a recipe become a plan for its lye."""

from builder.model.place import Name, Place, fold
from builder.model.recipe import AlkaliShare, LyePlan, LyeWater, WaterBy
from builder.read.placed_yaml import PlacedYaml
from builder.read.shapes.recipe import LyeShape, LyeWaterShape


def make_lye_plan(shape: LyeShape, placed: PlacedYaml) -> LyePlan:
    """Make the plan, with the places of what findings point at."""
    purities = {fold(name): purity for name, purity in shape.purity.items()}
    alkalis = tuple(
        AlkaliShare(Name(name, _place_of_alkali(name, placed)), share.fraction, purities.get(fold(name), purities.get("")))
        for name, share in shape.alkali.items()
    )
    return LyePlan(
        alkalis=alkalis,
        superfat=shape.superfat,
        water=_water(shape.water, placed),
        divided_by=shape.divided_by,
        liquid=Name(shape.liquid, placed.place("lye", "liquid")),
        ready_mixed=shape.ready_mixed,
        place=placed.key_place("lye"),
        superfat_place=placed.place("lye", "superfat"),
    )


def _place_of_alkali(name: str, placed: PlacedYaml) -> Place:
    alone = isinstance(placed.at("lye", "alkali"), str)
    return placed.place("lye", "alkali") if alone else placed.key_place("lye", "alkali", name)


def _water(shape: LyeWaterShape, placed: PlacedYaml) -> LyeWater:
    """Give the one way in which the water is stated."""
    if shape.concentration is not None:
        by, value = WaterBy.CONCENTRATION, shape.concentration.fraction
    elif shape.ratio is not None:
        by, value = WaterBy.RATIO, shape.ratio
    else:
        assert shape.percent_of_oils is not None
        by, value = WaterBy.PERCENT_OF_OILS, shape.percent_of_oils.fraction
    return LyeWater(by, value, placed.place("lye", "water", by.value))
