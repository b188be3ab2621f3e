"""What a terminal is shown of a study."""

from configurator.export.table_text import job_as_text
from configurator.rules.finding import Finding


def test_a_source_that_is_its_own_mark_is_said_once():
    practice = "common practice, no source"
    found = Finding("usual", "note", "Take the usual.", practice, "common practice")
    assert job_as_text((found,)).endswith(f"note: Take the usual. [{practice}]\n")


def test_a_source_beside_its_mark_says_both():
    found = Finding("plan", "note", "It fits.", "worked out from the plan", "derived")
    assert "[worked out from the plan (derived here)]" in job_as_text((found,))
