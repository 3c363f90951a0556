"""Reckons workbooks anew with LibreOffice, headless, and prints what stands in their cells as JSON.

usage: recalculate.py DIRECTORY FILE... [SHEET!CELL=NUMBER...]
Works in DIRECTORY, with a LibreOffice profile of its own. What the files say their formulas come to is
thrown away first, so that every value printed of a formula is LibreOffice's. Numbers may be put into cells before.
Prints {FILE: {"dates": [...], "core": text, "sheets": {SHEET: [[cell, ...], ...]}, "formulas": count}}.
"""
import csv
import json
import os
import re
import subprocess
import sys
import zipfile

directory = sys.argv[1]
files = [word for word in sys.argv[2:] if "=" not in word]
changes = [re.fullmatch(r"(\w+)!([A-Z]+[0-9]+)=(.*)", word).groups() for word in sys.argv[2:] if "=" in word]


def sheet_names(archive):
    book = archive.read("xl/workbook.xml").decode()
    return re.findall(r'<sheet name="([^"]+)" sheetId="([0-9]+)"', book)


def stripped(name, xml):
    """A sheet without the values of its formulas, and with the numbers that are to stand there."""
    xml, count = re.subn(r"(<f>[^<]*</f>)<v>[^<]*</v>", r"\1", xml)
    for sheet, cell, value in changes:
        if sheet == name:
            xml, done = re.subn(r'<c r="%s"( s="[0-9]+")?(/>|><v>[^<]*</v></c>)' % cell,
                                r'<c r="%s"\1><v>%s</v></c>' % (cell, value), xml)
            if done != 1:
                sys.exit("no cell of a number %s!%s" % (sheet, cell))
    return xml, count


answers = {}
copies = []
for number, file in enumerate(files):
    copy = os.path.join(directory, "copy%d.xlsx" % number)
    formulas = 0
    with zipfile.ZipFile(file) as archive, zipfile.ZipFile(copy, "w") as other:
        if archive.testzip():
            sys.exit("a damaged archive")
        names = {"xl/worksheets/sheet%s.xml" % place: name for name, place in sheet_names(archive)}
        for entry in archive.infolist():
            data = archive.read(entry)
            if entry.filename in names:
                xml, count = stripped(names[entry.filename], data.decode())
                data = xml.encode()
                formulas += count
            other.writestr(entry.filename, data)
        answers[file] = {"dates": sorted({"%04d-%02d-%02d" % entry.date_time[:3] for entry in archive.infolist()}),
                         "core": archive.read("docProps/core.xml").decode(), "sheets": {}, "formulas": formulas}
    copies.append(copy)

profile = "file://" + os.path.join(os.path.abspath(directory), "profile")
# Sheets each into a file, UTF-8, numbers in full.
how = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1"
ran = subprocess.run(["soffice", "-env:UserInstallation=" + profile, "--headless", "--norestore", "--convert-to", how,
                      "--outdir", directory] + copies, capture_output=True, text=True, timeout=300)
if ran.returncode != 0:
    sys.exit("soffice: " + ran.stdout + ran.stderr)
for file, copy in zip(files, copies):
    stem = os.path.splitext(copy)[0]
    with zipfile.ZipFile(copy) as archive:
        for name, _ in sheet_names(archive):
            with open("%s-%s.csv" % (stem, name), encoding="utf-8", newline="") as stream:
                answers[file]["sheets"][name] = list(csv.reader(stream))
print(json.dumps(answers))
