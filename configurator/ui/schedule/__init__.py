"""The schedule in the window: every opening of the job in one table, found, sorted, changed, copied."""
