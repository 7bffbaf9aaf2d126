"""Numbers packed side by side against the same numbers in a list."""

from __future__ import annotations

from hypothesis import given, strategies as st

from foredge.plan.schedule.fields import Fields

MOST = st.sampled_from([3, 32_767, 32_768, 2**31 - 1, 2**31, 2**60])


@given(MOST, st.integers(1, 40), st.data())
def test_larger_and_smaller(most: int, size: int, data: st.DataObject) -> None:
    fields = Fields(size, most)
    numbers = st.lists(st.integers(0, most), min_size=size, max_size=size)
    left, right = data.draw(numbers), data.draw(numbers)
    a, b = fields.pack(left), fields.pack(right)
    assert list(fields.unpack(a)) == left
    assert list(fields.unpack(fields.larger(a, b))) == list(map(max, left, right))
    assert list(fields.unpack(fields.smaller(a, b))) == list(map(min, left, right))


@given(st.integers(1, 40), st.integers(0, 900))
def test_the_same_added_to_all(size: int, more: int) -> None:
    fields = Fields(size, 2000)
    assert fields.unpack(fields.pack(range(size)) + more * fields.ones) == tuple(
        range(more, size + more)
    )
