"""Surfaces by infrared: Planck's law from scipy's constants, integrated by quad over 8 to 14 µm, turned back by brentq."""

import json
import sys

import numpy
from scipy.constants import c, h, k
from scipy.integrate import quad
from scipy.optimize import brentq


def radiance(celsius):
    kelvins = celsius + 273.15

    def planck(wave):
        return 2 * h * c**2 / wave**5 / numpy.expm1(h * c / (wave * k * kelvins))

    return quad(planck, 8e-6, 14e-6, epsabs=0, epsrel=1e-12)[0]


answers = []
for shows, set_to, emissivity, ambient in json.load(sys.stdin):
    wanted = radiance(ambient) + set_to * (radiance(shows) - radiance(ambient)) / emissivity
    answers.append(float(brentq(lambda t: radiance(t) - wanted, -60, 1100, xtol=1e-11)))
json.dump(answers, sys.stdout)
