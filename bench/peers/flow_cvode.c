/* The flow season by CVODE. Arguments: season, stages, method, tolerances. Methods: adams; bdf, with
   a dense matrix; gmres, which is BDF without one. Checks a tight Adams run against the flow engine's,
   on every day and to 1e-7, then prints for each tolerance "tolerance ms evaluations error": the
   processor time of the best of several seasons, and the largest error on any day. */
#include "flow.h"
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

enum method { ADAMS, BDF, GMRES };

static int right(realtype t, N_Vector y, N_Vector r, void *f) {
  derivative(f, t, N_VGetArrayPointer(y), N_VGetArrayPointer(r));
  return 0;
}

/* Adults and mites at the start of every day; the number of evaluations. */
static long run(struct flow *f, double relative, enum method method, double *days) {
  SUNContext context;
  SUNContext_Create(NULL, &context);
  int dim = dimension(f->n);
  N_Vector y = N_VNew_Serial(dim, context);
  flow_start(f, N_VGetArrayPointer(y));
  void *cv = CVodeCreate(method == ADAMS ? CV_ADAMS : CV_BDF, context);
  CVodeInit(cv, right, 0, y);
  CVodeSStolerances(cv, relative, 100 * relative);
  CVodeSetUserData(cv, f);
  CVodeSetMaxNumSteps(cv, 1000000);
  SUNMatrix jacobian = NULL;
  SUNLinearSolver linear = NULL;
  SUNNonlinearSolver nonlinear = NULL;
  if (method == BDF) {
    jacobian = SUNDenseMatrix(dim, dim, context);
    linear = SUNLinSol_Dense(y, jacobian, context);
    CVodeSetLinearSolver(cv, linear, jacobian);
  } else if (method == GMRES) {
    linear = SUNLinSol_SPGMR(y, SUN_PREC_NONE, 0, context);
    CVodeSetLinearSolver(cv, linear, NULL);
  } else {
    nonlinear = SUNNonlinSol_FixedPoint(y, 0, context);
    CVodeSetNonlinearSolver(cv, nonlinear);
  }
  for (int day = 0; day <= f->s->days; day++) {
    realtype t = 0;
    if (day > 0 && CVode(cv, day, y, &t, CV_NORMAL) < 0) fail("CVODE", "gave up");
    days[2 * day] = adults(N_VGetArrayPointer(y));
    days[2 * day + 1] = mites(f, N_VGetArrayPointer(y));
  }
  long evaluations, more = 0;
  CVodeGetNumRhsEvals(cv, &evaluations);
  if (method != ADAMS) CVodeGetNumLinRhsEvals(cv, &more);
  N_VDestroy(y);
  CVodeFree(&cv);
  if (linear) SUNLinSolFree(linear);
  if (jacobian) SUNMatDestroy(jacobian);
  if (nonlinear) SUNNonlinSolFree(nonlinear);
  SUNContext_Free(&context);
  return evaluations + more;
}

static double largest(const double *a, const double *b, int values) {
  double worst = 0;
  for (int i = 0; i < values; i++) worst = fmax(worst, fabs(a[i] - b[i]) / (1 + fabs(b[i])));
  return worst;
}

int main(int argc, char **argv) {
  if (argc < 5) fail("usage: flow_cvode", "season.txt stages adams|bdf|gmres tolerance...");
  struct season *s = read_season(argv[1]);
  struct flow f = flow_of(s, atoi(argv[2]));
  enum method method = !strcmp(argv[3], "adams") ? ADAMS : !strcmp(argv[3], "bdf") ? BDF : GMRES;
  int values = 2 * (s->days + 1);
  double *days = malloc(sizeof(double) * (size_t)values);
  const double *tight = flow_expected(&f);
  run(&f, 1e-13, ADAMS, days);
  agree(largest(days, tight, values), 1e-7);
  for (int i = 4; i < argc; i++) {
    double best = 1e9, spent = 0;
    long evaluations = 0;
    for (int round = 0; round < 30 && spent < 2; round++) {
      double from = cpu_seconds();
      evaluations = run(&f, atof(argv[i]), method, days);
      double took = cpu_seconds() - from;
      spent += took;
      best = fmin(best, 1e3 * took);
    }
    printf("%s %.3f %ld %.2g\n", argv[i], best, evaluations, largest(days, tight, values));
  }
  return 0;
}
