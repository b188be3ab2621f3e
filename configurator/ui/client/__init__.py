"""The client view: three questions, a large picture that moves, three plain sentences, a page to print."""
