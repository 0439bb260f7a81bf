"""What a reader raises when a piece of text cannot be read; the caller knows the place and makes the finding."""


class TextError(ValueError):
    """A text that cannot be read: the name of the finding, what is wrong, and what to write instead."""

    def __init__(self, name: str, wrong: str, remedy: str, at: tuple[str | int, ...] = (), *, at_key: bool = False) -> None:
        """Keep the parts of the finding to be; `at` leads from the value to the piece of it that is wrong (`at_key`: to the key of it)."""
        super().__init__(wrong)
        self.name = name
        self.wrong = wrong
        self.remedy = remedy
        self.at = at
        self.at_key = at_key


class AmountError(TextError):
    """A number or an amount that cannot be read."""


def quoted(text: str, longest: int = 60) -> str:
    """Return a piece of the studio's text in quotation marks, cut where it is very long."""
    flat = " ".join(text.split())
    return f'"{flat}"' if len(flat) <= longest else f'"{flat[: longest - 1]}…"'
