"""Which other classes are like one: they make the same kind of product, or are taught in the same way; the soonest first."""

from builder.compose import addresses
from builder.compose.addresses import Address
from builder.compose.edition import Alike, Edition
from builder.compose.teaching.class_facts import by_next_date
from builder.compose.views.frame import Link
from builder.compose.views.site.class_page import Related
from builder.model.teaching.class_plan import ClassPlan
from builder.words.listed import listed
from builder.words.say import say
from builder.words.within import within

_MOST = 3


def related_to(edition: Edition, plan: ClassPlan, here: Address) -> tuple[Related, ...]:
    """Return a few classes with what they have in common with this one."""
    alike = classes_like(edition, plan) if edition.alike is None else edition.alike
    return tuple(Related(Link(here.link_to(addresses.class_page(one.key)), one.title), one.why) for one in alike)


def classes_like(edition: Edition, plan: ClassPlan) -> tuple[Alike, ...]:
    """Find a few classes that are like one; those that make the same kind come before those taught alike."""
    mine = _kinds(plan)
    others = [
        (other, [kind for kind in _kinds(other) if kind in mine])
        for _, other in by_next_date(edition)
        if other.studio_class.key != plan.studio_class.key
    ]
    alike = [(other, say("Also about {what}", what=listed([within(say(kind)) for kind in shared]))) for other, shared in others if shared]
    alike += [(other, say("Taught the same way")) for other, shared in others if not shared and other.format is plan.format]
    return tuple(Alike(other.studio_class.key, other.studio_class.title, why) for other, why in alike[:_MOST])


def _kinds(plan: ClassPlan) -> list[str]:
    """Return what a class makes as labels call it."""
    return list(dict.fromkeys(made.batch.product.identity for made in plan.made))
