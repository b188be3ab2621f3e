"""What is ordered, what an error holds, and by what surface and swing clear hinges are sold."""

from tests.judgement.judgement import Judgement

STEEL = {"construction": "hollow metal, 18 gage"}
INSIDE = {"exposure": "interior", "locked": False, "wanted_angle": 90}
LABEL = INSIDE | {"fire_rated": True}
USUAL = {"door": STEEL, "hand": "LH", "use": INSIDE}
TERMS = "association terminology for builders' hardware, said as quoted in a secondary text"


def held(words, opening, *codes, **changes):
    """An opening that an error keeps out of the order."""
    return Judgement(words, USUAL | opening, findings=codes, held=codes, **changes)


def despite(words, opening, *codes):
    """The same opening when the user has read the error and orders it all the same."""
    accepted = {"order_despite": list(codes)}
    return Judgement(
        words, USUAL | opening | accepted, findings=codes, order={"ordered_despite": {"1": list(codes)}}
    )


def sold(words, mounting, held=(), of="LH", **line):
    """A hinge of another mounting on the usual door; what the geometry has against it is accepted."""
    hinge = {"hinge": {"mounting": mounting}, "order_despite": ["barrel overlaps"]}
    opening = USUAL | {"hand": of} | hinge
    return Judgement(words, opening, findings=held, held=held, order=line, source=TERMS)


def bolts(leaf, hand=None):
    """Keys of a line sold by height whose surface leaf is bolted through."""
    return {"sold_by": "height", "through_bolts": leaf, "clears_at": None, "hand": hand}


BY_SIZE = {"sold_by": "height x width", "through_bolts": None, "clears_at": None, "hand": None}
CLEAR = {"sold_by": "height", "clears_at": "90 to 95 degrees", "through_bolts": None, "hand": "RHR"}
OTHER = {"order_despite": ["fire metal"]}
BRASS = {"use": LABEL, "hinge": {"base_metal": "brass"}}
PLAIN = {"use": LABEL, "hinge": {"bearing": "plain"}}
DARK = {"hinge": {"base_metal": "stainless", "finish_us": "US10B"}}
NARROW = {"size": "2870", "use": INSIDE | {"accessible": True}}
TWO = {"hinge": {"count": 2}}
WIRED = {"hinge": {"electric": 4}}

CASES = (
    Judgement("nothing stands against it", USUAL, order={"quantity": 3, "ordered_despite": {}}),
    Judgement("a label alone holds nothing", USUAL | {"use": LABEL}, order={"quantity": 3, "fire": True}),
    held("brass on a labelled fire door", BRASS, "fire metal"),
    despite("brass on a labelled fire door, ordered all the same", BRASS, "fire metal"),
    held("plain bearings on a labelled fire door", PLAIN, "fire bearing"),
    despite("plain bearings on a labelled fire door, ordered all the same", PLAIN, "fire bearing"),
    held("US10B on stainless steel", DARK, "finish not on metal"),
    despite("US10B on stainless steel, ordered all the same", DARK, "finish not on metal"),
    held("a door too narrow to pass", NARROW, "too narrow to pass"),
    despite("a door too narrow to pass, ordered all the same", NARROW, "too narrow to pass"),
    held("two hinges on a door 83 in high", TWO, "too few hinges"),
    held("wires through a hinge that is not there", WIRED, "electric hinge place"),
    held(
        "one error accepted, and another comes up",
        BRASS | {"hinge": {"base_metal": "brass", "count": 2}, "order_despite": ["fire metal"]},
        "too few hinges",
    ),
    held("a word for an error that is not there releases nothing else", TWO | OTHER, "too few hinges"),
    sold("full mortise is sold by height and width", "full mortise", **BY_SIZE),
    sold("half mortise: the leaf on the frame is bolted through", "half mortise", **bolts("frame leaf")),
    sold("full surface: both leaves are bolted through", "full surface", **bolts("both leaves")),
    sold("half surface: by height, with its hand", "half surface", of="RH", **bolts("door leaf", "RH")),
    sold("swing clear: by height, with its hand", "swing clear", of="RHR", **CLEAR),
    sold("a swing clear hinge whose hand nobody gave", "swing clear", ("hand of the hinge",), of=None),
    sold("a half surface hinge whose hand nobody gave", "half surface", ("hand of the hinge",), of=None),
    sold("half mortise needs no hand", "half mortise", of=None, **bolts("frame leaf")),
)
