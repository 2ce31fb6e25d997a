"""Compares the totals of random invoices with Python's decimal: invoices.py [COUNT] [SEED]

Prices of up to six decimals times quantities of up to three, two taxes, every rounding, each place, currencies of no to four
decimals. Every disagreement is printed, and the exit code is then 1.
"""

import decimal
import json
import random
import sys
from decimal import Decimal

from brimline import calculate

COUNT = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
SEED = int(sys.argv[2]) if len(sys.argv) > 2 else 20_240_501
MODES = {
    "half_even": decimal.ROUND_HALF_EVEN,
    "half_up": decimal.ROUND_HALF_UP,
    "down": decimal.ROUND_DOWN,
    "up": decimal.ROUND_UP,
    "floor": decimal.ROUND_FLOOR,
    "ceiling": decimal.ROUND_CEILING,
}
DECIMALS = {"EUR": 2, "JPY": 0, "KWD": 3, "CLF": 4}
# Products here have fewer than 28 digits, but this does not rest on it.
decimal.getcontext().prec = 60


def drawn(dice: random.Random, most: int, decimals: int) -> Decimal:
    """A random number; every fourth ends in a five, where ties are."""
    digits = dice.randrange(most)
    if dice.random() < 0.25:
        digits = digits // 10 * 10 + 5
    return Decimal(digits).scaleb(-decimals)


def one(dice: random.Random) -> str | None:
    """One invoice; what differs, if anything does."""
    currency = dice.choice(list(DECIMALS))
    step = Decimal(1).scaleb(-DECIMALS[currency])
    word = dice.choice(list(MODES))

    def rounded(exact: Decimal) -> Decimal:
        return exact.quantize(step, MODES[word])

    place = dice.choice(["line", "document"])
    places = dice.randint(3, 6)
    rates = {id: drawn(dice, 10**places, places) for id in ("goods", "city")}
    lines = []
    for _ in range(dice.randint(1, 5)):
        price, used = drawn(dice, 1_000_000, dice.randint(0, 6)), drawn(dice, 20_000, dice.randint(0, 3))
        lines.append((price, used, rounded(price * used), dice.choice([[], ["goods"], ["city"], ["goods", "city"]])))
    price, used, cost, _ = lines[0]
    ours = calculate("money.cost", {"price": f"{price:f} {currency}", "quantity": f"{used:f} L", "rounding": word})
    if ours != {"value": f"{cost:f} {currency}"}:
        return f"cost: {price} x {used} {currency} {word}: {ours}, decimal {cost}"
    given = {
        "currency": currency,
        "lines": [{"net": f"{cost:f} {currency}", "taxes": taxes} for _, _, cost, taxes in lines],
        "rates": [{"id": id, "rate": f"{rate:f} ratio"} for id, rate in rates.items()],
        "rounding": word,
        "place": place,
    }
    told = calculate("money.totals", given)
    net, taxes = sum((cost for _, _, cost, _ in lines), Decimal(0)), []
    for id, rate in rates.items():
        bearing = [cost for _, _, cost, borne in lines if id in borne]
        if bearing:
            tax = sum(map(rounded, (cost * rate for cost in bearing))) if place == "line" else rounded(sum(bearing) * rate)
            taxes.append((id, sum(bearing), tax))
    total = net + sum((tax for _, _, tax in taxes), Decimal(0))
    expected = (f"{net:f} {currency}", [(id, f"{base:f} {currency}", f"{tax:f} {currency}") for id, base, tax in taxes], f"{total:f} {currency}")
    ours = (told["net"], [(tax["id"], tax["base"], tax["tax"]) for tax in told["taxes"]], told["total"])
    return None if ours == expected else f"totals: {json.dumps(given)}: {ours}, decimal {expected}"


def main() -> int:
    dice = random.Random(SEED)
    differences = [difference for difference in (one(dice) for _ in range(COUNT)) if difference]
    for difference in differences[:20]:
        print(f"invoices: {difference}")
    print(f"invoices: {COUNT} compared with decimal, {len(differences)} differ")
    return 1 if differences else 0


if __name__ == "__main__":
    sys.exit(main())
