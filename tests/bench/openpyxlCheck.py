# The peers of bench:check: scripts that read the record tables with openpyxl and compute every row again
# (insulation corrected by the table, contact resistance to 20 degrees and its spread, verdicts) and
# compare with what is stored.
#
# `whole`: what the check does, so that it finds the same things: tables by their definitions, formulas
# and cached values both (openpyxl loads a workbook for one of the two at a time).
# `values`: fixed sheets, cached values alone, openpyxl's read-only mode: less than the check does.
import json
import math
import resource
import sys
import time

import openpyxl
from openpyxl.utils import range_boundaries

T = [-10, -5, 0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 105]
K = [0.25, 0.32, 0.4, 0.5, 0.63, 0.81, 1, 1.25, 1.58, 2, 2.5, 3.15, 3.98, 5, 6.3, 7.9, 10, 12.6, 15.8, 20, 25.2, 31.6, 40, 50.4]


def factor(t):
    i = min(sum(1 for x in T if x <= t) - 1, len(T) - 2)
    share = (t - T[i]) / (T[i + 1] - T[i])
    return math.exp(math.log(K[i]) + (math.log(K[i + 1]) - math.log(K[i])) * share)


def values(file):
    book = openpyxl.load_workbook(file, data_only=True, read_only=True)

    def rows(sheet):
        body = book[sheet].iter_rows(min_row=4, values_only=True)
        headers = next(body)
        for cells in body:
            yield dict(zip(headers, cells))

    return rows("Insulation"), rows("Withstand"), rows("Contacts")


def whole(file):
    book = openpyxl.load_workbook(file, data_only=True)
    formulas = openpyxl.load_workbook(file)

    def rows(name):
        for sheet in book:
            if name in sheet.tables:
                left, top, right, bottom = range_boundaries(sheet.tables[name].ref)
                area = dict(min_row=top, max_row=bottom, min_col=left, max_col=right, values_only=True)
                body = sheet.iter_rows(**area)
                stored = formulas[sheet.title].iter_rows(**area)
                headers = next(body)
                next(stored)
                for cells, texts in zip(body, stored):
                    row = dict(zip(headers, cells))
                    row["typed over"] = not str(texts[headers.index("Result")]).startswith("=")
                    yield row

    return rows("GearInsulation"), rows("GearWithstand"), rows("GearContact")


start = time.perf_counter()
insulation, withstand, contact = {"values": values, "whole": whole}[sys.argv[2]](sys.argv[1])
count = differences = 0


def compare(stored, computed):
    global differences
    if isinstance(stored, (int, float)) and isinstance(computed, (int, float)):
        if abs(stored - computed) > 1e-9 * max(abs(stored), abs(computed)):
            differences += 1
    elif stored != computed:
        differences += 1


for row in insulation:
    count += 1
    corrected = row["R 1 min MΩ"] * factor(row["Temperature °C"])
    compare(row["R corrected MΩ"], corrected)
    compare(row["Result"], "Pass" if corrected >= row["Minimum MΩ"] else "Fail")
for row in withstand:
    count += 1
    good = row["Discharge"] == "No" and row["Applied kV"] >= 0.99 * row["Required kV"] and row["Duration s"] >= row["Required s"]
    compare(row["Result"], "Pass" if good else "Inconclusive")
lowest = {}
contacts = list(contact)
for row in contacts:
    count += 1
    row["computed"] = row["R µΩ"] * 254.5 / (234.5 + row["Conductor °C"])
    compare(row["R at 20 °C µΩ"], row["computed"])
    key = (row["Panel"], row["Part"])
    lowest[key] = min(lowest.get(key, math.inf), row["computed"])
for row in contacts:
    compare(row["Above lowest"], row["computed"] / lowest[(row["Panel"], row["Part"])] - 1)
    compare(row["Result"], "Pass" if row["computed"] <= row["Maximum µΩ"] else "Fail")
print(
    json.dumps(
        {
            "seconds": time.perf_counter() - start,
            "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
            "said": f"{count} rows, {differences} differences",
        }
    )
)
