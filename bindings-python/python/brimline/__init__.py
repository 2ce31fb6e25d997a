"""The arithmetic of a sealed-gearbox fluid level check: a service sheet and a journal in, an evidenced verdict out.

`evaluate` takes a pack of service sheets and a journal and answers an `Evaluation`; `LevelCheck` does the same live,
entry by entry; a `Record` is what is kept of a job; `work_sheet` and
`bay_card` are pages for people; `estimate` and `invoice` are what it costs by a `PriceList`; `Amount`, `Interval`, `Unit` and `convert` are the quantities it is told in. `brimline.errors` has what
is raised, `brimline.answers` the shapes of the data that is answered.

The calculators are in modules of their own: `torque`, `volume`, `warm_up`, `fluid`, `signal`, `leak` and `money`.

It calculates from what was entered and from the sheet that was selected. It does not replace the vehicle maker's
current procedure or a trained person's judgement.
"""

from . import fluid, leak, money, signal, torque, volume, warm_up
from ._native import (
    Amount,
    Evaluation,
    Fault,
    History,
    Interval,
    KeptJournal,
    LevelCheck,
    Limits,
    Pack,
    PriceList,
    Record,
    Teller,
    Unit,
    bay_card,
    calculate,
    caution,
    convert,
    estimate,
    evaluate,
    evaluate_many,
    invoice,
    lack,
    picture,
    story,
    versions,
    waste,
    work_sheet,
)
from .errors import BrimlineError, DocumentError, InternalError, LimitError, QuantityError

__all__ = [
    "Amount",
    "BrimlineError",
    "DocumentError",
    "Evaluation",
    "Fault",
    "InternalError",
    "History",
    "Interval",
    "KeptJournal",
    "LevelCheck",
    "LimitError",
    "Limits",
    "Pack",
    "PriceList",
    "QuantityError",
    "Record",
    "Teller",
    "Unit",
    "bay_card",
    "calculate",
    "caution",
    "convert",
    "estimate",
    "evaluate",
    "evaluate_many",
    "fluid",
    "invoice",
    "lack",
    "leak",
    "money",
    "picture",
    "signal",
    "story",
    "torque",
    "versions",
    "volume",
    "warm_up",
    "waste",
    "work_sheet",
]
