/* The flow season by CVODE. Arguments: season, stages, tolerance, method (adams or bdf).
   Prints "ms-per-season evaluations largest-error-against-a-tight-run adults mites". */
#include "flow.h"
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

static int right(realtype t, N_Vector y, N_Vector r, void *f) {
  derivative(f, t, N_VGetArrayPointer(y), N_VGetArrayPointer(r));
  return 0;
}

/* Adults and mites at the start of every day; the number of evaluations. */
static long run(struct flow *f, double relative, double absolute, int bdf, double *days) {
  SUNContext context;
  SUNContext_Create(NULL, &context);
  int dim = dimension(f->n);
  N_Vector y = N_VNew_Serial(dim, context);
  flow_start(f, N_VGetArrayPointer(y));
  void *cv = CVodeCreate(bdf ? CV_BDF : CV_ADAMS, context);
  CVodeInit(cv, right, 0, y);
  CVodeSStolerances(cv, relative, absolute);
  CVodeSetUserData(cv, f);
  CVodeSetMaxNumSteps(cv, 1000000);
  SUNMatrix jacobian = NULL;
  SUNLinearSolver linear = NULL;
  SUNNonlinearSolver nonlinear = NULL;
  if (bdf) {
    jacobian = SUNDenseMatrix(dim, dim, context);
    linear = SUNLinSol_Dense(y, jacobian, context);
    CVodeSetLinearSolver(cv, linear, jacobian);
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
  if (bdf) CVodeGetNumLinRhsEvals(cv, &more);
  N_VDestroy(y);
  CVodeFree(&cv);
  if (bdf) {
    SUNLinSolFree(linear);
    SUNMatDestroy(jacobian);
  } else {
    SUNNonlinSolFree(nonlinear);
  }
  SUNContext_Free(&context);
  return evaluations + more;
}

int main(int argc, char **argv) {
  if (argc != 5) fail("usage: flow_cvode", "season.txt stages tolerance adams|bdf");
  struct season *s = read_season(argv[1]);
  struct flow f = flow_of(s, atoi(argv[2]));
  double tolerance = atof(argv[3]), best = 1e9, error = 0;
  int bdf = !strcmp(argv[4], "bdf"), values = 2 * (s->days + 1);
  double *tight = malloc(sizeof(double) * (size_t)values), *days = malloc(sizeof(double) * (size_t)values);
  run(&f, 1e-13, 1e-11, 0, tight);
  long evaluations = 0;
  for (int round = 0; round < 30; round++) {
    double from = cpu_seconds();
    evaluations = run(&f, tolerance, 100 * tolerance, bdf, days);
    best = fmin(best, 1e3 * (cpu_seconds() - from));
  }
  for (int i = 0; i < values; i++) error = fmax(error, fabs(days[i] - tight[i]) / (1 + tight[i]));
  printf("%.3f %ld %.2g %.10g %.10g\n", best, evaluations, error, tight[values - 2], tight[values - 1]);
  return 0;
}
