"""What is printed: run sheet, call sheets and coal plan as PDF, and the timeline for a terminal."""

from cookout.sheets.call_sheet import call_sheet_pdf
from cookout.sheets.coal_plan import coal_plan_pdf
from cookout.sheets.run_sheet import run_sheet_pdf
from cookout.sheets.terminal import terminal_timeline
from cookout.sheets.typesetting import Paper

__all__ = ["Paper", "call_sheet_pdf", "coal_plan_pdf", "run_sheet_pdf", "terminal_timeline"]
