"""Help stands for fields that exist, and says more than their names."""

import pytest

from configurator.model.help_texts import HELP, LEFT_OUT
from configurator.ui.state import paths

LONGEST_PLACEHOLDER = 24
"""Characters that an empty field of the form has room for."""


@pytest.mark.parametrize("path", HELP)
def test_every_help_is_about_a_field_and_no_repetition_of_its_name(path):
    assert HELP[path] not in (paths.trade_name(path), paths.plain_name(path))
    assert 3 <= len(HELP[path]) <= 105


@pytest.mark.parametrize("path", [path for path in HELP if LEFT_OUT in HELP[path]])
def test_what_an_empty_field_means_fits_into_it(path):
    if path != "hardware.leaf":  # a choice: its first line says it
        assert 0 < len(paths.when_left_out(path)) <= LONGEST_PLACEHOLDER
