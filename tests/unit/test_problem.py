"""How a problem reads."""

from foredge.problem import Diagnostic, Severity, Span


def test_one_line_with_place_severity_and_rule() -> None:
    diagnostic = Diagnostic(
        Span("book.yaml", 12, 14),
        Severity.WARNING,
        "the grain of 'chart-paper' runs across the spine",
        "grain-across-spine",
        consequence="Pages will cockle at the gutter",
        remedy="Turn the folio.",
    )
    assert str(diagnostic) == (
        "book.yaml:12:14: warning: the grain of 'chart-paper' runs across the spine. "
        "Pages will cockle at the gutter. Turn the folio. [grain-across-spine]"
    )
