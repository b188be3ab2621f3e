"""Pictures and documents become files, figures and plain text: one painter or one writer a format.

What comes in: pages, sheets and groups of primitives from `drawing`; documents from `order`; studies, for the
terminal. What goes out: bytes, files put there whole or not at all, matplotlib figures, lines of text.

`painting` walks the primitives once, and cuts off, hatches and places; each format has a painter that draws
what the walk hands it: `batch` (matplotlib), `pdf`, `svg`, `dxf`, and the one for Qt in `ui`.
`pages` and `document` choose the format by the ending of a file. Every library is loaded on first use.

Nothing here computes or words anything, and nothing knows the window.
"""


def load_matplotlib_quickly() -> None:
    """Spare the classes of matplotlib loaded from now on their help texts: a quarter of its time to load.

    Only the signature and docstring of each class's `set` go missing, and the lists of properties in other
    docstrings; nobody reads them here. A matplotlib that writes them otherwise loads as it always did. Raises
    ImportError where there is none.
    """
    from matplotlib import artist

    writes_help = "_update_set_signature_and_docstring"
    if hasattr(artist.Artist, writes_help):
        setattr(artist.Artist, writes_help, classmethod(lambda _: None))
    if hasattr(artist, "kwdoc"):
        artist.kwdoc = lambda artist: ""  # noqa: ARG005 (the library's own name for it)
