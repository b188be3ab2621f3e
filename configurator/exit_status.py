"""What the command line says by its exit status."""

DONE = 0
"""All evaluated."""
FOUND_ERRORS = 1
"""A finding of severity error, where strictness was asked for."""
REFUSED = 2
"""The input was refused: nothing on standard output, one line a fault on standard error."""
NOT_WRITTEN = 3
"""The output could not be written."""
