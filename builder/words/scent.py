"""A scent by what people call it: lavender, for lavender essential oil; lavande, for huile essentielle de lavande."""

_AFTER = (" essential oil", " absolute", " resinoid", " fragrance oil", " flavour oil", " oil")
_BEFORE = ("huile essentielle de ", "huile essentielle d’", "huile parfumée de ", "huile de ", "huile d’")


def plain_scent(name: str) -> str:
    """Return a name without what sort of oil it is."""
    for added in _AFTER:
        name = name.removesuffix(added)
    for added in _BEFORE:
        name = name[len(added) :] if name.casefold().startswith(added) else name
    return name
