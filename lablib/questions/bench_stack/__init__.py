"""Question makers about what holds a lens on its block: weakest link, margin, strongest stack."""

from lablib.questions.bench_stack.choice import StrongestStack
from lablib.questions.bench_stack.link import WeakestLink
from lablib.questions.bench_stack.margin import MarginOfAJob

MAKERS = (WeakestLink(), MarginOfAJob(), StrongestStack())
