"""A whole job counted into order lines, priced, frozen as revisions, and laid out as schedules."""
