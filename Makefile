# make demo   set everything up and compile the demo spec into build/
# make test   set everything up and run the whole suite
# make lint   ruff, ruff format and mypy

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
SPEC := specs/saltmarsh-tide-book.yaml

.PHONY: demo test lint fresh bench clean

$(BIN)/foredge: pyproject.toml constraints.txt
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[test]'
	@touch $(BIN)/foredge

demo: $(BIN)/foredge
	$(BIN)/foredge build $(SPEC) --out build
	@echo "read build/saltmarsh-tide-book/build-sheet.md"

# A process for each core; a file's tests stay together, so that each demo is compiled once.
test: $(BIN)/foredge
	$(BIN)/python -m pytest -n auto --dist loadfile

lint: $(BIN)/foredge
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy

# Renew what is generated and committed: the editor's schema and the demo output.
fresh: $(BIN)/foredge
	$(BIN)/foredge schema --out schemas/book.schema.json
	$(BIN)/foredge build specs/*.yaml --variant all --out specs/built

bench: $(BIN)/foredge
	$(BIN)/python -m pytest tests/benchmarks --benchmark-only --override-ini=addopts=--import-mode=importlib

clean:
	rm -rf build dist $(VENV)
