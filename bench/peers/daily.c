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
  row strength, vigour;
  row hiveS, hiveH, forS, forH, winS, winH, phoretic;
  row ow[OPEN_WORKER], od[OPEN_DRONE];
  row cw[CAPPED_WORKER], cd[CAPPED_DRONE], wm[CAPPED_WORKER], dm[CAPPED_DRONE];
  row cells, droneCells, inWorker, inDrone, daughters, diedInCells, diedOnBees;
} b;

struct rates {
  double half, ws, ds, foraging, hiveD, forD, winD, toForage, harm, onWinter, onSummer, cappedD;
  double iw, id, shortest, broodless, withBrood, wBack, wMade, wLost, wCrowd, dBack, dMade, dLost, dCrowd, few;
};

static inline double exp_minus(double x) {
  double y = x * (-1.0 / 256);
  y = y > -0.25 ? y : -0.25;
  double p = 1.0 / 5040 * y + 1.0 / 720;
  p = p * y + 1.0 / 120;
  p = p * y + 1.0 / 24;
  p = p * y + 1.0 / 6;
  p = p * y + 0.5;
  p = p * y + 1;
  p = p * y + 1;
  p *= p; p *= p; p *= p; p *= p;
  p *= p; p *= p; p *= p; p *= p;
  return p;
}

/* What a day leaves of a group that gains some and stays at 1 + r = stay + per * m / n. */
static inline double left(double group, double n, double over) { return group * (n * over); }

static void day(int t, const double *d, const struct rates *r) {
  double *restrict ow = b.ow[t % OPEN_WORKER], *restrict od = b.od[t % OPEN_DRONE];
  double *restrict cw = b.cw[t % CAPPED_WORKER], *restrict cd = b.cd[t % CAPPED_DRONE];
  double *restrict wm = b.wm[t % CAPPED_WORKER], *restrict dm = b.dm[t % CAPPED_DRONE];
  const double laying = d[0], drones = d[1], winter = d[2], release = d[3], few = 1e-12;
  LANES {
    double n0 = b.hiveS[l] + b.hiveH[l] + b.forS[l] + (b.forH[l] + b.winS[l] + b.winH[l]);
    double n = n0 > 1 ? n0 : 1, m = b.phoretic[l];
    double capW = ow[l], capD = od[l];
    double draw = r->iw * capW + r->id * capD;
    /* denominators */
    double a0 = n0 + r->half + few;
    double c = cw[l] + few, cdr = cd[l] + few;
    double a1 = c + 0.5 * wm[l], a2 = c + r->cappedD / 2 * wm[l], a3 = c + r->wCrowd / 2 * wm[l];
    double a4 = cdr + r->dCrowd / 2 * dm[l];
    double h1 = n * (1 + r->hiveD + r->foraging) + r->hiveD * r->onSummer * m;
    double f1 = n * (1 + r->forD) + r->forD * r->onSummer * m;
    double w1 = n * (1 + r->winD + release) + r->winD * r->onWinter * m;
    double k = r->harm;
    double h2 = n * (1 + k * r->hiveD + r->foraging) + k * r->hiveD * r->onSummer * m;
    double f2 = n * (1 + k * r->forD) + k * r->forD * r->onSummer * m;
    double w2 = n * (1 + k * r->winD + release) + k * r->winD * r->onWinter * m;
    double bees = n + r->shortest * draw, brood = b.cells[l] + r->few;
    double deaths = r->broodless * brood + r->withBrood * b.cells[l];
    double all = draw * brood + deaths * bees;
    /* three divisions for fourteen reciprocals */
    double p01 = a0 * a1, p012 = p01 * a2, p0123 = p012 * a3, q = 1 / (p0123 * a4);
    double o4 = q * p0123; q *= a4; double o3 = q * p012; q *= a3; double o2 = q * p01; q *= a2;
    double o1 = q * a0, o0 = q * a1;
    double ph = h1 * f1, phf = ph * w1, pf = phf * h2; q = 1 / (pf * f2);
    double of2 = q * pf; q *= f2; double oh2 = q * phf; q *= h2; double ow1 = q * ph; q *= w1;
    double of1 = q * h1, oh1 = q * f1;
    double g2 = w2 * bees, g3 = g2 * brood; q = 1 / (g3 * all);
    double oall = q * g3; q *= all; double obrood = q * g2; q *= brood;
    double obees = q * w2, ow2 = q * bees;
    /* brood */
    double share = b.strength[l] * n0 * o0 * laying;
    ow[l] = share * (1 - drones) * r->ws;
    od[l] = share * drones * r->ds;
    /* emergence */
    double te = c * o1, ta = c * o2, tw = c * o3, td = cdr * o4;
    double clean = te * te, live = ta * ta - clean;
    double sound = cw[l] * clean, harmed = cw[l] * (live > 0 ? live : 0);
    double yw = r->wMade * b.vigour[l] * wm[l] * tw * tw * tw;
    double yd = r->dMade * b.vigour[l] * dm[l] * td * td * td;
    double out = wm[l] * r->wBack + dm[l] * r->dBack + yw * (1 - r->wLost) + yd * (1 - r->dLost);
    b.daughters[l] += yw + yd;
    b.diedInCells[l] += wm[l] * (1 - r->wBack) + dm[l] * (1 - r->dBack) + yw * r->wLost + yd * r->dLost;
    /* bees */
    double called = release * r->toForage;
    double hs = left(b.hiveS[l] + (1 - winter) * sound, n, oh1), wsn = left(b.winS[l] + winter * sound, n, ow1);
    double hh = left(b.hiveH[l] + (1 - winter) * harmed, n, oh2), wh = left(b.winH[l] + winter * harmed, n, ow2);
    b.forS[l] = left(b.forS[l] + r->foraging * hs + called * wsn, n, of1);
    b.forH[l] = left(b.forH[l] + r->foraging * hh + called * wh, n, of2);
    b.hiveS[l] = hs; b.winS[l] = wsn; b.hiveH[l] = hh; b.winH[l] = wh;
    /* mites */
    double leaving = draw * obees + deaths * obrood;
    double exposed = m + 0.5 * out, staying = exposed * exp_minus(leaving);
    double per = (exposed - staying) * (bees * brood * oall);
    b.phoretic[l] = staying + 0.5 * out;
    b.diedOnBees[l] += per * deaths * obrood;
    double inW = per * obees * r->iw * capW, inD = per * obees * r->id * capD;
    b.cells[l] += capW - cw[l];
    b.droneCells[l] += capD - cd[l];
    b.inWorker[l] += inW - wm[l];
    b.inDrone[l] += inD - dm[l];
    cw[l] = capW; cd[l] = capD; wm[l] = inW; dm[l] = inD;
  }
}

static void fill(row *ring, const double *from, int n, int l, double by, double *sum) {
  for (int i = 0; i < n; i++) {
    ring[i][l] = from[i] * by;
    if (sum) sum[l] += ring[i][l];
  }
}

static void start(const struct season *s, int first) {
  memset(&b, 0, sizeof b);
  double adults = 0;
  for (int k = 0; k < 6; k++) adults += s->start[k];
  LANES {
    const double *m = s->member + 4 * ((first + l) % s->members);
    double size = m[1], mites = adults * size * m[2] / 100, by = mites / s->start[6];
    b.strength[l] = m[0];
    b.vigour[l] = m[3];
    double *kinds[] = {b.hiveS, b.hiveH, b.forS, b.forH, b.winS, b.winH};
    for (int k = 0; k < 6; k++) kinds[k][l] = s->start[k] * size;
    b.phoretic[l] = mites;
    fill(b.ow, s->openWorker, OPEN_WORKER, l, size, NULL);
    fill(b.od, s->openDrone, OPEN_DRONE, l, size, NULL);
    fill(b.cw, s->cappedWorker, CAPPED_WORKER, l, size, b.cells);
    fill(b.cd, s->cappedDrone, CAPPED_DRONE, l, size, b.droneCells);
    fill(b.wm, s->workerMothers, CAPPED_WORKER, l, by, b.inWorker);
    fill(b.dm, s->droneMothers, CAPPED_DRONE, l, by, b.inDrone);
  }
}

static double worst(const struct season *s, int first) {
  double worst = 0;
  LANES {
    const double *e = s->expected + 2 * ((first + l) % s->members);
    double adults = b.hiveS[l] + b.hiveH[l] + b.forS[l] + b.forH[l] + b.winS[l] + b.winH[l];
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
    R(winterDeath), R(releasedToForage), R(harm), R(mitesOnWinterBees), R(mitesOnSummerBees), R(cappedDeathPerMite),
    R(workerInvasion) * R(beesPerGram), R(droneInvasion) * R(beesPerGram), R(shortestStay), R(deathBroodless),
    R(deathWithBrood) - R(deathBroodless), R(workerMothersBack), R(workerDaughters), R(workerDaughtersLost), R(workerCrowding),
    R(droneMothersBack), R(droneDaughters), R(droneDaughtersLost), R(droneCrowding), R(broodForSummerDeath)};
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
