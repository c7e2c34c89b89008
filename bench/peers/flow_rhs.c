/* The flow equations as a shared library, for integrators in other languages. */
#include "flow.h"

static struct flow f;

int flow_open(const char *season, int stages) {
  f = flow_of(read_season(season), stages);
  return dimension(stages);
}

void flow_begin(double *y) { flow_start(&f, y); }

void flow_rate(double t, const double *y, double *r) { derivative(&f, t, y, r); }

double flow_adults(const double *y) { return adults(y); }

double flow_mites(const double *y) { return mites(&f, y); }

const double *flow_tight(void) { return flow_expected(&f); }
