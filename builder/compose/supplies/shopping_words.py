"""What to buy for several dates, in words. Only the studio's own documents and the terminal show any of this."""

from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction

from builder.compose.dates.dates import clock, money, plain_date, short_date
from builder.compose.recipe.wording import NBSP, keep_together, listed, sentence, within
from builder.compose.supplies.pack_words import SEARCH_ENDED, TITLES, packs_in_words, quantity
from builder.compose.views.shopping import ShopDate, ShopGroup, ShopList, ShopRow
from builder.model.recipe.ingredient_kind import IngredientKind
from builder.model.studio import Studio
from builder.model.supplies.shopping import Occasion, Shopping, Wanted, price_of
from builder.model.supplies.supply import SupplyKind
from builder.words.say import message, say, say_count

# The groups of ingredients by the kinds of their cards, in the order of the list.
GROUPS = {
    message("Oils, butters and fatty acids"): (IngredientKind.OIL, IngredientKind.BUTTER, IngredientKind.FATTY_ACID),
    message("Waxes and emulsifiers"): (IngredientKind.WAX, IngredientKind.EMULSIFIER),
    message("Alkali"): (IngredientKind.ALKALI,),
    message("Bases"): (IngredientKind.LOTION_BASE, IngredientKind.SOAP_BASE),
    message("Water and other liquids"): (IngredientKind.WATER, IngredientKind.LIQUID, IngredientKind.MILK, IngredientKind.HUMECTANT),
    message("Salts, sugars and starches"): (IngredientKind.SALT, IngredientKind.SUGAR, IngredientKind.STARCH),
    message("Herbs, grains and clays"): (IngredientKind.HERB, IngredientKind.GRAIN, IngredientKind.EXFOLIANT, IngredientKind.CLAY),
    message("Thickeners, surfactants and acids"): (IngredientKind.THICKENER, IngredientKind.SURFACTANT, IngredientKind.ACID),
    message("Preservatives and antioxidants"): (IngredientKind.PRESERVATIVE, IngredientKind.ANTIOXIDANT),
    message("Scents and flavours"): (IngredientKind.ESSENTIAL_OIL, IngredientKind.FRAGRANCE, IngredientKind.FLAVOUR),
    message("Colours"): (IngredientKind.COLOURANT,),
    message("Other ingredients"): (IngredientKind.OTHER,),
}
STOCK_FIRST = message(
    "What is in stock is taken off first. The packs are the cheapest that cover what is then short, for all these dates together."
)
CHOICES = message(
    "Of what may be chosen the list counts what is expected: the choices on the rosters, and an even share of those still open."
)


def shop_list(studio: Studio, shopping: Shopping) -> ShopList:
    """Return the whole list in words."""
    words = _Words(studio, shopping)
    return ShopList(
        scope=words.scope(),
        dates=tuple(words.occasion(one) for one in shopping.occasions),
        groups=tuple(words.groups()),
        total=words.price(shopping.wanted),
        notes=tuple(words.notes()),
    )


class _Words:
    """Writes the dates and the money of one list in the studio's language and currency."""

    def __init__(self, studio: Studio, shopping: Shopping) -> None:
        self._profile, self._shopping = studio.profile, shopping
        self._locale = studio.locale
        self._with_year = len({one.on.year for one in shopping.occasions}) > 1

    def scope(self) -> str:
        dates = self._shopping.occasions
        if not dates:
            return say("There is no date to shop for.")
        days = list(dict.fromkeys(plain_date(one.on.date(), self._locale) for one in (dates[0], dates[-1])))
        worked_out = plain_date(self._shopping.today, self._locale)
        if len(days) == 1:
            return say_count(
                "For {count}\u00a0date, {day}. Worked out on {worked_out}.",
                "For {count}\u00a0dates, {day}. Worked out on {worked_out}.",
                len(dates),
                day=days[0],
                worked_out=worked_out,
            )
        return say_count(
            "For {count}\u00a0date, {first} to {last}. Worked out on {worked_out}.",
            "For {count}\u00a0dates, {first} to {last}. Worked out on {worked_out}.",
            len(dates),
            first=days[0],
            last=days[1],
            worked_out=worked_out,
        )

    def occasion(self, one: Occasion) -> ShopDate:
        day = f"{plain_date(one.on.date(), self._locale)}, {clock(one.on, self._locale)}"
        return ShopDate(day, one.title, say_count("{count}\u00a0student", "{count}\u00a0students", one.students))

    def groups(self) -> Iterator[ShopGroup]:
        for title, wanted in grouped(self._shopping.wanted):
            yield ShopGroup(title, tuple(self._row(one) for one in wanted), self.price(wanted))

    def price(self, wanted: Sequence[Wanted]) -> str:
        if wanted and all(one.unpriced for one in wanted):
            return say("no price known")
        price = self._money(price_of(wanted))
        return say("at least {price}", price=price) if any(one.unpriced for one in wanted) else price

    def notes(self) -> Iterator[str]:
        shopping = self._shopping
        if shopping.occasions:
            yield say(STOCK_FIRST)
            yield say(CHOICES)
        if any(one.purchase and not one.purchase.proven for one in shopping.wanted):
            yield say(SEARCH_ENDED)
        unpriced = [within(one.name) for one in shopping.wanted if one.unpriced]
        if unpriced and len(unpriced) == len(shopping.wanted):
            yield say("No price is known yet. Write into shelf/supplies.yaml what you buy, by the pack.")
        elif unpriced:
            yield say("No price known: {names}. Buy what is short; the sums are the least that it can be.", names=listed(unpriced))
        yield from self._old_counts()
        if shopping.held_since:
            held = listed([f"{one.title} ({self._day(one.on.date())})" for one in shopping.held_since])
            yield say(
                "Held since the oldest of the counts: {classes}. What was used there is still counted as in stock: count again.",
                classes=held,
            )
        if shopping.nobody_yet:
            empty = listed([f"{one.title} ({self._day(one.on.date())})" for one in shopping.nobody_yet])
            yield say("Nobody has enrolled yet, so nothing is counted, for {classes}.", classes=empty)
        if shopping.held_back:
            yield say("Not counted, since a stop holds them back: {classes}.", classes=listed(shopping.held_back))

    def _old_counts(self) -> Iterator[str]:
        shopping = self._shopping
        counted_on = [(one.name, one.counted) for one in shopping.wanted if one.counted]
        old = [(name, day) for name, day in counted_on if (shopping.today - day).days > shopping.old_after]
        if old:
            names = listed([f"{within(name)} ({plain_date(day, self._locale)})" for name, day in old])
            yield say_count(
                "Counted more than {count}\u00a0day ago: {names}. Count again before you rely on it.",
                "Counted more than {count}\u00a0days ago: {names}. Count again before you rely on it.",
                shopping.old_after,
                names=names,
            )

    def _row(self, one: Wanted) -> ShopRow:
        packs = packs_in_words(one.purchase) if one.purchase else self._short_of(one) if one.short else say("nothing")
        return ShopRow(
            name=keep_together(sentence(say(one.name))),
            needed=quantity(one.kind, one.needed),
            days="; ".join(f"{self._day_of_list(day)}:{NBSP}{quantity(one.kind, amount)}" for day, amount in one.on_days),
            stock=quantity(one.kind, one.have) if one.counted else "",
            packs=packs,
            price=self._money(one.purchase.price) if one.purchase else say("no price known") if one.short else "",
            left=quantity(one.kind, one.left) if one.left is not None else "",
            buys=bool(one.short),
            note=self._keeps(one),
        )

    def _short_of(self, one: Wanted) -> str:
        return say("{amount} short", amount=quantity(one.kind, one.short))

    def _keeps(self, one: Wanted) -> str:
        if not one.too_late:
            return ""
        days = listed([self._day_of_list(day) for day in one.too_late])
        first = self._day_of_list(one.on_days[0][0])
        return say("Bought for {first} it does not keep that long: buy what is for {days} later.", first=first, days=days)

    def _day_of_list(self, day: date) -> str:
        """Name a day that is shopped for: the head of the list says of which year, where all of them are of one."""
        return short_date(day, self._locale, with_year=self._with_year)

    def _day(self, day: date) -> str:
        return short_date(day, self._locale, with_year=self._with_year or day.year != self._shopping.today.year)

    def _money(self, value: Fraction) -> str:
        return money(value, self._profile.currency, self._locale)


def grouped(wanted: Sequence[Wanted]) -> Iterator[tuple[str, list[Wanted]]]:
    """Yield what is wanted by kind, in the order of the groups, each in the order of the names; groups of nothing are left out."""
    in_order = sorted(wanted, key=lambda one: one.name.casefold())
    for title, kinds in GROUPS.items():
        found = [one for one in in_order if one.card_kind in kinds]
        if found:
            yield say(title), found
    for kind in (SupplyKind.CONTAINER, SupplyKind.ITEM):
        found = [one for one in in_order if one.kind is kind]
        if found:
            yield say(TITLES[kind]), found
