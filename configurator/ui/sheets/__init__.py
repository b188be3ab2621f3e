"""Sheets in the window: any page as it will be printed, its export, and printing."""
