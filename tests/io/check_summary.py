"""Holds answers of the program against their schema: check_summary.py SCHEMA ANSWER..."""

import json
import sys

import jsonschema


def refuse(word):
    raise ValueError(f"{word} is no JSON number")


schema = json.load(open(sys.argv[1], encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
faults = 0
for name in sys.argv[2:]:
    summary = json.load(open(name, encoding="utf-8"), parse_constant=refuse)
    for fault in validator.iter_errors(summary):
        faults += 1
        print(f"{name}: {fault.json_path}: {fault.message}")
# A schema that lets everything pass proves nothing: these must be refused.
for key, value in (("verdict", "fine"), ("states", []), ("surprise", 1)):
    if validator.is_valid({**summary, key: value}):
        faults += 1
        print(f"the schema lets {key} = {value} pass")
sys.exit(1 if faults else 0)
