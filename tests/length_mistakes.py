"""Lengths written wrongly, with the words and the rule of what is said: text, words, rule."""

from __future__ import annotations

LENGTH_MISTAKES = [
    ("150", "say the unit: 150 mm or 150 in?", "no-unit"),
    ("3 1/2", "say the unit: 3 1/2 mm or 3 1/2 in?", "no-unit"),
    ("½", "say the unit: ½ mm or ½ in?", "no-unit"),
    ("1,5 mm", "'1,5 mm': a comma is not read; write 1.5 mm", "comma-decimal"),
    ("0,125 mm", "'0,125 mm': a comma is not read; write 0.125 mm", "comma-decimal"),
    (
        "1,000 mm",
        "'1,000 mm': a comma is not read; write 1000 mm or 1.000 mm",
        "comma-decimal",
    ),
    ("1,000,000 mm", "'1,000,000 mm': a comma is not read; write 1000000 mm", "comma-decimal"),
    ("1,5", "'1,5': a comma is not read; write 1.5 mm or 1.5 in", "comma-decimal"),
    ("5 mmm", "'5 mmm': no unit is called 'mmm'; did you mean mm?", "unknown-unit"),
    ("5 Inch", "'5 Inch': no unit is called 'Inch'; did you mean inch?", "unknown-unit"),
    ("5 milimetres", "'5 milimetres': no unit is called 'milimetres'; did you mean millimetres?",
     "unknown-unit"),
    ("5 in.", "'5 in.': no unit is called 'in.'; did you mean in?", "unknown-unit"),
    ("5 qx", "'5 qx': no unit is called 'qx'; a length is written like 180 mm", "unknown-unit"),
    ("80 g", "'80 g' is a mass; a length is expected, such as 180 mm", "wrong-dimension"),
    (
        "4 oz",
        "'4 oz' is a mass; a length is expected, such as 180 mm (for the thickness of leather"
        " write leather oz)",
        "wrong-dimension",
    ),
    ("-3 mm", "'-3 mm' is negative; a length is never below zero", "measure-negative"),
    ("−3 mm", "'−3 mm' is negative; a length is never below zero", "measure-negative"),
    ("+3 mm", "write '3 mm' without the plus", "not-a-measure"),
    (
        "nan mm",
        "'nan mm' is not a number that can be measured; a length is expected, such as 180 mm",
        "measure-not-finite",
    ),
    (
        "-Infinity mm",
        "'-Infinity mm' is not a number that can be measured; a length is expected, such as"
        " 180 mm",
        "measure-not-finite",
    ),
    (".inf", "'.inf' is not a number that can be measured; a length is expected, such as 180 mm",
     "measure-not-finite"),
    ("1/0 in", "'1/0 in' divides by zero", "zero-denominator"),
    ("3 1/00 in", "'3 1/00 in' divides by zero", "zero-denominator"),
    (
        "3 mm + 2 in",
        "'3 mm + 2 in': write one number and one unit, such as 180 mm; sums, products and lists"
        " are not read",
        "not-a-measure",
    ),
    (
        "9**9**8 mm",
        "'9**9**8 mm': write one number and one unit, such as 180 mm; sums, products and lists"
        " are not read",
        "not-a-measure",
    ),
    (
        "5' 6\"",
        "'5' 6\"': write one number and one unit, such as 180 mm; sums, products and lists are"
        " not read",
        "not-a-measure",
    ),
    (
        "3-4 mm",
        "'3-4 mm': write one number and one unit, such as 180 mm; sums, products and lists are"
        " not read",
        "not-a-measure",
    ),
    ("3-1/2 in", "'3-1/2 in': write 3 1/2 in", "not-a-measure"),
    ("3.", "'3.': write 3 mm", "not-a-measure"),
    ("1,2,3 mm", "'1,2,3 mm': write one number and one unit, such as 180 mm; sums, products and"
     " lists are not read", "not-a-measure"),
    ("3. mm", "'3. mm': write 3 mm", "not-a-measure"),
    ("3    mm", "'3    mm': write 3 mm", "not-a-measure"),
    ("1e400 mm", "'1e400 mm': write the number out, without an exponent", "not-a-measure"),
    ("1e3 mm", "'1e3 mm': write the number out, without an exponent", "not-a-measure"),
    (
        "1234567890 mm",
        "'1234567890 mm' has too many digits; at most 9 are read on each side of the point",
        "not-a-measure",
    ),
    (
        "9" * 70 + " mm",
        f"'{'9' * 37}...' is too long (73 characters) for a measure; write one number and one"
        " unit, such as 180 mm",
        "not-a-measure",
    ),
    ("mm", "'mm' is not a length; write a number and a unit, such as 180 mm", "not-a-measure"),
    ("thin", "'thin' is not a length; write a number and a unit, such as 180 mm", "not-a-measure"),
    ("", "a length is expected here, such as 180 mm", "not-a-measure"),
    ("  ", "a length is expected here, such as 180 mm", "not-a-measure"),
    (" 7 in\n", "take away the space around '7 in'", "not-a-measure"),
    ("٣ mm", "'٣ mm' is not a length; write a number and a unit, such as 180 mm", "not-a-measure"),
]  # fmt: skip
