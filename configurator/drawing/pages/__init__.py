"""Sheets to hand on: details at a true scale on a paper of a known size, with their title block."""
