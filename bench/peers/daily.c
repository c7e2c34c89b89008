/* The daily engine's season in C, W colonies in lockstep; built with W = 1 it is the scalar loop.
   Checks what it makes of every colony against the daily engine, to 1e-9, then times rounds of all of
   them and prints "ns-per-colony-day largest-relative-error" of the best. Equations: those of the
   project's engine, with divisions shared further, so that C has no handicap. */
#include "season.h"
#ifndef W
#define W 1
#endif
#define LANES _Pragma("GCC ivdep") for (int l = 0; l < W; l++)
typedef double row[W];

static struct {
  row strength, vigour, infectivity;
  row adults[ADULT_CLASSES], phoretic;
  row ow[OPEN_WORKER], od[OPEN_DRONE];
  row cw[CAPPED_WORKER], cd[CAPPED_DRONE], wm[CAPPED_WORKER], dm[CAPPED_DRONE];
  row cells, droneCells, inWorker, inDrone, daughters, diedInCells, diedOnBees;
} b;

struct rates {
  double half, ws, ds, foraging, hiveD, forD, winD, toForage, overt, infections, cappedD;
  double iw, id, shortest, link, wBack, wMade, wLost, wCrowd, dBack, dMade, dLost, dCrowd;
};

static inline double exp_minus(double x) {
  double y = x * (-1.0 / 32);
  y = y > -2 ? y : -2;
  double p = 1.0 / 5040 * y + 1.0 / 720;
  p = p * y + 1.0 / 120;
  p = p * y + 1.0 / 24;
  p = p * y + 1.0 / 6;
  p = p * y + 0.5;
  p = p * y + 1;
  p = p * y + 1;
  p *= p; p *= p; p *= p; p *= p; p *= p;
  return p;
}

static void day(int t, const double *d, const struct rates *r) {
  double *restrict ow = b.ow[t % OPEN_WORKER], *restrict od = b.od[t % OPEN_DRONE];
  double *restrict cw = b.cw[t % CAPPED_WORKER], *restrict cd = b.cd[t % CAPPED_DRONE];
  double *restrict wm = b.wm[t % CAPPED_WORKER], *restrict dm = b.dm[t % CAPPED_DRONE];
  double *restrict hs = b.adults[HIVE_SOUND], *restrict ho = b.adults[HIVE_OVERT], *restrict hc = b.adults[HIVE_CARRIER];
  double *restrict fs = b.adults[FORAGER_SOUND], *restrict fo = b.adults[FORAGER_OVERT], *restrict fc = b.adults[FORAGER_CARRIER];
  double *restrict win = b.adults[WINTER];
  const double laying = d[0], drones = d[1], winter = d[2], release = d[3], few = 1e-12, called = release * r->toForage;
  const double ofHive = 1 / (1 + r->hiveD + r->foraging), ofForagers = 1 / (1 + r->forD), ofWinter = 1 / (1 + r->winD + release);
  const double ofHiveO = 1 / (1 + r->overt * r->hiveD + r->foraging), ofForagersO = 1 / (1 + r->overt * r->forD);
  LANES {
    double n0 = hs[l] + ho[l] + hc[l] + (fs[l] + fo[l] + fc[l]) + win[l];
    double n = n0 > 1 ? n0 : 1, m = b.phoretic[l], v = b.infectivity[l];
    double capW = ow[l], capD = od[l];
    double draw = r->iw * capW + r->id * capD;
    /* denominators */
    double a0 = n0 + r->half + few;
    double c = cw[l] + few, cdr = cd[l] + few;
    double a1 = c + 0.5 * wm[l], a2 = c + r->cappedD / 2 * wm[l], a3 = c + r->wCrowd / 2 * wm[l];
    double a4 = cdr + r->dCrowd / 2 * dm[l], a5 = c + 0.5 * v * wm[l], a6 = c + 0.25 * wm[l];
    double bees = n + r->shortest * draw, ld = r->link * draw, spared = n * (bees * bees + ld * ld), both = bees * spared;
    /* two divisions for eight reciprocals */
    double p01 = a0 * a1, p012 = p01 * a2, p0123 = p012 * a3, q = 1 / (p0123 * a4);
    double o4 = q * p0123; q *= a4; double o3 = q * p012; q *= a3; double o2 = q * p01; q *= a2;
    double o1 = q * a0, o0 = q * a1;
    double p56 = a5 * a6; q = 1 / (p56 * n);
    double on = q * p56; q *= n; double o6 = q * a5, o5 = q * a6;
    /* brood */
    double share = b.strength[l] * n0 * o0 * laying;
    ow[l] = share * (1 - drones) * r->ws;
    od[l] = share * drones * r->ds;
    /* emergence */
    double te = c * o1, ta = c * o2, tw = c * o3, td = cdr * o4;
    double g = (1 + c * o5) * (0.5 * v * wm[l]) * o5, ill = g * o6 * ta;
    double overt = cw[l] * ill * (ta + te) * a1 * (0.5 - r->cappedD / 2);
    double sound = cw[l] * ((1 - g) * ta * ta + ill * (1 + ta) * c * (r->cappedD / 2));
    double yw = r->wMade * b.vigour[l] * wm[l] * tw * tw * tw;
    double yd = r->dMade * b.vigour[l] * dm[l] * td * td * td;
    double out = wm[l] * r->wBack + dm[l] * r->dBack + yw * (1 - r->wLost) + yd * (1 - r->dLost);
    b.daughters[l] += yw + yd;
    b.diedInCells[l] += wm[l] * (1 - r->wBack) + dm[l] * (1 - r->dBack) + yw * r->wLost + yd * r->dLost;
    /* bees */
    double left = exp_minus(r->infections * v * out * on);
    double stayH = left * hs[l], stayF = left * fs[l], stayW = left * win[l];
    hc[l] = (hc[l] + (hs[l] - stayH) + (win[l] - stayW)) * ofHive;
    hs[l] = (stayH + (1 - winter) * sound) * ofHive;
    win[l] = (stayW + winter * sound) * ofWinter;
    fc[l] = (fc[l] + (fs[l] - stayF) + r->foraging * hc[l]) * ofForagers;
    fs[l] = (stayF + r->foraging * hs[l] + called * win[l]) * ofForagers;
    ho[l] = (ho[l] + overt) * ofHiveO;
    fo[l] = (fo[l] + r->foraging * ho[l]) * ofForagersO;
    double dead = r->hiveD * (hs[l] + hc[l] + r->overt * ho[l]) + r->forD * (fs[l] + fc[l] + r->overt * fo[l])
      + (r->winD + release - called) * win[l];
    /* mites */
    double all = draw * spared + dead * bees * bees * bees + 1e-30 * both;
    q = 1 / (both * all);
    double leaving = all * all * q, oall = both * q;
    double exposed = m + 0.5 * out, staying = exposed * exp_minus(leaving);
    double per = (exposed - staying) * oall;
    b.phoretic[l] = staying + 0.5 * out;
    b.diedOnBees[l] += per * dead * bees * bees * bees;
    double inW = per * spared * r->iw * capW, inD = per * spared * r->id * capD;
    b.cells[l] += capW - cw[l];
    b.droneCells[l] += capD - cd[l];
    b.inWorker[l] += inW - wm[l];
    b.inDrone[l] += inD - dm[l];
    cw[l] = capW; cd[l] = capD; wm[l] = inW; dm[l] = inD;
  }
}

static const double *fill(row *ring, const double *from, int n, int l, double *sum) {
  for (int i = 0; i < n; i++) {
    ring[i][l] = from[i];
    if (sum) sum[l] += from[i];
  }
  return from + n;
}

static void start(const struct season *s, int first) {
  memset(&b, 0, sizeof b);
  LANES {
    int who = (first + l) % s->members;
    const double *m = s->member + MEMBER * who, *x = s->state + STATE * who;
    b.strength[l] = m[0];
    b.vigour[l] = m[1];
    b.infectivity[l] = m[2];
    x = fill(b.adults, x, ADULT_CLASSES, l, NULL);
    b.phoretic[l] = *x++;
    x = fill(b.ow, x, OPEN_WORKER, l, NULL);
    x = fill(b.od, x, OPEN_DRONE, l, NULL);
    x = fill(b.cw, x, CAPPED_WORKER, l, b.cells);
    x = fill(b.cd, x, CAPPED_DRONE, l, b.droneCells);
    x = fill(b.wm, x, CAPPED_WORKER, l, b.inWorker);
    fill(b.dm, x, CAPPED_DRONE, l, b.inDrone);
  }
}

static double worst(const struct season *s, int first) {
  double worst = 0;
  LANES {
    const double *e = s->expected + 2 * ((first + l) % s->members);
    double adults = 0;
    for (int k = 0; k < ADULT_CLASSES; k++) adults += b.adults[k][l];
    double mites = b.phoretic[l] + b.inWorker[l] + b.inDrone[l];
    worst = fmax(worst, fmax(fabs(adults - e[0]) / (1 + e[0]), fabs(mites - e[1]) / (1 + e[1])));
  }
  return worst;
}

int main(int argc, char **argv) {
  if (argc < 2) fail("usage: daily", "season.txt [rounds]");
  struct season *s = read_season(argv[1]);
#define R(x) rate(s, #x)
  struct rates r = {R(halfLayingAdults), R(workerSurvival), R(droneSurvival), R(foraging), R(hiveDeath), R(foragerDeath),
    R(winterDeath), R(releasedToForage), R(overtDeath), R(adultInfections), R(cappedDeathPerMite),
    R(workerInvasion) * R(beesPerGram), R(droneInvasion) * R(beesPerGram), R(shortestStay), R(deathLink),
    R(workerMothersBack), R(workerDaughters), R(workerDaughtersLost), R(workerCrowding),
    R(droneMothersBack), R(droneDaughters), R(droneDaughtersLost), R(droneCrowding)};
  if (R(clumping) != 2) fail("this peer knows clumping 2", "alone");
  int blocks = (s->members + W - 1) / W, rounds = argc == 3 ? atoi(argv[2]) : 25;
  double error = 0, best = 1e9;
  for (int k = 0; k < blocks; k++) {
    start(s, k * W);
    for (int t = 0; t < s->days; t++) day(t, s->daily + 4 * t, &r);
    error = fmax(error, worst(s, k * W));
  }
  agree(error, 1e-9);
  for (int round = 0; round < rounds; round++) {
    double spent = 0;
    for (int k = 0; k < blocks; k++) {
      start(s, k * W);
      double from = cpu_seconds();
      for (int t = 0; t < s->days; t++) day(t, s->daily + 4 * t, &r);
      spent += cpu_seconds() - from;
    }
    best = fmin(best, 1e9 * spent / ((double)blocks * W * s->days));
  }
  printf("%.3f %.2g\n", best, error);
  return 0;
}
