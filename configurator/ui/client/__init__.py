"""The client view: typical doors to try, three questions, a picture that moves, a page to print or send.

In: the session. Out: a page of the window. `page` puts it together; `questions` asks, `stepper` for a length,
with `answers` telling what an answer changes; `tried` holds a typical door in a session of its own until it
is kept; `canvas` shows and plays the picture; `sending` prints and writes it; `put_away` takes the whole
screen. What is said and drawn is made in `wording` and `drawing.client`.
"""
