"""Two hinge widths held against one another, for a client and for whoever has to convince one.

What comes in: a study. What goes out: the client's picture, the client's page and the page of before and
after. `client_picture` puts the picture together for screen, page and moving picture alike: `layout` finds
type size and places, `room` draws the room from above, `lens` the magnifier at the hinge, `marks` all that is
lettered. `client_page` adds what is to be noted on a paper. `overlay` lays two widths over one another, with
what only one of them takes up (`outline_difference`, exact), for `before_after_page`.

All a client reads is worded elsewhere, and the same on screen and paper. Nothing here knows a format or the
window.
"""
