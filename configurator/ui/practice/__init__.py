"""The view of practice: a problem, its answer, its solution with a picture, and how far each person is."""
