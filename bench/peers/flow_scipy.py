"""The flow season by SciPy's solve_ivp. Arguments: season, stages, DOP853 or LSODA, numpy or the path
of the right-hand side compiled from C, tolerances.

Checks a tight run against the flow engine's, on every day and to 1e-7, then prints for each tolerance
"tolerance ms evaluations error": processor time of the best of several seasons, and the largest error.
"""
import ctypes
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

from season_file import Season, agree

CLASSES = 7  # hive bees, then foragers: sound, infected at emergence, as adults; winter bees
CHAINS = CLASSES + 8


class Numpy:
    """The equations over whole chains at once, without a loop over stages."""

    def __init__(self, season, stages):
        self.s, self.n, self.r = season, stages, season.rate
        r = self.r
        self.passage = np.array([stages / d for d in (9, 10, 12, 14, 12, 14)])[:, None]
        self.curves = {}
        for name, knots in season.curve.items():
            at, value = knots[:, 0], knots[:, 1]
            self.curves[name] = (
                np.concatenate(([at[-1] - 1], at, [at[0] + 1])),
                np.concatenate(([value[-1]], value, [value[0]])),
            )
        harm = np.array([1, r["overtDeath"], 1])
        self.hive_death, self.forager_death = harm * r["hiveDeath"], harm * r["foragerDeath"]

    def start(self):
        n, y = self.n, np.zeros(CHAINS + 6 * self.n)
        y[: CLASSES + 1] = self.s.ring["adults"]
        names = ("openWorker", "openDrone", "cappedWorker", "cappedDrone", "workerMothers", "droneMothers")
        for c, name in enumerate(names):
            ring = self.s.ring[name]
            days = len(ring)
            for i, cohort in enumerate(ring):
                young, old = (days - i - 1) / days * n, (days - i) / days * n
                for k in range(int(young), min(n, int(np.ceil(old)))):
                    overlap = min(old, k + 1) - max(young, k)
                    y[CHAINS + c * n + k] += cohort * max(0, overlap) / (old - young)
        return y

    def __call__(self, t, state):
        r, n = self.r, self.n
        y = np.maximum(state, 0)
        out = np.zeros_like(y)
        year = (r["yearShare"] + (t - 0.5) / r["yearLength"]) % 1.0
        laying, drones, winter, release = (
            np.interp(year, *self.curves[c]) for c in ("laying", "droneShare", "winterShare", "springRelease"))
        release *= r["springRelease"]
        bees = y[:CLASSES]
        adults = bees.sum()
        m, some = y[CLASSES], max(1.0, adults)
        chain = y[CHAINS:].reshape(6, n)
        leaving = chain * self.passage
        last = leaving[:, -1]
        eggs = laying * adults / (adults + r["halfLayingAdults"])
        to_w = r["workerInvasion"] * r["beesPerGram"] * last[0] / some
        to_d = r["droneInvasion"] * r["beesPerGram"] * last[1] / some
        x = to_w + to_d
        per = m / (1 + r["shortestStay"] * x)
        rate = out[CHAINS:].reshape(6, n)
        rate[:, 1:] = leaving[:, :-1]
        rate[:, 0] = (eggs * (1 - drones) * r["workerSurvival"], eggs * drones * r["droneSurvival"],
                      last[0], last[1], per * to_w, per * to_d)
        rate -= leaving
        load_w = chain[4, -1] / (chain[2, -1] + 1e-12)
        load_d = chain[5, -1] / (chain[3, -1] + 1e-12)
        young_w = last[4] * r["workerDaughters"] / (1 + r["workerCrowding"] / 2 * load_w) ** 3
        young_d = last[5] * r["droneDaughters"] / (1 + r["droneCrowding"] / 2 * load_d) ** 3
        back = (last[4] * r["workerMothersBack"] + last[5] * r["droneMothersBack"]
                + young_w * (1 - r["workerDaughtersLost"]) + young_d * (1 - r["droneDaughtersLost"]))
        clear, alive = 1 / (1 + load_w / 2) ** 2, 1 / (1 + r["cappedDeathPerMite"] / 2 * load_w) ** 2
        v = r["infectivity"]
        infected = 1 - 1 / (1 + v * load_w / 2) ** 2
        overt = infected * max(0.0, alive - clear) / (1 - clear) if clear < 1 else 0.0
        infection = r["adultInfections"] * v * back / some
        hive, foragers, wintering = bees[:3], bees[3:6], bees[6]
        flying, called = r["foraging"] * hive, release * wintering
        to_forage = r["releasedToForage"] * called
        moved = infection * np.array([-1, 0, 1])
        dead_hive, dead_foragers = self.hive_death * hive, self.forager_death * foragers
        out[:3] = moved * hive[0] - flying - dead_hive
        out[3:6] = moved * foragers[0] + flying - dead_foragers
        out[0] += last[2] * (alive - overt) * (1 - winter)
        out[1] += last[2] * overt
        out[2] += infection * wintering
        out[3] += to_forage
        out[6] = last[2] * (alive - overt) * winter - called - (r["winterDeath"] + infection) * wintering
        dead = dead_hive.sum() + dead_foragers.sum() + r["winterDeath"] * wintering + called - to_forage
        link = r["deathLink"] * x / (1 + r["shortestStay"] * x)
        death = dead / some / (1 + link**2)
        at = CLASSES
        out[at] = back - per * x - death * m
        out[at + 1] = young_w + young_d
        out[at + 3] = death * m
        out[at + 4] = last[4] + last[5] + young_w + young_d - back
        return out

    def counts(self, states):
        y = np.maximum(states, 0)
        return np.stack((y[:CLASSES].sum(0), y[CLASSES] + y[CHAINS + 4 * self.n :].sum(0)), 1)


class Compiled(Numpy):
    """The same equations in C, called through ctypes."""

    def __init__(self, season, stages, library, path):
        super().__init__(season, stages)
        lib = ctypes.CDLL(library)
        dim = lib.flow_open(path.encode(), stages)
        self.out = np.zeros(dim)
        self.rate = lib.flow_rate
        self.rate.restype = None
        self.rate.argtypes = [ctypes.c_double, ctypes.c_void_p, ctypes.c_void_p]
        self.to = self.out.ctypes.data

    def __call__(self, t, state):
        y = np.ascontiguousarray(state)
        self.rate(t, y.ctypes.data, self.to)
        return self.out.copy()


def run(equations, season, method, tolerance):
    got = solve_ivp(equations, (0, season.days), equations.start(), method=method, rtol=tolerance,
                    atol=100 * tolerance, t_eval=np.arange(season.days + 1.0))
    if not got.success:
        sys.exit(f"SciPy gave up: {got.message}")
    return equations.counts(got.y), got.nfev


def main(path, stages, method, form, *tolerances):
    season, n = Season(path), int(stages)
    equations = Numpy(season, n) if form == "numpy" else Compiled(season, n, form, path)
    tight = season.flow[n]

    def error(days):
        return np.max(np.abs(days - tight) / (1 + np.abs(tight)))

    agree(error(run(equations, season, "DOP853", 1e-12)[0]), 1e-7)
    for tolerance in tolerances:
        best, spent = 1e9, 0
        while spent < 3 and not (spent > 0 and best > 1.5e3):
            begin = time.process_time()
            days, evaluations = run(equations, season, method, float(tolerance))
            took = time.process_time() - begin
            best, spent = min(best, 1e3 * took), spent + took
        print(f"{tolerance} {best:.3f} {evaluations} {error(days):.2g}")


main(*sys.argv[1:])
