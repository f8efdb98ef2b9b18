"""Check digits and model years by vininfo; nothing for makers that it knows to use neither as the rule has it."""

import json
import sys

import vininfo

answers = []
for text in json.load(sys.stdin):
    vin = vininfo.Vin(text)
    by_rule = getattr(vin.assembler, "uses_sae_checkdigit", True)
    year_at_10 = getattr(vin.assembler, "year_position", 0) == 0
    # It asks for a character of a model year too, as we do.
    fits = bool(vin.verify_checksum()) if by_rule else None
    answers.append([fits, [int(year) for year in vin.years] if year_at_10 else None])
json.dump(answers, sys.stdout)
