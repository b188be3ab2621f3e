"""Loads matplotlib without the help texts it writes for a hundred of its classes; nobody reads them here."""

from matplotlib.artist import Artist

_WRITES_HELP = "_update_set_signature_and_docstring"


def write_no_help() -> None:
    """Spare the classes loaded from now on their help text: a fifth of matplotlib's time to load.

    Only the signature and docstring of each class's `set` go missing. A matplotlib that writes them otherwise
    loads as it always did.
    """
    if hasattr(Artist, _WRITES_HELP):
        setattr(Artist, _WRITES_HELP, classmethod(_nothing))


def _nothing(_: type[Artist]) -> None:
    return None
