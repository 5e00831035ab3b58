/* The living model of science/growth and the oxygen over it as eight equations,
   walked by SUNDIALS CVODE (BDF, dense Newton). Reads brews as
   job/forecast/judged_test.go writes them: constants, start, and the hourly
   oxygen that the program's own integrator found. It looks for the loosest
   tolerance at which CVODE is at least as near to a tight reference as that
   integrator is, and times it there. Prints: own error, CVODE's error, relative
   tolerance, nanoseconds a brew (the best of twenty rounds). */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

enum { READY, SLOW, BACTERIA, FUNGI, GRAZERS, NITROGEN, BOUND, OXYGEN, STATES };
enum { CONSTANTS = 25, MOST_HOURS = 96 };

typedef struct {
  double growth, half_ready, yield, endogenous, fungal_growth, fungal_yield, hydrolysis, half_surface, repression, grazing,
      half_prey, prey_floor, grazer_yield, grazer_loss, half_oxygen, half_nitrogen, slime_share, cell_nitrogen, slow_nitrogen, inert,
      warm_bacteria, warm_fungi, warm_decay, kla, saturation;
  double start[STATES];
  double own[MOST_HOURS];
} brew;

/* The rates of growth.Kinetics.Pace, each in proportion to the oxygen factor. */
static int rates(sunrealtype t, N_Vector y, N_Vector dy, void *data) {
  (void)t;
  const brew *k = data;
  const double *s = N_VGetArrayPointer(y);
  double *d = N_VGetArrayPointer(dy);
  double ready = fmax(0, s[READY]), slow = fmax(0, s[SLOW]), b = fmax(0, s[BACTERIA]), f = fmax(0, s[FUNGI]);
  double g = fmax(0, s[GRAZERS]), n = fmax(0, s[NITROGEN]), oxygen = fmax(0, s[OXYGEN]);
  double living = b + f, taken = 0;
  if (living > 0 && slow > 0)
    taken = k->hydrolysis * k->warm_decay * slow * living / (k->half_surface * living + slow) * k->repression / (k->repression + ready);
  double food = ready / (k->half_ready + ready);
  double bacteria = k->growth * k->warm_bacteria * food * b, fungi = k->fungal_growth * k->warm_fungi * food * f;
  double eaten = bacteria / k->yield + fungi / k->fungal_yield;
  double respired = k->endogenous * k->warm_decay * b, respired_fungi = 0.5 * k->endogenous * k->warm_decay * f;
  double prey = b - k->prey_floor, grown = 0, grazed = 0;
  if (prey > 0 && g > 0) {
    grown = k->grazing * k->warm_bacteria * prey / (k->half_prey + prey) * g;
    grazed = grown / k->grazer_yield;
  }
  double lost = k->grazer_loss * k->warm_decay * g, decay = respired + respired_fungi + lost;
  double share = living + g > 0 ? s[BOUND] / (living + g) : 0;
  double given = share * (decay + grazed - grown), freed = k->slow_nitrogen * taken + given;
  double need = k->cell_nitrogen * (bacteria + fungi), bound = need * n / (k->half_nitrogen + n);
  if (need > 0) {
    double allowed = k->slime_share + (1 - k->slime_share) * bound / need;
    bacteria *= allowed, fungi *= allowed, eaten *= allowed, bound *= allowed;
  }
  double demand = (eaten - bacteria - fungi) + (1 - k->inert) * decay + (grazed - grown);
  double factor = oxygen / (k->half_oxygen + oxygen);
  d[READY] = factor * (taken - eaten);
  d[SLOW] = factor * -taken;
  d[BACTERIA] = factor * (bacteria - respired - grazed);
  d[FUNGI] = factor * (fungi - respired_fungi);
  d[GRAZERS] = factor * (grown - lost);
  d[NITROGEN] = factor * (freed - bound);
  d[BOUND] = factor * (bound - given);
  d[OXYGEN] = k->kla * (k->saturation - s[OXYGEN]) - factor * demand;
  return 0;
}

static void must(int flag, const char *what) {
  if (flag < 0) {
    fprintf(stderr, "%s: %d\n", what, flag);
    exit(1);
  }
}

/* walk fills the hourly oxygen of one brew at a tolerance. */
static void walk(brew *k, int hours, double tolerance, double *course, SUNContext context) {
  N_Vector y = N_VNew_Serial(STATES, context);
  for (int i = 0; i < STATES; i++) N_VGetArrayPointer(y)[i] = k->start[i];
  void *solver = CVodeCreate(CV_BDF, context);
  must(CVodeInit(solver, rates, 0, y), "init");
  must(CVodeSStolerances(solver, tolerance, tolerance), "tolerance");
  must(CVodeSetUserData(solver, k), "data");
  must(CVodeSetMaxNumSteps(solver, 100000), "steps");
  SUNMatrix matrix = SUNDenseMatrix(STATES, STATES, context);
  SUNLinearSolver linear = SUNLinSol_Dense(y, matrix, context);
  must(CVodeSetLinearSolver(solver, linear, matrix), "linear");
  for (int hour = 1; hour <= hours; hour++) {
    sunrealtype reached;
    must(CVode(solver, hour, y, &reached, CV_NORMAL), "walk");
    course[hour - 1] = N_VGetArrayPointer(y)[OXYGEN];
  }
  SUNLinSolFree(linear);
  SUNMatDestroy(matrix);
  CVodeFree(&solver);
  N_VDestroy(y);
}

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv) {
  int brews, hours;
  FILE *in = argc == 2 ? fopen(argv[1], "r") : NULL;
  if (!in || fscanf(in, "%d %d", &brews, &hours) != 2 || hours > MOST_HOURS) return 1;
  brew *all = calloc(brews, sizeof *all);
  double *reference = calloc((size_t)brews * hours, sizeof *reference), course[MOST_HOURS];
  for (int i = 0; i < brews; i++) {
    double *constants = &all[i].growth;
    for (int j = 0; j < CONSTANTS + STATES; j++)
      if (fscanf(in, "%lf", &constants[j]) != 1) return 1;
    for (int j = 0; j < hours; j++)
      if (fscanf(in, "%lf", &all[i].own[j]) != 1) return 1;
  }
  SUNContext context;
  must(SUNContext_Create(NULL, &context), "context");
  double own = 0;
  for (int i = 0; i < brews; i++) {
    walk(&all[i], hours, 1e-11, reference + (size_t)i * hours, context);
    for (int j = 0; j < hours; j++) own += pow(all[i].own[j] - reference[(size_t)i * hours + j], 2);
  }
  own = sqrt(own / brews / hours);
  for (double tolerance = 1e-1; tolerance > 1e-9; tolerance /= pow(10, 0.125)) {
    double error = 0;
    for (int i = 0; i < brews; i++) {
      walk(&all[i], hours, tolerance, course, context);
      for (int j = 0; j < hours; j++) error += pow(course[j] - reference[(size_t)i * hours + j], 2);
    }
    error = sqrt(error / brews / hours);
    if (error <= own) {
      double took = 1e9;
      for (int round = 0; round < 20; round++) {
        double start = seconds();
        for (int i = 0; i < brews; i++) walk(&all[i], hours, tolerance, course, context);
        took = fmin(took, seconds() - start);
      }
      printf("%.3g %.3g %.1e %.0f\n", own, error, tolerance, took / brews * 1e9);
      return 0;
    }
  }
  return 1;
}
