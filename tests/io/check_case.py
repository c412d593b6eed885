"""Holds case files against the schema, their TOML taken as JSON: check_case.py SCHEMA CASE..."""

import json
import sys
import tomllib

import jsonschema

schema = json.load(open(sys.argv[1], encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
faults = 0
for name in sys.argv[2:]:
    case = tomllib.load(open(name, "rb"))
    for fault in validator.iter_errors(case):
        faults += 1
        print(f"{name}: {fault.json_path}: {fault.message}")
    # A schema that lets everything pass proves nothing: these must be refused.
    for key, value in (("title", ""), ("tension", []), ("surprise", 1), ("pulley", {"end": "tail", "diameter": "2 3 mm"})):
        if validator.is_valid({**case, key: value}):
            faults += 1
            print(f"{name}: the schema lets {key} = {value} pass")
sys.exit(1 if faults else 0)
