"""Volume factors by numpy, and the uncertainty of a balance by Monte Carlo (JCGM 101): every limit of error is drawn
from its rectangle, the density once for all amounts."""

import json
import sys

import numpy

question = json.load(sys.stdin)


def factor(density, celsius):
    change = 0.6278 / density * (celsius - 15.0)
    return numpy.exp(-change * (1.0 + 0.8 * change))


factors = [float(factor(density, celsius)) for density, celsius in question["factors"]]

chance = numpy.random.default_rng(20260504)
DRAWS = 1_000_000
answers = []
for case in question["balances"]:
    density = case["density"] + chance.uniform(-1, 1, DRAWS) * case["density_off_by"]
    total = chance.uniform(-1, 1, DRAWS) * case["unseen"]
    for sign, side in ((-1, "drained"), (1, "added")):
        for volume, off_by, celsius, celsius_off_by in case[side]:
            volumes = volume + chance.uniform(-1, 1, DRAWS) * off_by
            temperatures = celsius + chance.uniform(-1, 1, DRAWS) * celsius_off_by
            total = total + sign * volumes * factor(density, temperatures)
    answers.append([float(total.mean()), 2.0 * float(total.std())])
json.dump({"factors": factors, "balances": answers}, sys.stdout)
