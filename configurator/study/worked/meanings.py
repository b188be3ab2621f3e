"""What each letter of the working stands for, in the trade's words."""

from collections.abc import Mapping
from types import MappingProxyType

from configurator.study.worked.terms import Unit

MEANINGS: Mapping[str, str] = MappingProxyType(
    {
        "O": "opening width, from rabbet face to rabbet face",
        "T": "door thickness",
        "g_h": "gap at the hinge side, door closed",
        "g_l": "gap at the lock side, door closed",
        "beta": "bevel of the lock edge, inches per inch of thickness",
        "R": "rabbet depth, from the frame face back to the frame stop",
        "k": "gap between the closed door and the frame stop",
        "s": "frame stop height, how far it stands into the opening",
        "F": "frame face width",
        "D": "jamb depth",
        "p": "frame proud: the frame face ahead of the wall face, below zero behind it",
        "b": "hinge backset on the door, from its stop-side face to the edge of the hinge leaf",
        "b_f": "hinge backset on the frame, from the frame stop to the edge of the hinge leaf",
        "t": "thickness of a hinge leaf",
        "m_d": "depth of the mortise in the door",
        "m_f": "depth of the mortise in the frame",
        "a": "gap between the closed leaves of the hinge",
        "W": "hinge open width",
        "d_b": "diameter of the barrel",
        "i": "inset: the door's face behind the frame face, below zero ahead of it",
        "o": "pin axis off the face of the closed door",
        "y_p": "pin axis off the frame face",
        "x_p": "pin axis across from the rabbet face of the hinge jamb",
        "O_2": "the whole opening of the pair, from rabbet face to rabbet face",
        "w_2": "width of the other leaf",
        "theta": "angle the leaf has turned from closed",
        "alpha": "direction in which the line's normal points, counted from straight across the opening",
        "q": "how far out the line lies along its normal, from the frame's corner",
        "n_pin": "how far out the pin lies along the same normal",
        "u": "distance from the pin to the line",
        "r": "radius of what is round",
        "x_c": "the moving corner, closed: across from the rabbet face",
        "y_c": "the moving corner, closed: off the frame face, below zero behind it",
        "rho_c": "the moving corner's distance from the pin",
        "phi_c": "the moving corner's direction from the pin, door closed",
        "x_s": "the standing corner: across from the rabbet face",
        "y_s": "the standing corner: off the frame face, below zero behind it",
        "rho_s": "the standing corner's distance from the pin",
        "phi_s": "the standing corner's direction from the pin",
        "G": "the least gap",
        "E": "how far the door stands out from the wall face",
        "C": "clear width with the door open 90°",
        "H": "what hardware takes from the clear width",
        "B": "how far the barrel stands out",
        "d": "how deep the closed parts overlap",
        "S": "how far the face of the door, opened flat, stands off the frame face",
        "A_1": "the answer for the first hinge width",
        "A_2": "the answer for the last hinge width",
        "delta": "what the last width changes",
    }
)
UNITS: Mapping[str, Unit] = MappingProxyType({"beta": "plain"})
