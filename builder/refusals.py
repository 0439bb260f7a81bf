"""Why a command was not carried out, in words for the person who typed it."""


class CommandError(Exception):
    """What is wrong with the command itself, in words for the person who typed it."""


class NotDoneError(Exception):
    """What on this machine keeps a right command from being done, in words for the person who typed it."""
