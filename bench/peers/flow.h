/* The flow engine's equations: every brood delay a chain of equal stages. */
#ifndef FLOW_H
#define FLOW_H
#include "season.h"

enum { DAUGHTERS = PHORETIC + 1, IMMIGRANTS, DIED_ON_BEES, DIED_IN_CELLS, KILLED, CUT_OUT, MOVED_AWAY, CHAINS };

struct flow {
  const struct season *s;
  int n;
  double year, length, half, ws, ds, foraging, hiveD, forD, winD, release, toForage, overt, infections, v, cappedD;
  double iw, id, shortest, link, wBack, wMade, wLost, wCrowd, dBack, dMade, dLost, dCrowd;
};

static struct flow flow_of(const struct season *s, int n) {
#define R(x) rate(s, #x)
  struct flow f = {s, n, R(yearShare), R(yearLength), R(halfLayingAdults), R(workerSurvival), R(droneSurvival), R(foraging),
    R(hiveDeath), R(foragerDeath), R(winterDeath), R(springRelease), R(releasedToForage), R(overtDeath), R(adultInfections),
    R(infectivity), R(cappedDeathPerMite), R(workerInvasion) * R(beesPerGram), R(droneInvasion) * R(beesPerGram),
    R(shortestStay), R(deathLink), R(workerMothersBack), R(workerDaughters), R(workerDaughtersLost), R(workerCrowding),
    R(droneMothersBack), R(droneDaughters), R(droneDaughtersLost), R(droneCrowding)};
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
  memcpy(y, s->start, sizeof s->start);
  double *c = y + CHAINS;
  spread(s->openWorker, OPEN_WORKER, c, n);
  spread(s->openDrone, OPEN_DRONE, c + n, n);
  spread(s->cappedWorker, CAPPED_WORKER, c + 2 * n, n);
  spread(s->cappedDrone, CAPPED_DRONE, c + 3 * n, n);
  spread(s->workerMothers, CAPPED_WORKER, c + 4 * n, n);
  spread(s->droneMothers, CAPPED_DRONE, c + 5 * n, n);
}

static inline double pos(double x) { return x > 0 ? x : 0; }

static void chain(double *rate, const double *y, int n, double in, double passage) {
  for (int k = 0; k < n; k++) {
    double out = passage * pos(y[k]);
    rate[k] = in - out;
    in = out;
  }
}

/* Hive bees and foragers of one infection; what joins them; returns those that die. */
static double summer(const struct flow *f, double *rate, const double *y, int infection, double toHive, double toForagers, double harm) {
  int hive = HIVE_SOUND + infection, forager = FORAGER_SOUND + infection;
  double h = pos(y[hive]), fo = pos(y[forager]), first = f->foraging * h, hd = harm * f->hiveD * h, fd = harm * f->forD * fo;
  rate[hive] = toHive - first - hd;
  rate[forager] = first + toForagers - fd;
  return hd + fd;
}

static double age(const struct flow *f, double *rate, const double *y, double sound, double overt, double infection,
                  double winter, double release) {
  double w = pos(y[WINTER]), released = release * w, called = f->toForage * released;
  double hive = infection * pos(y[HIVE_SOUND]), foragers = infection * pos(y[FORAGER_SOUND]);
  rate[WINTER] = sound * winter - released - (f->winD + infection) * w;
  return f->winD * w + released - called + summer(f, rate, y, 0, sound * (1 - winter) - hive, called - foragers, 1)
    + summer(f, rate, y, 1, overt, 0, f->overt) + summer(f, rate, y, 2, hive + infection * w, foragers, 1);
}

static void derivative(const struct flow *f, double t, const double *y, double *r) {
  const int n = f->n;
  const double few = 1e-12, year = f->year + (t - 0.5) / f->length;
  const double *c = y + CHAINS;
  double *rc = r + CHAINS, adults = 0, cw = n / 12.0, cd = n / 14.0, m = pos(y[PHORETIC]);
  for (int k = 0; k < ADULT_CLASSES; k++) adults += pos(y[k]);
  double bees = fmax(1, adults), drones = curve_at(&f->s->droneShare, year);
  double eggs = curve_at(&f->s->laying, year) * adults / (adults + f->half);
  double capW = n / 9.0 * pos(c[n - 1]), capD = n / 10.0 * pos(c[2 * n - 1]);
  chain(rc, c, n, eggs * (1 - drones) * f->ws, n / 9.0);
  chain(rc + n, c + n, n, eggs * drones * f->ds, n / 10.0);
  double toW = f->iw * capW / bees, toD = f->id * capD / bees, x = toW + toD;
  double per = m / (1 + f->shortest * x);
  chain(rc + 2 * n, c + 2 * n, n, capW, cw);
  chain(rc + 3 * n, c + 3 * n, n, capD, cd);
  chain(rc + 4 * n, c + 4 * n, n, per * toW, cw);
  chain(rc + 5 * n, c + 5 * n, n, per * toD, cd);
  double wc = pos(c[3 * n - 1]), dc = pos(c[4 * n - 1]), wm = pos(c[5 * n - 1]), dm = pos(c[6 * n - 1]);
  double lw = wm / (wc + few), ld = dm / (dc + few);
  double fw = 1 / (1 + f->wCrowd / 2 * lw), fd = 1 / (1 + f->dCrowd / 2 * ld), e = 1 / (1 + lw / 2), a = 1 / (1 + f->cappedD / 2 * lw);
  double yw = cw * wm * f->wMade * fw * fw * fw, yd = cd * dm * f->dMade * fd * fd * fd;
  double back = cw * wm * f->wBack + cd * dm * f->dBack + yw * (1 - f->wLost) + yd * (1 - f->dLost);
  double winter = curve_at(&f->s->winterShare, year), release = curve_at(&f->s->springRelease, year) * f->release;
  double out = cw * wc, clean = e * e, alive = a * a, o = 1 / (1 + f->v * lw / 2);
  double overt = clean < 1 ? (1 - o * o) * pos(alive - clean) / (1 - clean) : 0;
  double dead = age(f, r, y, out * (alive - overt), out * overt, f->infections * f->v * back / bees, winter, release);
  double link = f->link * x / (1 + f->shortest * x), death = dead / bees / (1 + link * link);
  r[PHORETIC] = back - per * x - death * m;
  for (int k = PHORETIC + 1; k < CHAINS; k++) r[k] = 0;
  r[DAUGHTERS] = yw + yd;
  r[DIED_ON_BEES] = death * m;
  r[DIED_IN_CELLS] = cw * wm + cd * dm + yw + yd - back;
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
  for (int k = 0; k < ADULT_CLASSES; k++) sum += pos(y[k]);
  return sum;
}
#endif
