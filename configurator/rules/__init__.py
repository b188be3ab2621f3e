"""Selection rules, one pure function each, every one naming its source."""
