"""Where an opening's hinges hang."""

from configurator.rules.metal import Place
from configurator.rules.usual import FilledOpening


def place_of(filled: FilledOpening) -> Place:
    """Return where the opening's hinges hang."""
    use = filled.use
    return Place(
        exterior=use.exposure == "exterior",
        coastal=use.coastal,
        humid=use.humid,
        fire_rated=use.fire_rated,
    )
