"""The words by which pages call what recipes choose from."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Any

from django.utils.translation import gettext_lazy as _

from cookout.core.eventfile.recipes import Held
from cookout.core.kitchen.recipe import BakeMethod, CoolPlace, FoodKind, IcingKind, LoadKind, Scope, StepKind

FOODS = MappingProxyType(
    {
        FoodKind.BREAD_AND_CAKE: _("bread and plain cake"),
        FoodKind.CREAM_ICING: _("cake with cream or cream cheese"),
        FoodKind.EGGS: _("egg dish"),
        FoodKind.FISH: _("fish and shellfish"),
        FoodKind.WHOLE_MEAT: _("whole meat: roast, chops, steak"),
        FoodKind.GROUND_MEAT: _("ground meat and sausage"),
        FoodKind.POULTRY: _("poultry"),
        FoodKind.STEW_AND_BEANS: _("stew, chili and beans"),
        FoodKind.COOKED_VEGETABLES: _("cooked vegetables"),
        FoodKind.RAW_VEGETABLES: _("raw vegetables and salad"),
        FoodKind.FRUIT: _("fruit, cobbler and crisp"),
        FoodKind.DAIRY: _("milk and cheese dish"),
    }
)
KINDS = MappingProxyType(
    {
        StepKind.PREPARE: _("prepare"),
        StepKind.MIX: _("mix"),
        StepKind.REST: _("rest or rise"),
        StepKind.BAKE: _("over coals"),
        StepKind.COOL: _("cool"),
        StepKind.ICE: _("ice"),
        StepKind.FINISH: _("finish"),
    }
)
METHODS = MappingProxyType(
    {
        BakeMethod.BAKE: _("bake"),
        BakeMethod.ROAST: _("roast"),
        BakeMethod.SIMMER: _("simmer"),
        BakeMethod.FRY: _("fry"),
    }
)
SCOPES = MappingProxyType(
    {
        Scope.BATCH: _("once for each batch"),
        Scope.PAN: _("once for each pan"),
        Scope.DISH: _("once, however many eat"),
    }
)
HELDS = MappingProxyType({Held.AIR: _("as it is"), Held.HOT: _("kept hot"), Held.COLD: _("kept cold")})
ICINGS = MappingProxyType(
    {
        IcingKind.CREAM_CHEESE: _("cream cheese"),
        IcingKind.BUTTER: _("butter"),
        IcingKind.SHORTENING: _("shortening"),
        IcingKind.WHIPPED_CREAM: _("whipped cream"),
        IcingKind.CHOCOLATE_AND_CREAM: _("chocolate and cream"),
        IcingKind.SUGAR_GLAZE: _("sugar glaze"),
    }
)
LOADS = MappingProxyType(
    {
        LoadKind.CAKE: _("cake"),
        LoadKind.CARROT_CAKE: _("moist cake"),
        LoadKind.QUICK_BREAD: _("quick bread"),
        LoadKind.ENRICHED_DOUGH: _("enriched dough"),
        LoadKind.LEAN_BREAD: _("lean bread"),
        LoadKind.CORNBREAD: _("cornbread"),
        LoadKind.COBBLER: _("cobbler"),
        LoadKind.CASSEROLE: _("casserole"),
        LoadKind.POTATOES: _("potatoes and roots"),
        LoadKind.BEANS: _("cooked beans"),
        LoadKind.STEW: _("stew"),
        LoadKind.FISH: _("fish"),
        LoadKind.ROAST: _("roast"),
        LoadKind.POULTRY: _("poultry"),
        LoadKind.GROUND_MEAT: _("ground meat"),
    }
)
PLACES = MappingProxyType(
    {CoolPlace.RACK: _("on a rack"), CoolPlace.PAN: _("in its pan"), CoolPlace.COOLER: _("in a cooler with ice")}
)
GEAR = MappingProxyType(
    {
        "bowl": _("bowls"),
        "mixer": _("mixers"),
        "rack": _("cooling racks"),
        "cooler": _("places in a cooler"),
        "skillet": _("skillets"),
        "trivet": _("trivets"),
        "other": _("other gear"),
    }
)


def choices(words: Mapping[Any, Any], *, nothing: Any = None) -> list[tuple[str, Any]]:
    """What a field chooses from; `nothing` is how it is called to choose none of them."""
    found = [(key.value if isinstance(key, StrEnum) else str(key), word) for key, word in words.items()]
    return found if nothing is None else [("", nothing), *found]
