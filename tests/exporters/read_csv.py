"""Reads a CSV file with Python's own reader in strict mode and prints it as a JSON array of objects."""
import csv
import json
import sys

with open(sys.argv[1], encoding="utf-8", errors="strict", newline="") as stream:
    raw = stream.read()
if raw.replace("\r\n", "").count("\n") or not raw.endswith("\r\n"):
    sys.exit("lines must end with CR LF")
rows = list(csv.reader(raw.splitlines(keepends=True), strict=True))
if any(len(row) != len(rows[0]) for row in rows):
    sys.exit("rows of different length")
if len(set(rows[0])) != len(rows[0]):
    sys.exit("a heading stands twice")
print(json.dumps([dict(zip(rows[0], row)) for row in rows[1:]]))
