"""What `parts/shopping.html` shows, on the screen, on paper and on a terminal."""

from dataclasses import dataclass

from builder.compose.views.frame import Frame


@dataclass(frozen=True)
class ShopDate:
    """One date that the list is for."""

    day: str
    title: str
    students: str


@dataclass(frozen=True)
class ShopRow:
    """One thing: how much all dates need and how much of it each day, what is in stock, the packs to buy, their price, what is left.

    `buys` says whether there is anything to buy; `note` is what to know besides, or empty.
    """

    name: str
    needed: str
    days: str
    stock: str
    packs: str
    price: str
    left: str
    buys: bool
    note: str


@dataclass(frozen=True)
class ShopGroup:
    """Things of one kind, and what their packs cost together."""

    title: str
    rows: tuple[ShopRow, ...]
    price: str


@dataclass(frozen=True)
class ShopList:
    """The whole list; `scope` says for which dates it is, in a sentence."""

    scope: str
    dates: tuple[ShopDate, ...]
    groups: tuple[ShopGroup, ...]
    total: str
    notes: tuple[str, ...]


@dataclass(frozen=True)
class ShoppingView:
    """The list as a document. `pdf` is the address of the same list as PDF, empty on paper."""

    frame: Frame
    pdf: str
    title: str
    listed: ShopList
