"""Hard instances of the published sets, as text, and how they become tasks and lags.

J30: PSPLIB, Kolisch, R., Sprecher, A. (1997), European Journal of Operational Research 96, pp.
205-216; the optima are the library's own (file j30opt). J20 and J30_MAX: sets SM J20 and SM J30
with maximum lags, Kolisch, R., Schwindt, C., Sprecher, A. (1999), "Benchmark instances for
project scheduling problems", in Weglarz (ed.), Project Scheduling, Kluwer, pp. 197-212.
Transcribed: name | optimum | capacities | minutes | demands by resource | and then, by task,
what follows it, or "tail: least head, ..." from start to start (negative: a maximum lag).
"""

from __future__ import annotations

from foredge.plan.schedule import Lag, Task
from unit.plan.schedule.instances import Instance

J30_13_1 = """
13_1 | 58 | 19 18 19 17 | 3 2 1 7 2 1 9 8 8 8 4 10 4 10 7 1 4 9 1 4 3 5 4 3 1 7 6 9 7 3 | 10 10
5 3 4 1 10 8 4 2 8 9 8 4 7 3 6 3 6 1 4 10 5 6 9 4 3 7 8 1 / 10 2 9 2 6 7 8 4 2 9 2 1 4 6 8 3 4
10 3 6 3 9 6 10 3 1 9 6 9 2 / 5 3 2 10 10 2 8 4 3 2 6 2 10 4 8 10 5 2 5 3 10 5 9 9 10 3 1 6 6 7
/ 5 8 8 10 8 1 2 3 2 5 2 6 9 1 2 3 2 2 5 4 8 6 10 4 2 7 9 10 5 7 | 7 13 14 / 5 6 15 / 4 9 10 / 8
18 20 / 11 / 12 / 19 / 28 / 24 / 17 / 23 28 / 19 / 22 23 / 16 30 / 21 / 22 / 18 26 / 19 / 21 /
22 26 / 25 / 24 27 / 26 / 25 28 / 29 / 27 / 29 /  /  /
"""

J30_9_1 = """
9_1 | 83 | 16 16 14 15 | 6 6 8 5 8 2 5 5 6 3 6 4 5 6 6 5 4 4 7 9 8 7 2 5 5 3 4 8 7 6 | 3 10 0 9
10 0 5 0 7 3 8 6 9 0 0 0 3 8 8 0 3 4 1 0 0 4 8 8 0 10 / 5 2 2 3 9 6 5 8 9 6 1 0 4 8 10 0 1 6 7 3
1 1 6 5 3 0 0 4 2 6 / 9 7 6 5 5 7 0 0 5 4 5 6 3 0 4 3 7 8 0 9 0 8 10 2 6 5 6 7 2 9 / 3 0 10 9 0
0 2 7 9 0 0 3 8 8 0 8 0 8 5 10 10 10 0 5 9 0 1 5 8 0 | 4 / 10 / 6 7 15 / 5 / 18 / 8 23 27 / 21
24 / 9 11 13 / 12 14 16 / 17 28 30 / 16 / 20 24 / 19 25 / 28 / 21 / 18 / 22 26 / 20 29 / 20 / 21
/ 28 / 29 / 26 / 26 / 30 / 29 / 30 /  /  /
"""

J30_45_7 = """
45_7 | 101 | 14 14 13 15 | 10 10 2 8 10 1 7 8 9 8 8 2 1 4 9 5 1 5 8 9 2 8 2 4 5 6 7 7 7 2 | 2 6
2 6 6 1 6 2 8 8 9 8 3 9 8 2 4 2 9 3 7 4 10 10 4 1 2 2 6 2 / 4 8 10 10 1 6 7 1 1 1 3 8 1 8 7 10 6
4 6 5 4 6 4 9 10 8 10 3 2 2 / 3 3 1 4 7 9 10 3 3 8 7 10 5 4 3 1 4 6 7 8 4 6 6 2 2 3 9 7 3 4 / 3
1 1 3 3 10 2 6 9 9 5 1 8 4 5 10 9 8 3 3 8 4 6 8 10 2 4 4 10 4 | 4 6 9 / 6 15 19 / 8 9 10 / 5 19
21 / 8 10 14 / 7 8 17 / 13 21 26 / 12 20 22 / 20 22 27 / 11 17 20 / 12 15 22 / 13 18 25 / 16 /
16 17 26 / 16 18 23 / 24 / 29 30 / 24 27 29 / 23 / 23 25 28 / 27 / 25 28 30 / 24 / 30 / 26 / 29
/ 28 /  /  /
"""

J20_MAX_35 = """
j20_35 | 103 | 5 5 5 5 5 | 5 10 10 5 9 3 1 8 6 10 5 10 4 7 7 9 2 7 9 8 | 4 3 2 5 0 1 4 1 0 4 1 0
1 2 5 2 0 4 5 4 / 4 5 5 0 4 2 3 1 1 0 2 2 3 4 0 2 3 0 2 3 / 1 0 5 1 4 3 5 0 1 1 2 5 1 2 2 0 2 1
1 4 / 5 5 3 0 0 4 2 0 4 0 5 0 0 2 0 0 5 2 1 2 / 4 4 5 3 1 3 0 0 5 4 4 0 3 0 5 3 1 0 0 1 | 1: 8
10, 14 14, 14 20; 2: 6 15, -6 19, 16 20; 3: 22 15, 27 16, 24 17, -5 19; 4: 0 11, 12 19, 5 20; 5:
27 12, 8 16, 15 17, 18 18, 1 19; 6: 0 13, 9 14, -1 16, 1 17, 3 18; 7: 0 16; 8: 3 12, 0 15, 20
19, 4 20; 9: 3 10, 12 15, 0 16, 11 18, -3 20; 10: 23 12, 11 17, 20 19; 11: -77 4, 2 13, 0 16, 0
18; 12: -44 5, -82 9, -64 10; 13: -24 6, -27 11; 15: -27 2, -36 3; 18: -39 4, -70 5, -40 6, -76
9, -80 11
"""

J30_MAX_244 = """
j30_244 | 153 | 5 5 5 5 5 | 6 1 3 7 6 1 8 10 1 7 6 8 1 5 4 8 7 6 6 3 7 3 6 2 6 5 6 3 2 2 | 2 3 2
2 2 3 3 2 1 3 5 3 2 3 3 1 4 4 2 5 1 5 1 2 1 1 3 5 3 4 / 2 5 5 5 4 4 4 2 2 1 1 5 2 3 5 1 1 3 5 3
5 3 1 1 3 5 2 4 4 2 / 1 4 2 4 5 4 5 2 2 2 4 2 5 5 3 2 4 2 4 4 5 3 4 1 5 3 2 5 3 1 / 1 4 3 3 5 4
3 3 1 4 1 5 2 2 1 3 2 3 1 3 5 1 3 3 4 5 4 3 3 5 / 4 1 5 1 4 1 5 4 1 2 5 4 1 1 3 3 2 5 1 4 3 1 2
5 2 5 5 5 3 3 | 1: 14 16, 0 18, -5 26, 1 27; 2: 2 20, 2 26, 2 27; 3: 6 14, 9 18, 4 26, 6 27, -2
28; 4: -3 22, 14 27; 5: 5 22, 6 27; 6: 2 14, 2 18, 1 26, 0 27, 2 28; 7: 20 16, -5 18, 20 26, 16
27; 8: -3 14, 12 18, 9 26, 7 27, -1 28; 9: 0 16, 2 21, 3 26, 2 27; 10: 11 30; 11: 1 14, 17 19, 0
27, -4 28; 12: 9 15, -34 21, -29 28; 13: -13 15, 1 17; 14: 1 13, -1 29; 15: 0 13, 12 23; 16: 3
14, 19 19, -5 20, 16 28; 17: 0 25; 18: 16 15, -1 19, -25 21; 19: -18 18, -23 21, 18 24, -29 26;
20: 4 16, 1 21; 21: 7 14, 3 18, 10 28; 22: -2 20, 3 26; 23: -16 15, 17 17; 24: 6 13, 0 29; 25:
-7 17, 0 30; 26: 10 12, 1 19; 27: -18 4, 7 12, 4 29; 28: 0 12, -39 21, 0 24; 29: 1 23, -2 24
"""

J30 = (J30_13_1, J30_9_1, J30_45_7)
WITH_MAXIMUM_LAGS = (J20_MAX_35, J30_MAX_244)
"""Their optima are those CP-SAT proves within a minute."""


def read(text: str) -> tuple[int, Instance]:
    """The optimum and the instance; tasks are numbered from 1."""
    _, optimum, capacities, minutes, demands, lags = (part.strip() for part in text.split("|"))
    capacity = {f"R{k}": int(amount) for k, amount in enumerate(capacities.split())}
    rows = [[int(amount) for amount in row.split()] for row in demands.split("/")]
    tasks = [
        Task(str(i + 1), int(length), {f"R{k}": row[i] for k, row in enumerate(rows)})
        for i, length in enumerate(minutes.split())
    ]
    return int(optimum), (tasks, capacity, _weighted(lags) if ":" in lags else _plain(lags, tasks))


def _plain(text: str, tasks: list[Task]) -> list[Lag]:
    return [
        Lag(task.id, head, task.duration)
        for task, heads in zip(tasks, text.split("/"), strict=True)
        for head in heads.split()
    ]


def _weighted(text: str) -> list[Lag]:
    lags = []
    for group in text.split(";"):
        tail, _, arcs = group.partition(":")
        for arc in arcs.split(","):
            least, head = arc.split()
            lags.append(Lag(tail.strip(), head, int(least)))
    return lags
