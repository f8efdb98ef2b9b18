"""Newton's law by scipy's curve_fit, with the prediction interval of a new reading by its covariance, and the time at
which the curve and the interval's ends pass a limit by brentq."""

import json
import sys

import numpy
import scipy.optimize
import scipy.stats

answers = []
for case in json.load(sys.stdin):
    minutes, excess = numpy.array(case["points"]).T
    limit = case["limit"]

    def curve(t, start, rate):
        return start * numpy.exp(-rate * t)

    guess = [excess[0], numpy.log(excess[0] / excess[-1]) / minutes[-1]]
    (start, rate), covariance = scipy.optimize.curve_fit(
        curve, minutes, excess, p0=guess, xtol=1e-14, ftol=1e-14, gtol=1e-14
    )
    freedom = len(minutes) - 2
    variance = float(((excess - curve(minutes, start, rate)) ** 2).sum() / freedom)
    student = scipy.stats.t.ppf(0.975, freedom)

    def upper(t, width):
        slope = numpy.array([numpy.exp(-rate * t), -start * t * numpy.exp(-rate * t)])
        return curve(t, start, rate) + width * student * numpy.sqrt(variance + slope @ covariance @ slope) - limit

    def passes(width):
        # The last change of sign within a day, on a grid of half a minute.
        grid = numpy.arange(0, 1440.5, 0.5)
        over = numpy.array([upper(t, width) > 0 for t in grid])
        if over[-1]:
            return None
        if not over.any():
            return 0.0
        last = int(numpy.nonzero(over)[0][-1])
        return float(scipy.optimize.brentq(upper, grid[last], grid[last + 1], args=(width,), xtol=1e-12))

    answers.append(
        {
            "start": float(start),
            "rate": float(rate),
            "covariance": [float(covariance[0, 0]), float(covariance[0, 1]), float(covariance[1, 1])],
            "passes": [passes(0.0), passes(1.0), passes(-1.0)],
        }
    )
json.dump(answers, sys.stdout)
