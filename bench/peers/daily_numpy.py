"""The daily engine's season in NumPy, W colonies in lockstep. Arguments: season, widths.

Checks every colony against the daily engine, to 1e-9, then prints for each width
"width ns-per-colony-day error": processor time of the best round.
"""
import sys
import time

import numpy as np

from season_file import Season, agree


def run(s, some):
    """Adults and mites of every colony after the last day; seconds of the day loop alone."""
    r = s.rate
    strength, vigour, v = s.members[:some].T
    parts = np.split(s.states[:some].T.copy(), np.cumsum([len(x) for x in s.ring.values()])[:-1])
    ring = dict(zip(s.ring, parts))
    bees, phoretic = ring["adults"][:-1].copy(), ring["adults"][-1].copy()
    ow, od, cw, cd, wm, dm = (ring[k] for k in (
        "openWorker", "openDrone", "cappedWorker", "cappedDrone", "workerMothers", "droneMothers"))
    in_w, in_d = wm.sum(0), dm.sum(0)
    per_w, per_d = r["workerInvasion"] * r["beesPerGram"], r["droneInvasion"] * r["beesPerGram"]
    harm = np.array([1.0, r["overtDeath"], 1.0])[:, None]
    hive_d, forager_d, winter_d = harm * r["hiveDeath"], harm * r["foragerDeath"], r["winterDeath"]
    begin = time.process_time()
    for t in range(s.days):
        laying, drones, winter, release = s.daily[t]
        ow_row, od_row, cw_row, cd_row = ow[t % 9], od[t % 10], cw[t % 12], cd[t % 14]
        wm_row, dm_row = wm[t % 12], dm[t % 14]
        adults = bees.sum(0)
        n, m = np.maximum(1, adults), phoretic
        cap_w, cap_d = ow_row.copy(), od_row.copy()
        share = strength * adults / (adults + r["halfLayingAdults"] + 1e-12) * laying
        ow_row[:] = share * (1 - drones) * r["workerSurvival"]
        od_row[:] = share * drones * r["droneSurvival"]
        load_w, load_d = wm_row / (cw_row + 1e-12), dm_row / (cd_row + 1e-12)
        alive, none = 1 / (1 + r["cappedDeathPerMite"] / 2 * load_w) ** 2, 1 / (1 + load_w / 2) ** 2
        carried = 1 - 1 / (1 + v / 2 * load_w) ** 2
        overt = cw_row * carried * np.maximum(0, alive - none) / np.maximum(1e-300, 1 - none)
        young_w = r["workerDaughters"] * vigour * wm_row / (1 + r["workerCrowding"] / 2 * load_w) ** 3
        young_d = r["droneDaughters"] * vigour * dm_row / (1 + r["droneCrowding"] / 2 * load_d) ** 3
        out = (wm_row * r["workerMothersBack"] + dm_row * r["droneMothersBack"]
               + young_w * (1 - r["workerDaughtersLost"]) + young_d * (1 - r["droneDaughtersLost"]))
        left = np.exp(-r["adultInfections"] * v * out / n)
        hive, flying, wintering = bees[:3].copy(), bees[3:6].copy(), bees[6]
        hive[2] += (hive[0] + wintering) * (1 - left)
        flying[2] += flying[0] * (1 - left)
        hive[0] *= left
        flying[0] *= left
        hive[0] += (cw_row * alive - overt) * (1 - winter)
        hive[1] += overt
        wintering = (wintering * left + (cw_row * alive - overt) * winter) / (1 + winter_d + release)
        hive /= 1 + r["foraging"] + hive_d
        flying += r["foraging"] * hive
        flying[0] += release * r["releasedToForage"] * wintering
        flying /= 1 + forager_d
        bees = np.concatenate((hive, flying, wintering[None]))
        dead = (hive_d * hive + forager_d * flying).sum(0) + wintering * (winter_d + release * (1 - r["releasedToForage"]))
        draw = per_w * cap_w + per_d * cap_d
        entry = 1 / (n + r["shortestStay"] * draw)
        death = dead / n / (1 + (r["deathLink"] * draw * entry) ** 2)
        leaving = draw * entry + death
        exposed = m + 0.5 * out
        staying = exposed * np.exp(-leaving)
        per = (exposed - staying) / leaving * entry
        phoretic = staying + 0.5 * out
        entered_w, entered_d = per * per_w * cap_w, per * per_d * cap_d
        in_w = in_w + entered_w - wm_row
        in_d = in_d + entered_d - dm_row
        cw_row[:], cd_row[:], wm_row[:], dm_row[:] = cap_w, cap_d, entered_w, entered_d
    spent = time.process_time() - begin
    return np.stack((bees.sum(0), phoretic + in_w + in_d), 1), spent


def main(path, *widths):
    season = Season(path)
    got = run(season, len(season.members))[0]
    error = np.max(np.abs(got - season.expected) / (1 + season.expected))
    agree(error, 1e-9)
    for width in map(int, widths):
        best = min(run(season, width)[1] for _ in range(5))
        print(f"{width} {1e9 * best / width / season.days:.3f} {error:.2g}")


main(*sys.argv[1:])
