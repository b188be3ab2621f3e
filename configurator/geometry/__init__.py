"""Exact plan geometry of a hung door: pure functions on numbers and small frozen records."""
