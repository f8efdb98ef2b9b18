"""Tenths of an hour by Python's decimal, half up; sums of time by datetime."""

import json
import sys
from datetime import timedelta
from decimal import ROUND_HALF_UP, Decimal

question = json.load(sys.stdin)
tenths = [int((Decimal(ms) / 360_000).quantize(Decimal(1), ROUND_HALF_UP)) for ms in question["ms"]]
sums = [int(sum((timedelta(milliseconds=ms) for ms in parts), timedelta()) / timedelta(milliseconds=1)) for parts in question["parts"]]
json.dump({"tenths": tenths, "sums": sums}, sys.stdout)
