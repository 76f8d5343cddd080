/* The C interface from C99: answers, every status, null pointers, sizes, texts, and outputs left alone on failure. */
#include <ferment/ferment.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int failures = 0;

static void check(int holds, const char* what, int line) {
  if (holds) return;
  ++failures;
  fprintf(stderr, "test_ferment.c:%d: %s (last error: %s)\n", line, what, ferment_last_error());
}
#define CHECK(condition) check((condition) != 0, #condition, __LINE__)

static const double untouched = -12345.5;

/* A call that must fail: its status, a word of its text, and the output as it was. */
static void check_failure(ferment_status status, ferment_status expected, const char* words, const double* out,
                          int line) {
  check(status == expected, "the status is the expected one", line);
  check(strstr(ferment_last_error(), words) != NULL, words, line);
  if (out != NULL) check(*out == untouched, "the output is untouched", line);
}

static ferment_dough plain_dough(void) {
  ferment_dough dough = FERMENT_DOUGH_INIT;
  dough.dough_c = 25;
  dough.yeast_percent = 1;
  return dough;
}

static ferment_factor_rule plain_rule(void) {
  ferment_factor_rule rule = FERMENT_FACTOR_RULE_INIT;
  rule.desired_c = 25;
  rule.flour_c = 21;
  rule.room_c = 22;
  rule.friction_k = 6;
  return rule;
}

static void test_version(void) { CHECK(strcmp(ferment_version(), EXPECTED_VERSION) == 0); }

static void test_factor_rule(void) {
  ferment_factor_rule rule = plain_rule();
  double water_c = untouched;
  CHECK(ferment_water_by_factor_rule(&rule, &water_c) == FERMENT_OK);
  CHECK(water_c == 3 * 25 - 21 - 22 - 6); /* small whole numbers: exact */
  CHECK(strcmp(ferment_last_error(), "") == 0);

  rule.preferment_c = 18;
  CHECK(ferment_water_by_factor_rule(&rule, &water_c) == FERMENT_OK);
  CHECK(water_c == 26); /* has_preferment is 0: not read */
  rule.has_preferment = 1;
  CHECK(ferment_water_by_factor_rule(&rule, &water_c) == FERMENT_OK);
  CHECK(water_c == 4 * 25 - 21 - 22 - 18 - 6);
}

static void test_factor_rule_failures(void) {
  ferment_factor_rule rule = FERMENT_FACTOR_RULE_INIT;
  double water_c = untouched;
  ferment_status status;

  status = ferment_water_by_factor_rule(&rule, &water_c); /* nothing filled in */
  check_failure(status, FERMENT_INVALID_INPUT, "desired_c", &water_c, __LINE__);
  rule = plain_rule();
  rule.friction_k = -1000; /* left out */
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "friction_k", &water_c, __LINE__);

  rule = plain_rule();
  rule.desired_c = 77; /* °F by mistake */
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "did you mean 77 °F?", &water_c, __LINE__);

  rule = plain_rule();
  rule.room_c = (double)NAN;
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "room_c", &water_c, __LINE__);

  rule = plain_rule();
  rule.has_preferment = 1;
  rule.preferment_c = 400;
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "preferment_c", &water_c, __LINE__);

  rule = plain_rule();
  --rule.size;
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_factor_rule.size", &water_c, __LINE__);

  rule.size = 0;
  status = ferment_water_by_factor_rule(&rule, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_factor_rule.size is 0", &water_c, __LINE__);

  status = ferment_water_by_factor_rule(NULL, &water_c);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_factor_rule is a null pointer", &water_c, __LINE__);

  rule = plain_rule();
  status = ferment_water_by_factor_rule(&rule, NULL);
  check_failure(status, FERMENT_INVALID_INPUT, "out-pointer is null", NULL, __LINE__);
}

static void test_hours(void) {
  ferment_dough dough = plain_dough();
  double hours = untouched;
  double warmer = untouched;
  CHECK(ferment_hours_to_rise(100, &dough, &hours) == FERMENT_OK);
  CHECK(hours > 1.0761 && hours < 1.0763); /* tests/reference: 1 % instant, 25 °C, an independent implementation */
  CHECK(strcmp(ferment_last_error(), "") == 0);

  dough.dough_c = 28;
  CHECK(ferment_hours_to_rise(100, &dough, &warmer) == FERMENT_OK);
  CHECK(warmer > 0 && warmer < hours);
}

/* A program of a later interface: members that this library does not know are 0, or the call is refused. */
static void test_newer_members(void) {
  struct {
    ferment_dough dough;
    double later;
  } newer;
  double hours = untouched;
  double plain_hours = untouched;
  ferment_status status;
  memset(&newer, 0, sizeof newer);
  newer.dough = plain_dough();
  newer.dough.size = (uint32_t)sizeof newer;
  CHECK(ferment_hours_to_rise(100, &newer.dough, &hours) == FERMENT_OK);
  newer.dough.size = (uint32_t)sizeof newer.dough;
  CHECK(ferment_hours_to_rise(100, &newer.dough, &plain_hours) == FERMENT_OK);
  CHECK(hours == plain_hours);
  newer.dough.size = (uint32_t)sizeof newer;
  newer.later = 1;
  hours = untouched;
  status = ferment_hours_to_rise(100, &newer.dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "leave newer members 0", &hours, __LINE__);
  newer.dough.size = 1000000;
  status = ferment_hours_to_rise(100, &newer.dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_dough.size is 1000000", &hours, __LINE__);
}

/* Every member of the struct arrives: each change moves the answer the way it must. */
static void test_hours_reads_every_member(void) {
  const ferment_dough plain = plain_dough();
  ferment_dough dough = plain;
  double hours = untouched;
  double other = untouched;
  CHECK(ferment_hours_to_rise(100, &plain, &hours) == FERMENT_OK);

  dough.yeast_percent = 0.5;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other > hours);

  dough = plain;
  dough.yeast = FERMENT_YEAST_COMPRESSED;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other > hours); /* fresh yeast: a third of the strength by weight */

  dough.yeast = FERMENT_YEAST_ACTIVE_DRY;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  dough.yeast = FERMENT_YEAST_ACTIVE_DRY_UNWETTED;
  CHECK(ferment_hours_to_rise(100, &dough, &hours) == FERMENT_OK);
  CHECK(hours > other); /* starts later */
  CHECK(ferment_hours_to_rise(100, &plain, &hours) == FERMENT_OK);

  dough = plain;
  dough.salt_percent = 3;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other > hours);

  dough = plain;
  dough.water_percent = 80;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other != hours);

  dough = plain;
  dough.sugar_percent = 15;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other > hours);

  dough = plain;
  dough.altitude_m = 2000;
  CHECK(ferment_hours_to_rise(100, &dough, &other) == FERMENT_OK);
  CHECK(other < hours); /* thinner air: less gas fills the same volume */
}

static void test_hours_failures(void) {
  ferment_dough dough = FERMENT_DOUGH_INIT;
  double hours = untouched;
  ferment_status status;

  status = ferment_hours_to_rise(100, &dough, &hours); /* the macro leaves out what must be given */
  check_failure(status, FERMENT_INVALID_INPUT, "dough_c", &hours, __LINE__);
  dough.dough_c = 25;
  status = ferment_hours_to_rise(100, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "yeast", &hours, __LINE__);

  dough = plain_dough();
  dough.yeast = 4;
  status = ferment_hours_to_rise(100, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "yeast kind 4 is unknown", &hours, __LINE__);
  dough.yeast = -1;
  status = ferment_hours_to_rise(100, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "yeast kind", &hours, __LINE__);

  dough = plain_dough();
  status = ferment_hours_to_rise(0, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "rise_percent", &hours, __LINE__);
  status = ferment_hours_to_rise((double)INFINITY, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "rise_percent", &hours, __LINE__);

  status = ferment_hours_to_rise(900, &dough, &hours);
  check_failure(status, FERMENT_NO_SOLUTION, "never reached", &hours, __LINE__);

  dough.dough_c = -2; /* the clock's lower limit, where it stands still */
  status = ferment_hours_to_rise(100, &dough, &hours);
  check_failure(status, FERMENT_OUTSIDE_MODEL, "stands still", &hours, __LINE__);

  dough = plain_dough();
  --dough.size;
  status = ferment_hours_to_rise(100, &dough, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_dough.size", &hours, __LINE__);
  status = ferment_hours_to_rise(100, NULL, &hours);
  check_failure(status, FERMENT_INVALID_INPUT, "ferment_dough is a null pointer", &hours, __LINE__);
  dough = plain_dough();
  status = ferment_hours_to_rise(100, &dough, NULL);
  check_failure(status, FERMENT_INVALID_INPUT, "out-pointer is null", NULL, __LINE__);

  CHECK(ferment_hours_to_rise(100, &dough, &hours) == FERMENT_OK);
  CHECK(strcmp(ferment_last_error(), "") == 0); /* a success clears the text */
}

/* Questions: the answer is handed out whole and freed; a failure leaves the pointer alone and tells the way. */
static void test_ask(void) {
  static const char rise[] = "{\"ask\": \"rise\", \"rise_percent\": 100, \"dough_c\": 25, \"yeast_percent\": 1}";
  const ferment_dough dough = plain_dough();
  char here = 'x';
  char* answer = NULL;
  const char* found;
  double hours = untouched;
  ferment_status status;

  CHECK(ferment_ask(rise, &answer) == FERMENT_OK);
  CHECK(strcmp(ferment_last_error(), "") == 0);
  CHECK(answer != NULL && answer[strlen(answer) - 1] == '}');
  found = answer != NULL ? strstr(answer, "\"hours\":") : NULL;
  CHECK(found != NULL);
  CHECK(ferment_hours_to_rise(100, &dough, &hours) == FERMENT_OK);
  if (found != NULL) CHECK(strtod(found + strlen("\"hours\":"), NULL) == hours); /* the same digits */
  ferment_free(answer);

  answer = &here;
  status =
      ferment_ask("{\"ask\": \"rise\", \"rise_percent\": 100, \"dough_c\": 25, \"yeast_percent\": \"1\"}", &answer);
  check_failure(status, FERMENT_INVALID_INPUT, "yeast_percent: a number is wanted", NULL, __LINE__);
  CHECK(answer == &here);
  status = ferment_ask("{\"ask\": \"rise\", \"rise_percent\": 900, \"dough_c\": 25, \"yeast_percent\": 1}", &answer);
  check_failure(status, FERMENT_NO_SOLUTION, "never reached", NULL, __LINE__);
  status = ferment_ask("{\"ask\": \"rise\", \"rise_percent\": 90, \"dough_c\": -2, \"yeast_percent\": 1}", &answer);
  check_failure(status, FERMENT_OUTSIDE_MODEL, "stands still", NULL, __LINE__);
  status = ferment_ask("", &answer);
  check_failure(status, FERMENT_INVALID_INPUT, "the text is empty", NULL, __LINE__);
  status = ferment_ask(NULL, &answer);
  check_failure(status, FERMENT_INVALID_INPUT, "a pointer is null", NULL, __LINE__);
  CHECK(answer == &here);
  status = ferment_ask(rise, NULL);
  check_failure(status, FERMENT_INVALID_INPUT, "a pointer is null", NULL, __LINE__);
  ferment_free(NULL);
}

int main(void) {
  test_version();
  test_factor_rule();
  test_factor_rule_failures();
  test_hours();
  test_newer_members();
  test_hours_reads_every_member();
  test_hours_failures();
  test_ask();
  if (failures > 0) fprintf(stderr, "%d checks failed\n", failures);
  return failures == 0 ? 0 : 1;
}
