"""Faults that judges find in written workbooks and not in what they were made of.

usage: newFaults.py JUDGES BEFORE AFTER

JUDGES holds the published schemas with validate_ooxml.py, and excel_rules.py; BEFORE the workbooks as they
were; AFTER what was written, each named WHAT-NAME. Workbooks of other programs have faults of their own.
"""

import re
import subprocess
import sys
from pathlib import Path

judges, before, after = (Path(one) for one in sys.argv[1:])


def judged(script, *args):
    run = subprocess.run([sys.executable, judges / script, *args], capture_output=True, text=True)
    errors = run.stderr.strip().splitlines()[-1:]
    lines = [line.replace(str(args[-1]), "") for line in run.stdout.splitlines()]
    return {re.sub(r"^: (\S+): \d+ × ", r": \1: ", line) for line in lines if not re.match(r"^: \d+ ", line)} | set(errors)


def faults(workbook):
    return judged("validate_ooxml.py", str(judges), str(workbook)) | judged("excel_rules.py", str(workbook))


def of_itself(line):
    """What the rules say of a whole workbook, which counts what it has."""
    return bool(re.match(r"^: \d+ tables, \d+ faults", line))


known = {}
count = new = 0
for workbook in sorted(after.iterdir()):
    source = before / workbook.name.split("-", 1)[1]
    if source not in known:
        known[source] = faults(source)
    count += 1
    for line in sorted(faults(workbook) - known[source]):
        if not of_itself(line):
            new += 1
            print(f"{workbook.name}{line}")
print(f"{count} written workbooks: {new} new faults")
sys.exit(1 if new else 0)
