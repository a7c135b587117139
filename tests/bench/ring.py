"""The ring of RingScene.java in vectorised NumPy: python3 tests/bench/ring.py kernels.csv

Reads one row per photon line (weight, attenuation of each matter per mm, b c a xk d of the last material, ratio of H*(10)
to kerma build-up at 0, 1, 2 ... mean free paths), written by bench.Compare, and integrates over a plain product of
Gauss-Legendre points, doubled until two results in a row agree within the tolerance. Half the turn is taken twice, as
in the Java code. Everything is worked out for all points of a line at once.
"""
import csv
import sys
import time

import numpy as np

INNER, OUTER, HALF = 1800.0, 1850.0, 500.0
DETECTOR = np.array([1500.0, 0.0, 3600.0])
WATER_TOP, PLATE_LOW, PLATE_HIGH, AIR_TOP = 2500.0, 2600.0, 2620.0, 4000.0


def cylinder(p, d, radius):
    """Where rays from p along d (t = 0 to 1) are inside an upright cylinder of the ring's length."""
    a = d[0] ** 2 + d[1] ** 2
    b = p[0] * d[0] + p[1] * d[1]
    root = b * b - a * (p[0] ** 2 + p[1] ** 2 - radius * radius)
    s = np.sqrt(np.maximum(root, 0))
    t_low, t_high = (-HALF - p[2]) / d[2], (HALF - p[2]) / d[2]
    start = np.maximum(np.maximum((-b - s) / a, np.minimum(t_low, t_high)), 0)
    stop = np.minimum(np.minimum((-b + s) / a, np.maximum(t_low, t_high)), 1)
    return np.where(root > 0, np.maximum(stop - start, 0), 0)


def level(p, d, low, high):
    """Share of each ray between two levels."""
    a, b = (low - p[2]) / d[2], (high - p[2]) / d[2]
    return np.maximum(np.minimum(b, 1) - np.maximum(a, 0), 0)


def buildup(x, b, c, a, xk, d, ratio):
    t2 = np.tanh(-2)
    k = c * x ** a + d * (np.tanh(x / xk - 2) - t2) / (1 - t2)
    lnk = np.log(k)
    exposure = 1 + (b - 1) * np.expm1(x * lnk) / np.expm1(lnk)
    return exposure * np.interp(x, np.arange(len(ratio)), ratio)


def rate(lines, n_rho, n_phi, n_z):
    gr, wr = np.polynomial.legendre.leggauss(n_rho)
    gp, wp = np.polynomial.legendre.leggauss(n_phi)
    gz, wz = np.polynomial.legendre.leggauss(n_z)
    rho = (INNER + OUTER) / 2 + (OUTER - INNER) / 2 * gr
    phi = np.pi / 2 * (1 + gp)
    z = HALF * gz
    rr, pp, zz = [m.ravel() for m in np.meshgrid(rho, phi, z, indexing='ij')]
    w = (wr[:, None, None] * wp[None, :, None] * wz[None, None, :]).ravel() * rr
    w = w / w.sum()
    p = np.array([rr * np.cos(pp), rr * np.sin(pp), zz])
    d = DETECTOR[:, None] - p
    r = np.sqrt((d * d).sum(axis=0))
    steel = r * (cylinder(p, d, OUTER) - cylinder(p, d, INNER))
    plate = r * level(p, d, PLATE_LOW, PLATE_HIGH)
    water = r * level(p, d, -1e7, WATER_TOP) - steel
    air = r * level(p, d, WATER_TOP, AIR_TOP) - plate
    total = 0.0
    for weight, mu, fit, ratio in lines:
        tau = mu[0] * steel + mu[1] * plate + mu[2] * water + mu[3] * air
        total += weight * np.dot(w / (r * r), np.exp(-tau) * buildup(tau, *fit, ratio))
    return total, r.size * len(lines)


def to_tolerance(lines, tolerance):
    n, before, evaluations = (2, 6, 4), None, 0
    while True:
        now, count = rate(lines, *n)
        evaluations += count
        if before is not None and abs(now - before) <= tolerance * now:
            return now, evaluations
        before, n = now, tuple(2 * i for i in n)


def main():
    lines = []
    with open(sys.argv[1], newline='') as file:
        for row in csv.DictReader(file):
            lines.append((float(row['weight']), [float(row[k]) for k in ('steel', 'plate', 'water', 'air')],
                          [float(row[k]) for k in ('b', 'c', 'a', 'xk', 'd')], np.array([float(v) for v in row['ratio'].split()])))
    for tolerance in (1e-2, 1e-3, 1e-4):
        best = np.inf
        for _ in range(7):
            start = time.perf_counter()
            value, evaluations = to_tolerance(lines, tolerance)
            best = min(best, time.perf_counter() - start)
        print('%g,%.12g,%.6g,%d' % (tolerance, value, best, evaluations))


main()
