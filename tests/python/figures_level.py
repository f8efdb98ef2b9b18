"""Bands of a level chart by numpy.interp, and rises for each litre by numpy.linalg.lstsq and scipy's curve_fit."""

import json
import sys

import numpy
import scipy.optimize
import scipy.stats

question = json.load(sys.stdin)
rows = numpy.array(question["rows"])
bands = [[float(numpy.interp(at, rows[:, 0], rows[:, mark])) for mark in (1, 2)] for at in question["at"]]

gains = []
for additions in question["additions"]:
    volume, rise = numpy.array(additions).T
    slope = numpy.linalg.lstsq(volume[:, None], rise, rcond=None)[0][0]
    _, covariance = scipy.optimize.curve_fit(lambda x, a: a * x, volume, rise, p0=[1.0])
    error = float(numpy.sqrt(covariance[0, 0]))
    gains.append([float(slope), error, error * float(scipy.stats.t.ppf(0.975, len(volume) - 1))])

students = [float(scipy.stats.t.ppf(0.975, freedom)) for freedom in question["freedoms"]]
json.dump({"bands": bands, "gains": gains, "students": students}, sys.stdout)
