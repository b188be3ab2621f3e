"""Opening Configurator: choose, prove, show and order the hinges of door openings."""
