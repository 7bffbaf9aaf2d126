"""The least a checker could do: import the libraries, parse the file, validate it.

python floor.py SPEC SCHEMA
"""

import json
import sys
from pathlib import Path

import click
import jinja2
import jsonschema
import pint
import pluggy
import yaml

assert all((click, jinja2, pluggy))
pint.UnitRegistry()
data = yaml.safe_load(Path(sys.argv[1]).read_text(encoding="utf-8"))
schema = json.loads(Path(sys.argv[2]).read_text(encoding="utf-8"))
list(jsonschema.Draft202012Validator(schema).iter_errors(data))
