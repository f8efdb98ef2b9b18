"""Check digits and model years by vininfo."""

import json
import sys

import vininfo

answers = []
for text in json.load(sys.stdin):
    vin = vininfo.Vin(text)
    answers.append([bool(vin.verify_checksum()), [int(year) for year in vin.years]])
json.dump(answers, sys.stdout)
