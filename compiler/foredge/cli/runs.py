"""Which compilations a command line asks for: every spec, in the variants wanted."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from foredge.compile import Compiled, compile_spec
from foredge.registry import Registry


def compile_all(
    specs: Sequence[str], registry: Registry, variant: str | None, allow: Sequence[str]
) -> Iterator[tuple[str, str | None, Compiled]]:
    """``(spec, variant, compiled)`` for each; with ``all``, the spec itself first."""
    for spec in specs:
        if variant != "all":
            yield spec, variant, compile_spec(spec, registry, variant=variant, allow=allow)
            continue
        base = compile_spec(spec, registry, allow=allow)
        yield spec, None, base
        for name in base.variants:
            yield spec, name, compile_spec(spec, registry, variant=name, allow=allow)
