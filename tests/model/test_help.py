"""Help says more than the name of its field, and what an empty field means fits into it."""

import pytest

from configurator.model import paths

LONGEST_PLACEHOLDER = 24
"""Characters that an empty field of the form has room for."""
HELPED = [path for path in paths.every_field() if paths.help_of(path)]


@pytest.mark.parametrize("path", HELPED)
def test_help_is_no_repetition_of_the_name(path):
    said = paths.help_of(path)
    assert said.lower() not in (paths.trade_name(path), paths.plain_name(path))
    assert 3 <= len(said) <= 105


@pytest.mark.parametrize("path", [path for path in HELPED if paths.when_left_out(path)])
def test_what_an_empty_field_means_fits_into_it(path):
    assert paths.help_of(path).lower().endswith(f"left out: {paths.when_left_out(path)}".lower())
    if path != "hardware.leaf":  # a choice: its first line says it
        assert len(paths.when_left_out(path)) <= LONGEST_PLACEHOLDER


def test_help_of_a_field_that_says_how_it_is_measured_and_what_it_is_without():
    assert paths.help_of("door.mortise_depth") == (
        "How deep the hinge leaf is let into the door's edge; left out: flush"
    )
    assert paths.help_of("door.weight") == (
        "With its glass and the hardware on it; left out: from the construction"
    )
    assert paths.help_of("use.traffic") == paths.when_left_out("use.traffic") == ""
