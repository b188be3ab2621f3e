"""What every page of the window is made with, and that knows no page: long work so far."""
