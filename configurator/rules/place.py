"""Where an opening's hinges hang."""

from configurator.rules.metal import Place
from configurator.rules.usual import FilledOpening, use_of


def place_of(filled: FilledOpening) -> Place:
    """Return where the opening's hinges hang."""
    use = filled.opening.use
    return Place(
        exterior=use_of(use, "exposure") == "exterior",
        coastal=use_of(use, "coastal"),
        humid=use_of(use, "humid"),
        fire_rated=use_of(use, "fire_rated"),
    )
