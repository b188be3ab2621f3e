"""Practice for a trainee: problems with fresh numbers, marked and worked by the program's own engine.

In: a number, and what somebody types. Out: a problem with its question, picture, hint, steps and slips;
whether an answer is right, and how a wrong one came about; how far each person is. Knows nothing of drawing
and Qt: a picture is only named here (`problem.Picture`), and drawn by `drawing.pictures.practice_pictures`.

`topics/` has a module for each topic, each a list of templates. `problem` says what a problem is, and poses
one from a template and a seed. `answers` are what is measured or counted, `written` what is written: sizes,
options, codes. `course` puts the templates in order and numbers problems. `progress` keeps what a person
knows and says what comes next, `exercise` is one sitting. `leaves` draws openings at random, `words` writes
numbers.
"""
