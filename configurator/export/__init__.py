"""One file a format: a drawing or a table becomes a figure, a page or a file."""
