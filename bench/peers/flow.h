/* The flow engine's equations: every brood delay a chain of equal stages. */
#ifndef FLOW_H
#define FLOW_H
#include "season.h"

enum { ADULT_KINDS = 6, PHORETIC = 6, LEDGER = 7, CHAINS = 14 };

struct flow {
  const struct season *s;
  int n;
  double year, length, half, ws, ds, foraging, hiveD, forD, winD, release, toForage, harm, onWinter, onSummer, cappedD;
  double iw, id, shortest, broodless, withBrood, wBack, wMade, wLost, wCrowd, dBack, dMade, dLost, dCrowd, halfBrood;
};

static struct flow flow_of(const struct season *s, int n) {
#define R(x) rate(s, #x)
  struct flow f = {s, n, R(yearShare), R(yearLength), R(halfLayingAdults), R(workerSurvival), R(droneSurvival), R(foraging),
    R(hiveDeath), R(foragerDeath), R(winterDeath), R(springRelease), R(releasedToForage), R(harm), R(mitesOnWinterBees),
    R(mitesOnSummerBees), R(cappedDeathPerMite), R(workerInvasion) * R(beesPerGram), R(droneInvasion) * R(beesPerGram),
    R(shortestStay), R(deathBroodless), R(deathWithBrood) - R(deathBroodless), R(workerMothersBack), R(workerDaughters),
    R(workerDaughtersLost), R(workerCrowding), R(droneMothersBack), R(droneDaughters), R(droneDaughtersLost), R(droneCrowding),
    R(broodForSummerDeath)};
  return f;
#undef R
}

static int dimension(int n) { return CHAINS + 6 * n; }

/* Shares each day's cohort out over the stages that its ages fall into. */
static void spread(const double *ring, int days, double *chain, int n) {
  for (int i = 0; i < days; i++) {
    double youngest = (double)(days - i - 1) / days * n, oldest = (double)(days - i) / days * n;
    for (int k = (int)youngest; k < n && k < ceil(oldest); k++) {
      double overlap = fmin(oldest, k + 1) - fmax(youngest, k);
      chain[k] += ring[i] * fmax(0, overlap) / (oldest - youngest);
    }
  }
}

static void flow_start(const struct flow *f, double *y) {
  const struct season *s = f->s;
  int n = f->n;
  memset(y, 0, sizeof(double) * (size_t)dimension(n));
  memcpy(y, s->start, sizeof(double) * 7);
  double *c = y + CHAINS;
  spread(s->openWorker, OPEN_WORKER, c, n);
  spread(s->openDrone, OPEN_DRONE, c + n, n);
  spread(s->cappedWorker, CAPPED_WORKER, c + 2 * n, n);
  spread(s->cappedDrone, CAPPED_DRONE, c + 3 * n, n);
  spread(s->workerMothers, CAPPED_WORKER, c + 4 * n, n);
  spread(s->droneMothers, CAPPED_DRONE, c + 5 * n, n);
}

static inline double pos(double x) { return x > 0 ? x : 0; }

static double chain(double *rate, const double *y, int n, double in, double passage) {
  double sum = 0;
  for (int k = 0; k < n; k++) {
    double out = passage * pos(y[k]);
    rate[k] = in - out;
    in = out;
    sum += pos(y[k]);
  }
  return sum;
}

static void age(const struct flow *f, double *rate, const double *y, int kind, double emerging, double harm, double carried,
                double winter, double release) {
  double h = pos(y[kind]), fo = pos(y[2 + kind]), w = pos(y[4 + kind]);
  double summer = 1 + f->onSummer * carried, cold = 1 + f->onWinter * carried;
  rate[kind] = emerging * (1 - winter) - f->foraging * h - harm * f->hiveD * summer * h;
  rate[2 + kind] = f->foraging * h + release * w * f->toForage - harm * f->forD * summer * fo;
  rate[4 + kind] = emerging * winter - release * w - harm * f->winD * cold * w;
}

static void derivative(const struct flow *f, double t, const double *y, double *r) {
  const int n = f->n;
  const double few = 1e-12, year = f->year + (t - 0.5) / f->length;
  const double *c = y + CHAINS;
  double *rc = r + CHAINS, adults = 0, cw = n / 12.0, cd = n / 14.0, m = pos(y[PHORETIC]);
  for (int k = 0; k < ADULT_KINDS; k++) adults += pos(y[k]);
  double bees = fmax(1, adults), drones = curve_at(&f->s->droneShare, year);
  double eggs = curve_at(&f->s->laying, year) * adults / (adults + f->half);
  double capW = n / 9.0 * pos(c[n - 1]), capD = n / 10.0 * pos(c[2 * n - 1]);
  chain(rc, c, n, eggs * (1 - drones) * f->ws, n / 9.0);
  chain(rc + n, c + n, n, eggs * drones * f->ds, n / 10.0);
  double toW = f->iw * capW / bees, toD = f->id * capD / bees, x = toW + toD;
  double per = m / (1 + f->shortest * x);
  double cells = chain(rc + 2 * n, c + 2 * n, n, capW, cw);
  chain(rc + 3 * n, c + 3 * n, n, capD, cd);
  chain(rc + 4 * n, c + 4 * n, n, per * toW, cw);
  chain(rc + 5 * n, c + 5 * n, n, per * toD, cd);
  double death = f->broodless + f->withBrood * cells / (cells + f->halfBrood);
  double wc = pos(c[3 * n - 1]), dc = pos(c[4 * n - 1]), wm = pos(c[5 * n - 1]), dm = pos(c[6 * n - 1]);
  double lw = wm / (wc + few), ld = dm / (dc + few);
  double fw = 1 / (1 + f->wCrowd / 2 * lw), fd = 1 / (1 + f->dCrowd / 2 * ld), e = 1 / (1 + lw / 2), a = 1 / (1 + f->cappedD / 2 * lw);
  double yw = cw * wm * f->wMade * fw * fw * fw, yd = cd * dm * f->dMade * fd * fd * fd;
  double back = cw * wm * f->wBack + cd * dm * f->dBack + yw * (1 - f->wLost) + yd * (1 - f->dLost);
  r[PHORETIC] = back - per * x - death * m;
  for (int k = LEDGER; k < CHAINS; k++) r[k] = 0;
  r[7] = yw + yd;
  r[9] = death * m;
  r[10] = cw * wm + cd * dm + yw + yd - back;
  double winter = curve_at(&f->s->winterShare, year), release = curve_at(&f->s->springRelease, year) * f->release;
  double out = cw * wc, carried = m / bees;
  age(f, r, y, 0, out * e * e, 1, carried, winter, release);
  age(f, r, y, 1, out * pos(a * a - e * e), f->harm, carried, winter, release);
}

/* What the flow engine makes of the season in a tight run. */
static const double *flow_expected(const struct flow *f) {
  for (int i = 0; i < f->s->flows; i++)
    if (f->s->stages[i] == f->n) return f->s->flow[i];
  fail("the season holds no flow of so many", "stages");
  return NULL;
}

static double mites(const struct flow *f, const double *y) {
  double sum = pos(y[PHORETIC]);
  for (int k = 0; k < 2 * f->n; k++) sum += pos(y[CHAINS + 4 * f->n + k]);
  return sum;
}

static double adults(const double *y) {
  double sum = 0;
  for (int k = 0; k < ADULT_KINDS; k++) sum += pos(y[k]);
  return sum;
}
#endif
