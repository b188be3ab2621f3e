"""Where a number comes from: its formula in the letters of the geometry, and with this opening's numbers."""
