"""Small pictures that explain a word or a hand: a typical opening with one thing in it marked and named.

What comes in: a word of the glossary, or a hand. What goes out: groups of primitives, so many points wide and
high. `scenes` draws a typical opening in plan or elevation with the program's own drawing; `marks_plan` and
`marks_front` say what in a scene each word marks; `word_pictures` letters the mark where nothing lies in the
way; `hand_pictures` draws the four hands as they are seen from outside; `hinge_sample` is a hinge laid flat.
`practice_pictures` draws what stands beside a problem of practice, `marks_practice` what is marked in it, and
`practice_pages` puts a set of problems on paper.

No picture shows an opening of the user's, and nothing here knows a format or the window.
"""
