/* The season that every peer runs, read from the file that the project writes: see SeasonText.java. */
#ifndef SEASON_H
#define SEASON_H
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

/* Adults by class, as AdultClass.java lists them, then mites on bees. */
enum { HIVE_SOUND, HIVE_OVERT, HIVE_CARRIER, FORAGER_SOUND, FORAGER_OVERT, FORAGER_CARRIER, WINTER, ADULT_CLASSES, PHORETIC = ADULT_CLASSES };
enum { OPEN_WORKER = 9, OPEN_DRONE = 10, CAPPED_WORKER = 12, CAPPED_DRONE = 14, MAX_KNOTS = 64, MAX_FLOWS = 8 };
/* A colony's start: adults by class, mites on bees, and the rings in the order of their files. */
enum { STATE = ADULT_CLASSES + 1 + OPEN_WORKER + OPEN_DRONE + 2 * (CAPPED_WORKER + CAPPED_DRONE), MEMBER = 3 };

struct curve { int n; double at[MAX_KNOTS], value[MAX_KNOTS]; };

struct season {
  int days, members;
  double rate[64];
  char name[64][40];
  int rates;
  struct curve laying, droneShare, winterShare, springRelease;
  double *daily;                 /* days x (laying, drone share, winter share, spring release) */
  double start[ADULT_CLASSES + 1]; /* adults by class, mites on bees */
  double openWorker[OPEN_WORKER], openDrone[OPEN_DRONE];
  double cappedWorker[CAPPED_WORKER], cappedDrone[CAPPED_DRONE];
  double workerMothers[CAPPED_WORKER], droneMothers[CAPPED_DRONE];
  double *member;                /* members x (strength, vigour, infectivity) */
  double *state;                 /* members x STATE */
  double *expected;              /* members x (adults, mites) after the last day, daily engine */
  int flows, stages[MAX_FLOWS];
  double *flow[MAX_FLOWS];       /* (days + 1) x (adults, mites), flow engine, tight */
};

static void fail(const char *why, const char *what) {
  fprintf(stderr, "%s %s\n", why, what);
  exit(2);
}

static double number(FILE *f) {
  double x;
  if (fscanf(f, "%lf", &x) != 1) fail("a number is missing from", "the season's file");
  return x;
}

static double *numbers(FILE *f, int n, double *into) {
  if (!into) into = malloc(sizeof(double) * (size_t)n);
  for (int i = 0; i < n; i++) into[i] = number(f);
  return into;
}

static double rate(const struct season *s, const char *name) {
  for (int i = 0; i < s->rates; i++)
    if (!strcmp(s->name[i], name)) return s->rate[i];
  fail("no rate named", name);
  return 0;
}

static struct curve *curve_named(struct season *s, const char *name) {
  if (!strcmp(name, "laying")) return &s->laying;
  if (!strcmp(name, "droneShare")) return &s->droneShare;
  if (!strcmp(name, "winterShare")) return &s->winterShare;
  return &s->springRelease;
}

static double *ring_named(struct season *s, const char *name) {
  if (!strcmp(name, "openWorker")) return s->openWorker;
  if (!strcmp(name, "openDrone")) return s->openDrone;
  if (!strcmp(name, "cappedWorker")) return s->cappedWorker;
  if (!strcmp(name, "cappedDrone")) return s->cappedDrone;
  if (!strcmp(name, "workerMothers")) return s->workerMothers;
  if (!strcmp(name, "droneMothers")) return s->droneMothers;
  return s->start;
}

static struct season *read_season(const char *path) {
  FILE *f = fopen(path, "r");
  if (!f) fail("cannot read", path);
  struct season *s = calloc(1, sizeof *s);
  char kind[40], name[40];
  while (fscanf(f, "%39s", kind) == 1) {
    if (!strcmp(kind, "rate")) {
      if (fscanf(f, "%39s", s->name[s->rates]) != 1) fail("a name is missing from", path);
      s->rate[s->rates++] = number(f);
    } else if (!strcmp(kind, "daily")) {
      s->days = (int)number(f);
      s->daily = numbers(f, 4 * s->days, NULL);
    } else if (!strcmp(kind, "members")) {
      s->members = (int)number(f);
      s->member = numbers(f, MEMBER * s->members, NULL);
    } else if (!strcmp(kind, "states")) {
      s->state = numbers(f, STATE * (int)number(f), NULL);
    } else if (!strcmp(kind, "expected")) {
      s->expected = numbers(f, 2 * (int)number(f), NULL);
    } else {
      if (fscanf(f, "%39s", name) != 1) fail("a name is missing from", path);
      int n = (int)number(f);
      if (!strcmp(kind, "flow")) {
        s->stages[s->flows] = atoi(name);
        s->flow[s->flows++] = numbers(f, n, NULL);
      } else if (!strcmp(kind, "curve")) {
        struct curve *c = curve_named(s, name);
        c->n = n;
        for (int i = 0; i < n; i++) {
          c->at[i] = number(f);
          c->value[i] = number(f);
        }
      } else {
        numbers(f, n, ring_named(s, name));
      }
    }
  }
  fclose(f);
  return s;
}

/* A peer that makes something else of the season is not timed. */
static void agree(double error, double limit) {
  if (error <= limit) return;
  fprintf(stderr, "differs from the project by %.2g, more than %.0e\n", error, limit);
  exit(3);
}

static double cpu_seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

/* Straight lines between knots, repeated every year. */
static double curve_at(const struct curve *c, double year) {
  double x = year - floor(year);
  int right = 0;
  while (right < c->n && c->at[right] <= x) right++;
  int l = right == 0 ? c->n - 1 : right - 1, r = right == c->n ? 0 : right;
  double from = right == 0 ? c->at[l] - 1 : c->at[l], to = right == c->n ? c->at[r] + 1 : c->at[r];
  return c->n == 1 ? c->value[0] : c->value[l] + (c->value[r] - c->value[l]) * ((x - from) / (to - from));
}
#endif
