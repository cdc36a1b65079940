"""The drawings of questions by their names: a question holds its picture as data, here it is drawn."""

from types import MappingProxyType

from lablib.errors import require_one_of
from lablib.pictures.asked_across import AcrossPicture
from lablib.pictures.asked_base import Asked
from lablib.pictures.asked_blank import BlankPicture
from lablib.pictures.asked_cap import CapPicture
from lablib.pictures.asked_edge_place import EdgePlacePicture
from lablib.pictures.asked_joints import JointsPicture
from lablib.pictures.asked_level import LevelPicture
from lablib.pictures.asked_pair import PairPicture
from lablib.pictures.asked_prism_pair import PrismPairPicture
from lablib.pictures.asked_section import SectionPicture
from lablib.pictures.asked_spoiled import SpoiledLensPicture
from lablib.pictures.asked_ticket import TicketPicture
from lablib.pictures.kept import KeptPicture
from lablib.study.question import Drawing

__all__ = ["DRAWINGS", "Asked", "picture_for"]

DRAWINGS: MappingProxyType[str, type[KeptPicture]] = MappingProxyType(
    {
        "pair": PairPicture,
        "blank": BlankPicture,
        "edge-place": EdgePlacePicture,
        "section": SectionPicture,
        "cap": CapPicture,
        "joints": JointsPicture,
        "level": LevelPicture,
        "across": AcrossPicture,
        "prism-pair": PrismPairPicture,
        "ticket": TicketPicture,
        "spoiled-lens": SpoiledLensPicture,
    }
)


def picture_for(drawing: Drawing, *, dots_per_pixel: float = 1) -> KeptPicture:
    """Return a new picture for a drawing, with nothing of it drawn: its `update` takes `Asked`.

    drawing: which one; its values count from the first `update` on.
    dots_per_pixel: as in `KeptPicture`.

    Raises LabError for a name that is not known.
    """
    require_one_of("drawing", drawing.name, tuple(DRAWINGS))
    return DRAWINGS[drawing.name](dots_per_pixel=dots_per_pixel)
