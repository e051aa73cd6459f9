"""The audit workbook: sheets of live formulas, without a file and without a window."""
