"""Answers vectors through the public package: answer_vectors.py REQUESTS ANSWERS

A request file has the number of requests; then for each its operation, the number of its arguments, and each
argument's length in bytes with the argument after it; every item ends in a line feed. An answer file has each
answer's length in bytes with the answer after it.
"""

import functools
import json
import keyword
import re
import struct
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NoReturn

import brimline
from brimline import (
    Amount,
    BrimlineError,
    Fault,
    History,
    Interval,
    LevelCheck,
    Limits,
    Pack,
    PriceList,
    Record,
    Teller,
    Unit,
    calculate,
    convert,
    estimate,
    evaluate,
    invoice,
    records,
    waste,
)


def requests(data: bytes) -> Iterator[tuple[str, list[str]]]:
    place = 0

    def line() -> str:
        nonlocal place
        start, place = place, data.index(b"\n", place) + 1
        return data[start : place - 1].decode()

    def text() -> str:
        nonlocal place
        length = int(line())
        start, place = place, place + length + 1
        return data[start : place - 1].decode()

    for _ in range(int(line())):
        op = line()
        yield op, [text() for _ in range(int(line()))]


def written(answer: Any) -> str:
    return json.dumps(answer, ensure_ascii=False, separators=(",", ":"))


def pack_of(text: str, limits: str = "") -> Pack:
    return Pack.from_json(text, limits=limits_of(limits)) if text else Pack.embedded()


def limits_of(text: str) -> Limits:
    return Limits(**json.loads(text or "{}"))


def amount(text: str, kind: str, measures: str) -> Any:
    read = Amount.parse(text, kind=kind or None, measures=measures or None)  # type: ignore[arg-type]
    unit = read.unit.symbol
    return {"text": str(read), "mantissa": read.mantissa, "decimals": read.decimals, "unit": unit}


def unit(text: str, kind: str, measures: str) -> Any:
    read = Unit.parse(text, kind=kind or None, measures=measures or None)  # type: ignore[arg-type]
    return {
        "symbol": read.symbol,
        "kind": read.kind,
        "code": read.code,
        "ucum": read.ucum,
        "rec20": read.rec20,
    }


def order(a: Amount, b: Amount) -> str:
    return "less" if a < b else "greater" if a > b else "equal"


def result(pack: str, journal: str, flip: str, why_not: str, limits: str) -> str:
    given = limits_of(limits)
    read = pack_of(pack, limits)
    asked: Any = why_not or None
    return evaluate(read, journal, flip=flip == "true", why_not=asked, limits=given).to_json()


def described(pack: Pack) -> Any:
    return {"id": pack.id, "version": pack.version, "title": pack.title, "digest": pack.digest}


def sealed(pack: str, journal: str, limits: str = "") -> Record:
    return Record.seal(pack_of(pack, limits), journal, limits=limits_of(limits))


def as_sealed(json: str, limits: str) -> Any:
    record = Record.reopen(json, limits=limits_of(limits))
    return {
        "as_found": str(record.as_found),
        "began": record.began,
        "by_sheet": record.leak["by_sheet"],
        "certainty": record.leak["certainty"],
        "digest": record.digest,
        "ended": record.ended,
        "net_added": str(record.net_added),
        "now": str(record.now),
        "pack": {name: record.pack[name] for name in ("digest", "id", "version")},
        "procedure": record.procedure["id"],
        "rules": record.rules,
        "verdict": record.verdict,
    }


def reevaluated(pack: str, journal: str, given: str, rules: Any) -> Any:
    return {"differences": sealed(pack, journal).reevaluate(pack_of(given), rules)}


def many(pack: str, journals: str) -> list[Record]:
    read = pack_of(pack)
    return [Record.seal(read, journal) for journal in journals.splitlines()]


def came_back(comebacks: Any, pack: str, journals: str, rules: str) -> Any:
    return comebacks(many(pack, journals), rules=rules or None)


def followed(follow_up: Any, pack: str, journals: str, rules: str) -> Any:
    given = many(pack, journals)
    return follow_up(given[-1], history=History.of(given), rules=rules or None)


def prices_of(text: str) -> PriceList:
    return PriceList.from_json(text) if text else PriceList.embedded()


def listed(text: str) -> Any:
    prices = prices_of(text)
    return {
        "currency": prices.currency,
        "digest": prices.digest,
        "id": prices.id,
        "version": prices.version,
    }


def check_of(pack: str, journal: str) -> LevelCheck:
    return LevelCheck.replay(pack_of(pack), journal)


def audited(audit: Any, prices: str, pack: str, journals: str, billed: str) -> Any:
    stated = [one or None for one in billed.split("\n")] if journals else []
    return audit(prices_of(prices), pack_of(pack), many(pack, journals), billed=stated)


def counted(call: Any, prices: str, pack: str, journal: str, besides: str) -> Any:
    """An estimate or an invoice, with what goes in besides."""
    return call(prices_of(prices), check_of(pack, journal), besides or None)


def common(a: str, b: str) -> Any:
    both = Interval.parse(a).intersect(Interval.parse(b))
    return {"text": None if both is None else str(both)}


def plain(answer: Any) -> Any:
    """What stands for an answer in JSON."""
    if isinstance(answer, Interval):
        return [plain(answer.lo), plain(answer.hi)]
    return str(answer) if isinstance(answer, Amount) else answer


def without_place(fault: Fault) -> Any:
    return fault.kind, fault.path, fault.got, fault.allowed, fault.hint


def refused(function: str, arguments: str) -> NoReturn:
    """What the one call for all calculators says against these arguments, with its place in the text."""
    answer = calculate(function, arguments)
    raise AssertionError(f"{function} by its own name refuses what is answered here: {answer}")


def by_name(function: str, named: dict[str, Any]) -> Any:
    """A calculator's answer by its own name."""
    room, _, name = function.partition(".")
    call: Any = getattr(getattr(brimline, room, None), name, None)
    return call(**{f"{key}_" if keyword.iskeyword(key) else key: value for key, value in named.items()})


def asked(function: str, arguments: str) -> Any:
    """A calculator's answer by its own name, refusals with their places in the text."""
    named = json.loads(arguments)
    if None in named.values():  # None is what is left out, and null in the text is no such thing
        refused(function, arguments)
    try:
        answer = by_name(function, named)
    except TypeError:  # Python's own refusal, as of an argument that is missing
        refused(function, arguments)
    except BrimlineError as error:
        # By name the first fault is told, and there is no text it has a place in.
        try:
            refused(function, arguments)
        except BrimlineError as told:
            same = without_place(error.faults[0]) in map(without_place, told.faults)
            raise told if same else error from None
    return answer if isinstance(answer, dict) else {"value": plain(answer)}


def told(messages: str, profile: str, pack: str, journal: str) -> Any:
    teller, read = Teller(messages or None, profile or None), pack_of(pack)
    evaluation = evaluate(read, journal, flip=True)
    return {
        "answered": teller.answered("leak", "response", "report"),
        "caution": teller.caution("hot_fluid"),
        "departure": teller.departure(evaluation.as_found),
        "lacks": [teller.lack(own["id"]) for own in Record.seal(read, journal).evidence()],
        "lint": teller.lint(read),
        "reasons": teller.sentences(evaluation)["because"],
        "story": teller.story(read, journal).splitlines(),
        "text": teller.text(evaluation).splitlines(),
        "verdict": teller.verdict(evaluation.verdict),
    }


def told_of(op: str, messages: str, profile: str, *rest: str) -> Any:
    """What the operation of the same name without `told_` answers, in lines."""
    teller = Teller(messages or None, profile or None)
    return {"text": TOLD[op](teller, *rest).splitlines()}


def page(which: str, pack: str, journal: str, particulars: str, medium: str) -> Any:
    read, given, written_as = pack_of(pack), particulars or None, medium or "html"
    if which == "work_sheet":
        told: Any = brimline.work_sheet(read, journal, given, medium=written_as)  # type: ignore[arg-type]
    elif which == "bay_card":
        told = brimline.bay_card(read, journal, given, medium=written_as)  # type: ignore[arg-type]
    else:
        told = brimline.picture(read, journal, which, given) or ""  # type: ignore[arg-type]
    return {"pieces": [piece[:-1] for piece in re.findall(r"[^\n>]*[\n>]", told)]}


TOLD: dict[str, Any] = {
    "told_estimate": lambda teller, *rest: counted(teller.estimate, *rest),
    "told_invoice": lambda teller, *rest: counted(teller.invoice, *rest),
    "told_history": lambda teller, pack, journals: teller.history(History.of(many(pack, journals))),
    "told_comebacks": lambda teller, *rest: came_back(teller.comebacks, *rest),
    "told_follow_up": lambda teller, *rest: followed(teller.follow_up, *rest),
    "told_shadow": lambda teller, pack, jobs: teller.shadow(pack_of(pack), jobs.splitlines()),
    "told_audit": lambda teller, *rest: audited(teller.audit, *rest),
}
ANSWERS: dict[str, Any] = {
    **{op: functools.partial(told_of, op) for op in TOLD},
    "page": page,
    "told": told,
    "convert": lambda number, a, b: {"bits": struct.pack(">d", convert(float(number), a, b)).hex()},
    "unit": unit,
    "amount": amount,
    "amount_to": lambda a, unit, places, rounding: {"text": str(Amount(a).to(unit, int(places), rounding))},
    "amount_add": lambda a, b: {"text": str(Amount(a) + Amount(b))},
    "amount_sub": lambda a, b: {"text": str(Amount(a) - Amount(b))},
    "amount_times": lambda a, factor: {"text": str(Amount(a) * int(factor))},
    "amount_compare": lambda a, b: {"order": order(Amount(a), Amount(b))},
    "interval_intersect": common,
    "pack": lambda pack, limits: described(pack_of(pack, limits)),
    "pack_lint": lambda pack: {"findings": pack_of(pack).lint()},
    "pack_compare": lambda pack, procedure, a, b: {
        "differences": pack_of(pack).compare(procedure, int(a), int(b))
    },
    "calculate": asked,
    "history": lambda pack, journals: History.of(many(pack, journals)).to_dict(),
    "audit": functools.partial(audited, records.audit),
    "comebacks": functools.partial(came_back, records.comebacks),
    "follow_up": functools.partial(followed, records.follow_up),
    "shadow": lambda pack, jobs: records.shadow(pack_of(pack), jobs.splitlines()),
    "reopen": as_sealed,
    "price_list": listed,
    "estimate": functools.partial(counted, estimate),
    "invoice": functools.partial(counted, invoice),
    "waste": lambda pack, journal: waste(check_of(pack, journal)),
    "evidence": lambda pack, journal: {"lacks": sealed(pack, journal).evidence()},
    "reevaluate": reevaluated,
    "pack_select": lambda pack, vehicle, unit, date: pack_of(pack).select(
        vehicle=vehicle or None, unit=unit or None, day=date or None
    ),
}
DOCUMENTS: dict[str, Any] = {
    "messages": lambda messages, limits: Teller(messages, limits=limits_of(limits)).messages_json(),
    "profile": lambda profile: Teller(profile=profile).profile_json(),
    "evaluate": result,
    "seal": lambda pack, journal, limits: sealed(pack, journal, limits).to_json(),
    "live": lambda pack, journal: LevelCheck.replay(pack_of(pack), journal).evaluation().to_json(),
}


def answer(op: str, arguments: list[str]) -> str:
    try:
        if op in DOCUMENTS:
            return str(DOCUMENTS[op](*arguments))
        return written(ANSWERS[op](*arguments))
    except BrimlineError as error:
        return f'{{"error":{error.to_json()}}}'


def main() -> None:
    asked, answered = map(Path, sys.argv[1:])
    with answered.open("wb") as out:
        for op, arguments in requests(asked.read_bytes()):
            text = answer(op, arguments).encode()
            out.write(b"%d\n%s\n" % (len(text), text))


if __name__ == "__main__":
    main()
