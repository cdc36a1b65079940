"""Question makers about bench care: supplies, log and chart, what counts show, morning, hygiene."""

from lablib.questions.bench_care.causes import CausesByMoney
from lablib.questions.bench_care.chart_limit import ChartLimit
from lablib.questions.bench_care.difference import DifferenceShown
from lablib.questions.bench_care.hygiene import BenchHygiene
from lablib.questions.bench_care.morning import MorningCheck
from lablib.questions.bench_care.none_spoiled import NoneInSoMany
from lablib.questions.bench_care.ordering import OrderAt, OrderAtMost
from lablib.questions.bench_care.pads_last import PadsLast
from lablib.questions.bench_care.spoiled_share import SpoiledShare
from lablib.questions.bench_care.trial import TrialThatShows

MAKERS = (
    MorningCheck(),
    BenchHygiene(),
    PadsLast(),
    OrderAt(),
    OrderAtMost(),
    SpoiledShare(),
    ChartLimit(),
    NoneInSoMany(),
    DifferenceShown(),
    TrialThatShows(),
    CausesByMoney(),
)
