"""Validates JSON files against a schema with Debian's python3-jsonschema, and counts what it read.

usage: validate_json.py SCHEMA FILE...
Prints "FILE: valid" or each fault with its place; ends with 1 if there is one.
"""
import json
import sys

import jsonschema


def no_repeats(pairs):
    keys = [key for key, _ in pairs]
    if len(keys) != len(set(keys)):
        raise ValueError("a key stands twice in one object: %s" % keys)
    return dict(pairs)


def no_constant(word):
    raise ValueError("%s is not JSON" % word)


def read(path):
    with open(path, encoding="utf-8", errors="strict") as stream:
        return json.load(stream, object_pairs_hook=no_repeats, parse_constant=no_constant)


schema = read(sys.argv[1])
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)
faults = 0
for path in sys.argv[2:]:
    found = list(validator.iter_errors(read(path)))
    for fault in found:
        print("%s: /%s: %s" % (path, "/".join(map(str, fault.absolute_path)), fault.message))
    if not found:
        print("%s: valid" % path)
    faults += len(found)
sys.exit(1 if faults else 0)
