"""The page of a class: what is made, how it is taught, what goes home, what to mind, when, and for how much."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.dates.booking_words import booking_view, dates_to_book, who_may_come
from builder.compose.dates.time_words import clock_from, common_start, format_words, time_left, time_strip
from builder.compose.document_kind import Composed
from builder.compose.dose.dose_words import none_of
from builder.compose.edition import Edition
from builder.compose.frames import frame, with_data
from builder.compose.home.size_words import size_words
from builder.compose.machines.sharing import with_sharing
from builder.compose.machines.structured import class_data
from builder.compose.ornament.portrait import portrait_of
from builder.compose.ornament.svg import PAGE_MARK, Look, mark
from builder.compose.ornament.words import how_to_read
from builder.compose.picture_files import Shown
from builder.compose.recipe.portion_words import containers_of
from builder.compose.recipe.wording import grams_and_ounces, listed, sentence, within
from builder.compose.roster.allergens import allergens_of, allergens_open_in
from builder.compose.site.related import related_to
from builder.compose.site.safety import view_safety
from builder.compose.teaching.class_facts import length, picture_of, price, staff
from builder.compose.teaching.format_words import your_part
from builder.compose.teaching.pieces import writer_of
from builder.compose.views.frame import Link
from builder.compose.views.site.class_page import ClassPageView, ProductView
from builder.model.dates.studio_class import StudioClass
from builder.model.recipe.filling import Filling
from builder.model.recipe.ingredient import DeclaredAs
from builder.model.recipe.product import Contact, DeclaredBy, Product
from builder.model.recipe.worked_batch import WorkedBatch
from builder.model.studio import Studio
from builder.model.teaching.class_plan import ClassPlan, MadeProduct
from builder.words.say import message, say, say_count


def compose_class_page(edition: Edition, plan: ClassPlan, here: Address) -> Composed:
    """Make the page of one class."""
    studio_class = plan.studio_class
    around = with_sharing(edition, frame(edition, here, studio_class.title, studio_class.summary), studio_class)
    writer = writer_of(edition, here, addresses.class_folder(studio_class.key))
    view = ClassPageView(
        frame=with_data(around, class_data(edition, plan)),
        title=studio_class.title,
        summary=studio_class.summary,
        picture=picture_of(edition, studio_class, here, Shown.BY_ITSELF),
        introduction_html=writer.fill_blocks(studio_class.lesson.introduction),
        format=format_words(plan.format),
        format_key=plan.format.key,
        how=your_part(plan),
        strip=time_strip(plan, clock_from(common_start(plan), edition.locale)),
        time_left=time_left(plan),
        products=tuple(_product(edition, studio_class, made, here) for made in plan.made),
        take_home=studio_class.take_home,
        wear=tuple(sentence(text) for text in studio_class.wear),
        safety=view_safety(edition.studio, plan),
        allergens=allergens_of(edition.studio, [made.batch for made in plan.made]),
        allergens_open=allergens_open_in(edition.studio, [made.batch for made in plan.made]),
        free_from=listed([say(family) for family in studio_class.free_from]),
        for_whom=sentence(studio_class.for_whom),
        youngest=who_may_come(edition, studio_class),
        length=length(studio_class),
        people=say_count("{count}\u00a0student", "{count}\u00a0students", studio_class.seats),
        staff=staff(*plan.staff),
        price=price(edition, studio_class),
        dates=dates_to_book(edition, studio_class),
        booking=booking_view(edition, studio_class, here),
        all_classes=Link(here.link_to(addresses.CATALOGUE), say("All classes")),
        related=related_to(edition, plan, here),
    )
    return Composed(view)


def _product(edition: Edition, studio_class: StudioClass, made: MadeProduct, here: Address) -> ProductView:
    batch = made.batch
    drawn = portrait_of(edition.studio, batch)
    share = listed([_share(edition.studio, batch.product, one) for one in batch.fillings if one.each_student])
    return ProductView(
        name=batch.recipe.name,
        identity=say(batch.product.identity),
        about=batch.recipe.about,
        share=share,
        ingredients=sentence(listed(_plain_names(batch))),
        choices=tuple(_choice(dose.what, dose.offered) for dose in batch.own.doses),
        sheets=_sheets(studio_class, made, here) if studio_class.sheets_are_public else (),
        mark_html=mark(drawn, PAGE_MARK, Look.TINTED),
        mark_read=how_to_read(drawn),
    )


def _share(studio: Studio, product: Product, filling: Filling) -> str:
    containers = containers_of(studio, filling.fill, filling.each_student)
    is_bar = product.made_with_lye and product.declared_by == DeclaredBy.WEIGHT
    if is_bar and filling.each_student == 1:
        share = message("{containers}, poured at {weight}, lighter once cured")
    elif is_bar:
        share = message("{containers}, poured at {weight} each, lighter once cured")
    elif filling.each_student == 1:
        share = message("{containers} of {weight}")
    else:
        share = message("{containers}, {weight} in each")
    return say(share, containers=containers, weight=grams_and_ounces(filling.fill.weight))


def _plain_names(batch: WorkedBatch) -> list[str]:
    """Return the plain names that stand on the list of every variant; what only some have is a choice. The order is that of the list, or
    of the alphabet where none is proven.

    A label says fragrance or flavour for all of them together; here each is named, for those who cannot bear one.
    """
    lists = [variant.ingredients for variant in batch.own.variants]
    shared = [entry for entry in lists[0].entries if all(entry.inci in {other.inci for other in one.entries} for one in lists)]
    names = [f"{within(entry.plain)}{_members(batch, entry.declared_as)}" for entry in shared]
    if all(one.is_proven for one in lists):
        return names
    return sorted(names + [within(name) for name in lists[0].nameless], key=str.casefold)


def _members(batch: WorkedBatch, declared_as: DeclaredAs) -> str:
    scents = (DeclaredAs.FRAGRANCE, DeclaredAs.FLAVOUR)
    if declared_as not in scents:
        return ""
    # Off the lips a flavour is there for its scent, and goes by the same word.
    alike = (declared_as,) if batch.product.contact == Contact.LIPS else scents
    names = [within(line.name) for line in batch.lines if line.ingredient.declared_as in alike]
    return f" ({listed(names)})" if names else ""


def _choice(what: str, options: tuple[str | None, ...]) -> str:
    words = [within(option) if option is not None else none_of(what) for option in options]
    return say("{choice}: {options}", choice=sentence(say(what)), options=listed(words, "or"))


def _sheets(studio_class: StudioClass, made: MadeProduct, here: Address) -> tuple[Link, ...]:
    name = made.batch.recipe.name
    return tuple(
        Link(here.link_to(addresses.public_take_home(studio_class, made.batch.recipe.key, home.size)), f"{name}, {size_words(home.size)}")
        for home in made.home
    )
