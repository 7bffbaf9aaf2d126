from foredge.contract import (
    LENGTH,
    RATIO,
    Origin,
    Quantity,
    ceil,
    choose,
    floor,
    given,
    leaf,
    maximum,
    minimum,
    number,
    root,
    rounded,
    rounded_up,
    total,
)
from foredge.formula import LONGEST, formula


def mm(value: float, name: str, label: str = "") -> Quantity:
    return leaf(value, LENGTH, name, Origin("spec", (name,)), label=label)


A, B, C = (mm(place, f"x.{name}") for place, name in enumerate("abc", start=1))
N = leaf(3, RATIO, "x.n", Origin("spec", ("n",)), integer=True)


def text(quantity: Quantity, system: str = "metric") -> str:
    return formula(quantity, system).text


def test_operators_and_brackets() -> None:
    assert text(A + B - C) == "a + b - c"
    assert text(A - (B - C)) == "a - (b - c)"
    assert text(A - (B + C)) == "a - (b + c)"
    assert text(2 * (A + B)) == "2 × (a + b)"
    assert text(A / (B / C)) == "a ÷ (b ÷ c)"
    assert text(A * N / 2) == "a × n ÷ 2"
    assert text(-(A + B)) == "-(a + b)"
    assert text(root(A * B)) == "√(a × b)"
    assert text(maximum(A, B + C)) == "max(a, b + c)"
    assert text(minimum(A, B)) == "min(a, b)"
    assert text(ceil(N / 2)) == "n ÷ 2, rounded up to whole"
    assert text(2 * floor(N / 2)) == "2 × (n ÷ 2, rounded down to whole)"
    assert text(rounded(A + B, 0.5)) == "a + b, to the nearest 0.5 mm"
    assert text(rounded_up(A, 25.4 / 32), "imperial") == "a, up to the next 1/32 in"
    assert text(choose(A, B, C, A + B)) == "c where a is greater than b, else a + b"
    assert text(total([A, B, A])) == "2 × a + b"


def test_what_changes_nothing_is_left_out() -> None:
    assert text(1 * A) == "a"
    assert text(N - 0) == "n"
    assert text(0 + N) == "n"
    assert text(N / 1) == "n"


def test_a_named_quantity_ends_the_formula() -> None:
    inner = (A + B).named("x.inner", label="both")
    made = formula(inner * 2)
    assert made.text == "both × 2"
    assert made.inputs == (inner,)


def test_two_inputs_of_one_label_get_their_names() -> None:
    other = mm(4, "y.a")
    assert text(A + other) == "x.a + y.a"


def test_a_label_that_reads_like_a_formula_is_quoted() -> None:
    odd = mm(4, "z.odd", "Push-out by (folios - 1), sharp")
    assert text(A + odd) == "a + 'push-out by (folios - 1), sharp'"


def test_what_decided_is_told_apart_from_what_was_counted() -> None:
    made = formula(given(A + B, N, number(2)))
    assert made.text == "a + b"
    assert made.inputs == (A, B)
    assert made.deciders == (N,)


def test_inputs_come_in_the_order_of_the_formula() -> None:
    assert formula((C - A) * (B + A) / C).inputs == (C, A, B)


def test_a_long_sum_becomes_a_list() -> None:
    many = [mm(place, f"x.part{place}") for place in range(9)]
    assert text(total(many)).startswith("the sum of these 9: part0, part1")


def test_a_long_step_gets_a_mark_of_its_own() -> None:
    long = total([mm(1, f"x.{'long' * 6}{place}") for place in range(6)])
    made = formula(maximum(long * 2, A))
    assert made.text == "max([1] × 2, a)"
    (step,) = made.steps
    assert step.mark == "[1]" and step.quantity is long and len(step.text) > LONGEST
    assert len(made.inputs) == 7


def test_shared_unnamed_steps_do_not_blow_up() -> None:
    value = A
    for _ in range(400):
        value = value + value * 2
    made = formula(value)
    assert made.inputs == (A,)
    whole = len(made.text) + sum(len(step.text) for step in made.steps)
    assert whole < 400 * 150


def test_a_deep_chain_needs_no_recursion() -> None:
    value = A
    for _ in range(20_000):
        value = rounded(value + B, 0.5)
    assert formula(value).inputs[-1] in (A, B)


def test_an_opaque_step_names_its_function() -> None:
    from foredge.contract import opaque

    assert text(opaque(max, (A, B), LENGTH)) == "max of (a, b)"
