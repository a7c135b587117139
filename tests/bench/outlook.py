"""The large outlook of OutlookCompare.java in vectorised NumPy: python3 tests/bench/outlook.py model.txt trials

Trials in blocks, so that memory stays flat and a block in the cache. Hours of a step are drawn from tables of the inverse
beta distribution, a table for each shape, as in the Java code (faster than numpy's own beta); doses go over groups of lines
of one crew in one area by matrix products; quantiles of every task, person and area come from counted bins. A task's dose
counts in the week of its finish. Left out against the Java code: weeks by the hour, odds, sensitivity, single runs.
"""
import sys
import time

import numpy as np

REAL = np.float64
BLOCK, CELLS, BINS, PILOT, WEEK_H, WEEKS = 1000, 256, 256, 500, 30, 12


def inverse(a):
    """Quantiles of Beta(a, 6 - a) at the borders of equally likely cells."""
    t = (1 - np.cos(np.pi * (np.arange(20000) + 0.5) / 20000)) / 2
    mass = t ** (a - 1) * (1 - t) ** (5 - a) * np.sqrt(t * (1 - t))
    p = np.cumsum(mass) / mass.sum()
    table = np.interp(np.arange(CELLS + 1) / CELLS, p, t)
    table[0], table[-1] = 0, 1
    return table - np.mean((table[1:] + table[:-1]) / 2)


def pert(rng, table, shape):
    u = rng.random(shape, dtype=REAL)
    u *= CELLS
    cell = u.astype(np.int16)
    u -= cell
    low, step = table[:-1].astype(REAL), np.diff(table).astype(REAL)
    return low[cell] + u * step[cell]


class Model:
    def __init__(self, path):
        arrays = {}
        with open(path) as file:
            for row in file:
                name, *values = row.split()
                arrays[name] = np.array(values, dtype=float)
        self.__dict__.update(arrays)
        index = lambda name: arrays[name].astype(int)
        self.first = index('task_first_step')
        self.shapes = [(np.flatnonzero(self.step_a == a), inverse(a)) for a in np.unique(self.step_a)]
        self.by = (self.step_hours * self.step_width)[:, None].astype(REAL)
        self.mean = self.step_hours[:, None].astype(REAL)
        self.of_technique = [np.flatnonzero(self.step_technique == i) for i in range(self.technique_a.size)]
        self.others = np.flatnonzero(self.step_technique < 0)
        self.technique_tables = [inverse(a) for a in self.technique_a]
        groups = self.group_area.size
        self.rate = np.zeros((self.step_hours.size, self.area_s.size), REAL)
        self.collect = np.zeros((groups, self.step_hours.size), REAL)
        np.add.at(self.rate, (index('line_step'), index('group_area')[index('line_group')]), self.line_usv_per_h)
        np.add.at(self.collect, (index('line_group'), index('line_step')), self.line_usv_per_h)
        self.areas = index('group_area')
        self.shares = np.zeros((int(self.people[0]), groups), REAL)
        self.shares[index('share_worker'), index('share_group')] = self.share
        self.in_area = (np.arange(self.area_s.size)[:, None] == self.areas[None, :]).astype(REAL)
        self.critical = np.zeros(self.first.size, np.int64)
        self.links = [[] for _ in self.first]
        for task, before, lag in zip(index('link_task'), index('link_before'), self.link_lag):
            self.links[task].append((before, REAL(lag)))

    def block(self, rng, n):
        hours = np.empty((self.step_hours.size, n), REAL)
        for rows, table in self.shapes:
            hours[rows] = pert(rng, table, (rows.size, n))
        hours *= self.by
        hours += self.mean
        s = np.log(1.15)
        crew = np.exp(s * rng.standard_normal(n) - s * s / 2).astype(REAL)
        hours[self.others] *= crew
        for i, rows in enumerate(self.of_technique):
            hours[rows] *= 1 + REAL(self.technique_width[i]) * pert(rng, self.technique_tables[i], n)
        s = self.area_s[:, None]
        survey = np.exp(s * rng.standard_normal((s.size, n)) - s * s / 2)
        rates = (1 + self.area_weight[:, None] * (survey - 1)).astype(REAL)
        usv = np.add.reduceat(hours * (self.rate @ rates), self.first)
        took = np.add.reduceat(hours, self.first)
        finish = np.empty_like(took)
        for task, links in enumerate(self.links):
            row = finish[task]
            row[:] = self.task_start[task]
            for before, lag in links:
                np.maximum(row, finish[before] + lag if lag else finish[before], out=row)
            row += took[task]
        groups = (self.collect @ hours) * rates[self.areas]
        people = self.shares @ groups
        end = finish.max(axis=0)
        latest = np.repeat(end[None, :], len(finish), axis=0)
        for task in range(len(finish) - 1, -1, -1):
            start = latest[task] - took[task]
            for before, lag in self.links[task]:
                np.minimum(latest[before], start - lag if lag else start, out=latest[before])
        self.critical += (latest - finish < 1e-9).sum(axis=1)
        week = np.minimum((finish / WEEK_H).astype(np.int64), WEEKS - 1) * n + np.arange(n)
        weeks = np.bincount(week.ravel(), usv.ravel(), WEEKS * n).reshape(WEEKS, n)
        return np.concatenate([usv, took, finish, people, self.in_area @ groups, weeks, np.cumsum(weeks, axis=0)]), usv.sum(axis=0), end, people[0]


def main():
    model, trials = Model(sys.argv[1]), int(sys.argv[2])
    best = worked = np.inf
    for _ in range(2):
        start, before = time.perf_counter(), time.process_time()
        rng = np.random.Generator(np.random.SFC64(1))
        pilot = model.block(rng, PILOT)[0]
        low, high = pilot.min(axis=1)[:, None], pilot.max(axis=1)[:, None]
        scale = np.where(high > low, BINS / np.maximum(high - low, 1e-30), 0).astype(REAL)
        base = (np.arange(len(pilot)) * BINS)[:, None].astype(np.int32)
        counts = np.zeros(len(pilot) * BINS, np.int64)
        sums, squares = np.zeros(len(pilot)), np.zeros(len(pilot))
        dose, span, person = np.empty(trials), np.empty(trials), 0.0
        for at in range(0, trials, BLOCK):
            n = min(BLOCK, trials - at)
            series, dose[at:at + n], span[at:at + n], first = model.block(rng, n)
            person += first.sum()
            series -= low
            sums += series.sum(axis=1)
            squares += np.einsum('ij,ij->i', series, series)
            series *= scale
            np.clip(series, 0, BINS - 1, out=series)
            counts += np.bincount((series.astype(np.int32) + base).ravel(), minlength=counts.size)
        below = np.cumsum(counts.reshape(-1, BINS), axis=1)
        marks = np.concatenate([(np.arange(20) + 0.5) / 20, [0.05, 0.5, 0.8, 0.95]]) * trials
        quantiles = low + np.array([np.searchsorted(row, marks) for row in below]) * (high - low) / BINS
        np.quantile(dose, marks / trials), np.quantile(span, marks / trials)
        best = min(best, time.perf_counter() - start)
        worked = min(worked, time.process_time() - before)
    assert np.isfinite(quantiles).all()
    print('%.4f %.0f %.0f %.1f %.1f %.2f %.4f' % (best, dose.mean(), np.quantile(dose, 0.8), span.mean(), np.quantile(span, 0.8), person / trials, worked))


main()
