"""The templates of practice, a module for each topic."""
