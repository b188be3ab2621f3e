"""Two hinge widths held against one another, for a client and for whoever has to convince one.

What comes in: a study. What goes out: the client's picture on the screen, the client's page and the page of
before and after. `width_pair` picks the two widths, the one recommended and the one beside it; `overlay` lays
them over one another, with what only one of them takes up (`outline_difference`, exact); `client_picture`
stands both side by side in large letters; `client_page` and `client_flow` set what a client reads on a paper.

All a client reads is worded elsewhere, and the same on screen and paper. Nothing here knows a format or the
window.
"""
