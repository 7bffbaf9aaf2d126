import networkx as nx
from hypothesis import given, strategies as st

from foredge.plan.evenings.chain import longest_chain


def test_one_after_the_other() -> None:
    chain = longest_chain(
        ["a", "b", "c"], {"a": (10, 60), "b": (5, 0), "c": (20, 30)}, {"b": {"a"}, "c": {"a"}}
    )
    assert chain.minutes == 10 + 60 + 20 + 30
    assert chain.operations == ("a", "c")
    assert chain.hands_on == 35


def test_one_pair_of_hands_needs_as_long_as_all_of_it() -> None:
    assert longest_chain(["a", "b"], {"a": (50, 0), "b": (60, 0)}, {}).minutes == 110


def test_nothing_to_do() -> None:
    assert longest_chain([], {}, {}).operations == ()


@given(st.data())
def test_against_networkx(data: st.DataObject) -> None:
    size = data.draw(st.integers(1, 9))
    order = [f"n{i}" for i in range(size)]
    times = {name: data.draw(st.tuples(st.integers(1, 90), st.integers(0, 900))) for name in order}
    before = {
        order[i]: {order[j] for j in range(i) if data.draw(st.booleans())} for i in range(size)
    }
    graph = nx.DiGraph()
    for name in order:
        graph.add_edge((name, "in"), (name, "out"), weight=sum(times[name]))
        for need in before[name]:
            graph.add_edge((need, "out"), (name, "in"), weight=0)
    longest = nx.dag_longest_path_length(graph)
    chain = longest_chain(order, times, before)
    assert chain.minutes == max(longest, sum(hands for hands, _ in times.values()))
    assert sum(sum(times[name]) for name in chain.operations) == longest
    for one, other in zip(chain.operations, chain.operations[1:], strict=False):
        assert one in before[other]
