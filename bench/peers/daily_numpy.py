"""The daily engine's season in NumPy, W colonies in lockstep. Arguments: season, widths.

Checks every colony against the daily engine, to 1e-9, then prints for each width
"width ns-per-colony-day error": processor time of the best round.
"""
import sys
import time

import numpy as np

from season_file import Season, agree


def run(s, members):
    """Adults and mites of every colony after the last day; seconds of the day loop alone."""
    r = s.rate
    strength, size, infestation, vigour = members.T
    w = len(members)
    start = s.ring["adults"]
    mites = start[:6].sum() * size * infestation / 100
    by = mites / start[6]
    bees = start[:6, None] * size
    phoretic = mites.copy()
    ring = {k: s.ring[k][:, None] * (by if "Mothers" in k else size) for k in s.ring if k != "adults"}
    ow, od, cw, cd, wm, dm = (ring[k] for k in (
        "openWorker", "openDrone", "cappedWorker", "cappedDrone", "workerMothers", "droneMothers"))
    cells, in_w, in_d = cw.sum(0), wm.sum(0), dm.sum(0)
    per_w, per_d = r["workerInvasion"] * r["beesPerGram"], r["droneInvasion"] * r["beesPerGram"]
    harm = np.array([1.0, r["harm"]])[:, None]
    hive_d, forager_d, winter_d = (harm * r[k] for k in ("hiveDeath", "foragerDeath", "winterDeath"))
    extra = r["deathWithBrood"] - r["deathBroodless"]
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
        clean = 1 / (1 + load_w / 2) ** 2
        sound = cw_row * clean
        harmed = cw_row * np.maximum(0, 1 / (1 + r["cappedDeathPerMite"] / 2 * load_w) ** 2 - clean)
        young_w = r["workerDaughters"] * vigour * wm_row / (1 + r["workerCrowding"] / 2 * load_w) ** 3
        young_d = r["droneDaughters"] * vigour * dm_row / (1 + r["droneCrowding"] / 2 * load_d) ** 3
        out = (wm_row * r["workerMothersBack"] + dm_row * r["droneMothersBack"]
               + young_w * (1 - r["workerDaughtersLost"]) + young_d * (1 - r["droneDaughtersLost"]))
        carried = m / n
        summer, cold = 1 + r["mitesOnSummerBees"] * carried, 1 + r["mitesOnWinterBees"] * carried
        emerged = np.stack((sound, harmed))
        hive = (bees[:2] + (1 - winter) * emerged) / (1 + r["foraging"] + hive_d * summer)
        wintering = (bees[4:] + winter * emerged) / (1 + release + winter_d * cold)
        flying = bees[2:4] + r["foraging"] * hive + release * r["releasedToForage"] * wintering
        bees = np.concatenate((hive, flying / (1 + forager_d * summer), wintering))
        draw = per_w * cap_w + per_d * cap_d
        entry = 1 / (n + r["shortestStay"] * draw)
        death = r["deathBroodless"] + extra * cells / (cells + r["broodForSummerDeath"])
        leaving = draw * entry + death
        exposed = m + 0.5 * out
        staying = exposed * np.exp(-leaving)
        per = (exposed - staying) / leaving * entry
        phoretic = staying + 0.5 * out
        entered_w, entered_d = per * per_w * cap_w, per * per_d * cap_d
        cells = cells + cap_w - cw_row
        in_w = in_w + entered_w - wm_row
        in_d = in_d + entered_d - dm_row
        cw_row[:], cd_row[:], wm_row[:], dm_row[:] = cap_w, cap_d, entered_w, entered_d
    spent = time.process_time() - begin
    return np.stack((bees.sum(0), phoretic + in_w + in_d), 1), spent


def main(path, *widths):
    season = Season(path)
    got = run(season, season.members)[0]
    error = np.max(np.abs(got - season.expected) / (1 + season.expected))
    agree(error, 1e-9)
    for width in map(int, widths):
        some = season.members[:width]
        best = min(run(season, some)[1] for _ in range(5))
        print(f"{width} {1e9 * best / len(some) / season.days:.3f} {error:.2g}")


main(*sys.argv[1:])
