"""Questions about the wearing position: tilt, wrap, vertex, compensated lenses and best form."""

from lablib.questions.wearing.best_form import BestForm
from lablib.questions.wearing.centre_height import CentreHeight
from lablib.questions.wearing.compensated_order import CompensatedOrder
from lablib.questions.wearing.effect import TiltEffect
from lablib.questions.wearing.off_check_value import OffTheCheckValue
from lablib.questions.wearing.power_factor import PowerFactorWorn
from lablib.questions.wearing.tilt_does import TiltDoes
from lablib.questions.wearing.verdict import CheckValueVerdict
from lablib.questions.wearing.vertex_way import VertexWay
from lablib.questions.wearing.where_read import WhereItIsRead

MAKERS = (
    CentreHeight(),
    TiltDoes(),
    TiltEffect(),
    CompensatedOrder(),
    OffTheCheckValue(),
    CheckValueVerdict(),
    WhereItIsRead(),
    VertexWay(),
    PowerFactorWorn(),
    BestForm(),
)
