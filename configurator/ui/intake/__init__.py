"""A door schedule taken into the job, as a page of the window: what is read, what is wrong, what changes."""
