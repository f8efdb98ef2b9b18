"""Coils, adapters and bolts with pint: the formulas are written with units, so a wrong unit would be refused."""

import json
import math
import sys

import pint

units = pint.UnitRegistry()
question = json.load(sys.stdin)
Q = units.Quantity

coils = []
for ohms, at, to in question["coils"]:
    per_kelvin = Q(0.00393, "1/kelvin")
    above = lambda celsius: (Q(celsius, "degC").to("kelvin") - Q(20, "degC").to("kelvin"))
    there = Q(ohms, "ohm") * (1 + per_kelvin * above(to)) / (1 + per_kelvin * above(at))
    coils.append(there.to("ohm").magnitude)

adapters = []
for torque, unit, tool, adapter, degrees in question["adapters"]:
    length, reach = Q(tool, "inch"), Q(adapter, "inch")
    set_to = Q(torque, unit) * length / (length + reach * math.cos(Q(degrees, "degree").to("radian").magnitude))
    adapters.append(set_to.to("newton * meter").magnitude)

bolts = []
for torque, unit, diameter, pitch, stress in question["bolts"]:
    d, p = Q(diameter, "millimeter"), Q(pitch, "millimeter")
    proof = math.pi / 4 * (d - 0.9382 * p) ** 2 * Q(stress, "megapascal")
    pull = Q(torque, unit) / (0.2 * d)
    bolts.append([proof.to("kilonewton").magnitude, pull.to("kilonewton").magnitude])

json.dump({"coils": coils, "adapters": adapters, "bolts": bolts}, sys.stdout)
