"""Practice for a trainee: problems with fresh numbers, marked and worked by the program's own engine."""
