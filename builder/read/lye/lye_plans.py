"""The `lye:` lines of a recipe become a plan for its lye."""

from collections.abc import Iterator, Mapping

from builder.model.place import Name, Place
from builder.model.recipe.quantity import Share, sum_masses
from builder.model.recipe.recipe import AlkaliShare, LyeLiquid, LyePlan, LyeWater, WaterBy
from builder.read.shapes.recipe import LyeShape, LyeWaterShape
from builder.read.yaml.placed_yaml import PlacedYaml
from builder.words.fold import fold


def make_lye_plan(shape: LyeShape, usual_alkali: str, placed: PlacedYaml) -> LyePlan:
    """Make the plan, with the places of what findings point at; `usual_alkali` is meant where a weight names none."""
    places, ready = placed.places("lye"), shape.ready_mixed
    return LyePlan(
        alkalis=tuple(_alkalis(shape, usual_alkali, placed)),
        superfat=shape.superfat,
        water=_water(shape.water, placed),
        divided_by=shape.divided_by,
        liquids=(*_liquids("liquid", shape.liquid, placed), *_liquids("later", shape.later, placed)),
        ready_mixed=Share(ready.strength.typical) if ready else None,
        bought=ready.strength if ready and ready.bought else None,
        place=placed.key_place("lye"),
        places={"superfat": places["weigh"], "alkali": places["weigh"], **places} if shape.weigh else places,
    )


def _alkalis(shape: LyeShape, usual: str, placed: PlacedYaml) -> Iterator[AlkaliShare]:
    purities = {fold(name): purity for name, purity in shape.purity.items()}
    stated = shape.alkali or {}
    if shape.weigh is None:
        for name, share in stated.items():
            purity = purities.get(fold(name), purities.get(""))
            yield AlkaliShare(Name(name, _place_in("alkali", name, placed)), share.fraction, purity)
        return
    whole = sum_masses(shape.weigh.values())
    for written, weighs in shape.weigh.items():
        key = "alkali" if stated else "weigh"
        name = written or next(iter(stated), usual)
        place = _place_in(key, name, placed) if written or stated else placed.place("lye", "weigh")
        purity = purities.get(fold(name), purities.get(""))
        yield AlkaliShare(Name(name, place), weighs / whole, purity, weighs, assumed=not (written or stated))


def _place_in(key: str, name: str, placed: PlacedYaml) -> Place:
    """Return the place of a name that stands alone, or as a key with its share."""
    alone = key not in placed.at("lye") or not isinstance(placed.at("lye", key), dict)
    return placed.place("lye", key) if alone else placed.key_place("lye", key, name)


def _liquids(key: str, shares: Mapping[str, Share], placed: PlacedYaml) -> tuple[LyeLiquid, ...]:
    return tuple(
        LyeLiquid(Name(name, _place_in(key, name, placed)), share.fraction, later=key == "later") for name, share in shares.items()
    )


def _water(shape: LyeWaterShape, placed: PlacedYaml) -> LyeWater:
    """Return the one way in which the water is stated."""
    if shape.concentration is not None:
        by, value = WaterBy.CONCENTRATION, shape.concentration.fraction
    elif shape.ratio is not None:
        by, value = WaterBy.RATIO, shape.ratio
    elif shape.percent_of_oils is not None:
        by, value = WaterBy.PERCENT_OF_OILS, shape.percent_of_oils.fraction
    else:
        assert shape.weight is not None
        by, value = WaterBy.WEIGHT, shape.weight.grams
    alone = not isinstance(placed.at("lye", "water"), dict)
    return LyeWater(by, value, placed.place("lye", "water") if alone else placed.place("lye", "water", by.value))
