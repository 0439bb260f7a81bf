"""Where a figure or a rule stands, in the words of findings and sheets alike."""

from builder.model.recipe.figure import Figure, Known, Source, SourceKind

PRACTICE = "common practice, no source"
FROM_MEMORY = "from memory, to be looked up again"


def from_memory(known: Known, before: str = "; ") -> str:
    """Return for what is known from memory that it has to be looked up again; empty for anything else."""
    return f"{before}{FROM_MEMORY}" if known is Known.MEMORY else ""


def basis(source: Source, at: str, known: Known) -> str:
    """Return in words where something stands, or that it is common practice, and that it must be looked up where known from memory."""
    return f"{PRACTICE}: {at}" if source.kind is SourceKind.PRACTICE else f"{source.title}, {at}{from_memory(known)}"


def basis_of(figure: Figure) -> str:
    """Return in words where a figure stands."""
    return basis(figure.source, figure.at, figure.known)
