"""The order of the whole job, as a page of the window."""
