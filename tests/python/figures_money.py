"""Amounts and estimates by Python's decimal, each line rounded half up to the hundredth."""

import json
import sys
from decimal import ROUND_HALF_UP, Decimal

question = json.load(sys.stdin)
cent = Decimal("0.01")


def lines(priced):
    return [(Decimal(quantity) * Decimal(price)).quantize(cent, ROUND_HALF_UP) for quantity, price in priced]


def answer(estimate):
    comes_to = lines(estimate["lines"])
    total = sum(comes_to, Decimal(0))
    limit = total + sum((Decimal(amount) for amount in estimate["may_turn_up"]), Decimal(0))
    return {"lines": [str(one) for one in comes_to], "sum": str(total.quantize(cent)), "limit": str(limit.quantize(cent))}


json.dump([answer(estimate) for estimate in question], sys.stdout)
