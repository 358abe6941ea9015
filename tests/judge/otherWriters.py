# Workbooks as another program writes them, and what openpyxl reads in a workbook.
#
#   otherWriters.py odd EPOCH FILE     every oddity that a workbook may have, dates from 1900 or 1904
#   otherWriters.py again FILE OUT     a workbook opened and saved again
#   otherWriters.py filled FILE OUT    the same, contact resistances corrected by a formula of one's own that
#                                      is filled down, with its first row's addresses alone
#   otherWriters.py read FILE          JSON: sheets, hidden rows, values and formulas cell by cell
import datetime
import json
import sys

import openpyxl
from openpyxl.styles import Font, PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.utils.datetime import CALENDAR_MAC_1904, to_excel
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.table import Table


def odd(epoch, file):
    book = openpyxl.Workbook()
    if epoch == "1904":
        book.epoch = CALENDAR_MAC_1904
    sheet = book.active
    sheet.title = "Joe's sheet & more"
    sheet.append(["what", "one", "two", "three"])
    rows = [
        ["number", 1, -2.5, 1.25e-7],
        ["text", "plain", " blanks at both ends ", "Ω µ ° <&> \"quoted\""],
        ["text over lines", "first\nsecond", "tab\there", None],
        ["number as text", "42", "0042", "1,5"],
        ["boolean", True, False, None],
        ["blank", None, "", None],
        ["date", datetime.datetime(2026, 11, 3), datetime.datetime(2024, 2, 29), datetime.date(1999, 12, 31)],
        ["day and time", datetime.datetime(2026, 11, 3, 6, 30), datetime.datetime(2026, 11, 3, 23, 59, 59), None],
        ["time of day", datetime.time(6, 0), datetime.time(18, 45), datetime.timedelta(hours=30)],
        ["error", "#N/A", "#DIV/0!", "#REF!"],
        ["percent", 0.125, 1, -0.03],
        ["own format", 5200, 12.5, 7],
        ["styled and empty", None, None, None],
        ["merged", "over two", None, "beside"],
    ]
    for row in rows:
        sheet.append(row)
    at = {row[0]: number for number, row in enumerate(rows, 2)}
    for cell in sheet[at["number as text"]][1:]:
        cell.data_type = "s"
        cell.number_format = "@"
    for cell in sheet[at["percent"]][1:]:
        cell.number_format = "0.0%"
    for cell, form in zip(sheet[at["own format"]][1:], ['#,##0" MΩ"', '[>10]0.0"s";0.00', '0_)"day";(0)']):
        cell.number_format = form
    for cell in sheet[at["styled and empty"]][1:]:
        cell.fill = PatternFill("solid", fgColor="FFEEAA")
        cell.font = Font(bold=True)
    sheet.merge_cells(start_row=at["merged"], start_column=2, end_row=at["merged"], end_column=3)
    # Below, so that the rows above stay where they are: days of the first months of 1900, as serial numbers.
    if epoch == "1900":
        for serial in [1, 31, 59, 61, 45.5]:
            sheet.append(["serial day", serial])
            sheet.cell(sheet.max_row, 2).number_format = "yyyy-mm-dd"
    formulas = book.create_sheet("Formulas")
    formulas.append(["a", "b", "sum", "shared", "over", "text", "error", "flag"])
    last = 12
    for row in range(2, last + 1):
        formulas.append(
            [row, row * 1.5, f"=A{row}+B{row}", None, f"=C{row}/$B$2", f'="row "&A{row}', f"=1/(A{row}-5)", f"=A{row}>6"]
        )
    formulas["D2"] = '=A2*$B$2+SUM(A$2:A2)+LEN("A2")'
    formulas.formula_attributes["D2"] = {"t": "shared", "ref": f"D2:D{last}", "si": "0"}
    for row in range(3, last + 1):
        formulas[f"D{row}"] = "="
        formulas[f"D{row}"].data_type = "f"
        formulas.formula_attributes[f"D{row}"] = {"t": "shared", "si": "0"}
    formulas["J2"] = f"=A2:A{last}*B2:B{last}"
    formulas.formula_attributes["J2"] = {"t": "array", "ref": f"J2:J{last}"}
    formulas["L2"] = "=Base*A3"
    formulas["L3"] = "='Joe''s sheet & more'!B2+Other"
    book.defined_names.append(DefinedName("Base", attr_text="Formulas!$B$2"))
    book.defined_names.append(DefinedName("Other", attr_text="'Joe''s sheet & more'!$B$2"))
    formulas.row_dimensions[5].hidden = True
    formulas.row_dimensions[6].hidden = True
    formulas.column_dimensions["B"].hidden = True
    tables = book.create_sheet("Tables")
    tables["B3"] = "above the table"
    for column, header in enumerate(["Panel", "R, MΩ", "Doubled", "Tested by [name]"], 2):
        tables.cell(5, column, header)
    for row in range(6, 10):
        tables.cell(row, 2, f"=K0{row}")
        tables.cell(row, 2).data_type = "s"
        tables.cell(row, 3, row * 1000)
        tables.cell(row, 4, "=Readings[[#This Row],[R, MΩ]]*2")
        tables.cell(row, 5, "A. N. Other")
    tables.add_table(Table(displayName="Readings", ref="B5:E9"))
    tables.row_dimensions[7].hidden = True
    hidden = book.create_sheet("Hidden")
    hidden["A1"] = "kept from sight"
    hidden.sheet_state = "hidden"
    deep = book.create_sheet("Deep")
    deep["C4"] = 4
    deep.sheet_state = "veryHidden"
    book.save(file)


def again(file, out):
    openpyxl.load_workbook(file).save(out)


def filled(file, out):
    book = openpyxl.load_workbook(file)
    sheet = book["Contacts"]
    headers = [cell.value for cell in sheet[4]]
    column = {header: get_column_letter(number) for number, header in enumerate(headers, 1)}
    corrected, reading, at = column["R at 20 °C µΩ"], column["R µΩ"], column["Conductor °C"]
    last = sheet.max_row
    sheet[f"{corrected}5"] = f'=IF(OR({reading}5="",{at}5=""),"",{reading}5*254.5/(234.5+{at}5))'
    sheet.formula_attributes[f"{corrected}5"] = {"t": "shared", "ref": f"{corrected}5:{corrected}{last}", "si": "9"}
    for row in range(6, last + 1):
        sheet[f"{corrected}{row}"] = "="
        sheet[f"{corrected}{row}"].data_type = "f"
        sheet.formula_attributes[f"{corrected}{row}"] = {"t": "shared", "si": "9"}
    book.save(out)


def plain(value):
    if isinstance(value, (datetime.datetime, datetime.date, datetime.time, datetime.timedelta)):
        return {"day": to_excel(value)}
    return value


def read(file):
    values = openpyxl.load_workbook(file, data_only=True)
    formulas = openpyxl.load_workbook(file)

    def sheet(name):
        cells = []
        arrays = []
        for cell in (cell for row in formulas[name].iter_rows() for cell in row):
            attributes = formulas[name].formula_attributes.get(cell.coordinate, {})
            if attributes.get("t") == "array":
                arrays.append({"area": attributes["ref"], "formula": cell.value[1:]})
            value = plain(values[name][cell.coordinate].value)
            formula = cell.value[1:] if cell.data_type == "f" else None
            if value is not None or formula is not None:
                cells.append([cell.coordinate, value, formula])
        return {
            "name": name,
            "hidden": formulas[name].sheet_state != "visible",
            "hiddenRows": [row for row, seen in sorted(formulas[name].row_dimensions.items()) if seen.hidden],
            "tables": [
                {"name": table.displayName, "area": table.ref, "headers": [column.name for column in table.tableColumns]}
                for table in formulas[name].tables.values()
            ],
            "arrays": arrays,
            "cells": cells,
        }

    json.dump([sheet(name) for name in formulas.sheetnames], sys.stdout, ensure_ascii=False)


{"odd": odd, "again": again, "filled": filled, "read": read}[sys.argv[1]](*sys.argv[2:])
