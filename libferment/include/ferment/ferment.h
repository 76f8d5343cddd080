/* libferment's C interface, stable: functions, structs and status codes are only ever added to.
 *
 * Contract. Every function that can fail returns a ferment_status and writes its answer through an out-pointer,
 * which is left untouched on failure. ferment_last_error() then tells, for this thread, what, which value, which
 * range and what to do. Nothing is thrown across. Every struct begins with its size in bytes: fill it with the
 * *_INIT macro, so that a newer library knows which members you have. Temperatures are °C, differences K, doses
 * percent of flour weight, times hours. Any function may be called from any thread. */
#ifndef FERMENT_H
#define FERMENT_H

#include <stdint.h>

#include "export.h"
#include "version.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef int32_t ferment_status;
#define FERMENT_OK 0
#define FERMENT_INVALID_INPUT 1 /* a value no dough can have, or of a wrong form */
#define FERMENT_OUTSIDE_MODEL 2 /* a possible dough, outside what the model describes */
#define FERMENT_NO_SOLUTION 3   /* a question without an answer; the text says what is reachable */
#define FERMENT_NOT_CONVERGED 4 /* a defect of the library, please report it */
#define FERMENT_INTERNAL 99     /* anything else, such as no memory */

typedef int32_t ferment_yeast;
#define FERMENT_YEAST_INSTANT 0
#define FERMENT_YEAST_ACTIVE_DRY 1 /* wetted in warm water first */
#define FERMENT_YEAST_ACTIVE_DRY_UNWETTED 2
#define FERMENT_YEAST_COMPRESSED 3

/* Version as "major.minor.patch"; static, never NULL. */
FERMENT_API const char* ferment_version(void);

/* Text of this thread's last failure in UTF-8, "" if none; valid until this thread's next call. */
FERMENT_API const char* ferment_last_error(void);

/* Inputs of the factor rule; all must be given: the macro sets them to values that are refused. has_preferment 0:
 * preferment_c is not read. */
typedef struct ferment_factor_rule {
  uint32_t size;
  int32_t has_preferment;
  double desired_c;
  double flour_c;
  double room_c;
  double friction_k; /* a difference of temperatures */
  double preferment_c;
} ferment_factor_rule;
#define FERMENT_FACTOR_RULE_INIT \
  { (uint32_t)sizeof(ferment_factor_rule), 0, -1000, -1000, -1000, -1000, -1000 }

/* Water temperature by the trade's factor rule, °C. Fails with INVALID_INPUT outside the field table. */
FERMENT_API ferment_status ferment_water_by_factor_rule(const ferment_factor_rule* inputs, double* water_c);

/* A dough at a constant temperature. dough_c and yeast_percent must be given: the macro sets them to values that are
 * refused. */
typedef struct ferment_dough {
  uint32_t size;
  ferment_yeast yeast;
  double dough_c;
  double yeast_percent; /* as weighed */
  double salt_percent;
  double water_percent;
  double sugar_percent;
  double altitude_m;
} ferment_dough;
#define FERMENT_DOUGH_INIT \
  { (uint32_t)sizeof(ferment_dough), FERMENT_YEAST_INSTANT, -1000, -1000, 2, 65, 0, 0 }

/* Hours from the end of mixing to a rise in percent of the volume just after mixing, at a constant dough temperature,
 * with the parameter set 2026-2. Fails with INVALID_INPUT, OUTSIDE_MODEL (the yeast stands still) or NO_SOLUTION (the
 * dough cannot hold or make that rise). */
FERMENT_API ferment_status ferment_hours_to_rise(double rise_percent, const ferment_dough* dough, double* hours);

/* All of the library behind one function: a question in, its answer out, both as JSON documents in UTF-8.
 *
 *   {"ask": "water", "day": {"today": {"room": "19C"}, "water": {"desired": "24C"}, "dough": {"flour": "1kg"}}}
 *
 * What can be asked: water, mixing, simulate, forecast, choose, rise, explain, cautions, keys; {"ask": "keys",
 * "of": "Day"} answers with the JSON Schema of a day, "of": "ForecastQuestion" with that of a question. The answer ends
 * with a zero byte and is freed by ferment_free. Fails with any status; the text names the way to what is wrong, such
 * as day.stage[1].until_h. */
FERMENT_API ferment_status ferment_ask(const char* question, char** answer);

/* Frees an answer. NULL is nothing to free. */
FERMENT_API void ferment_free(void* memory);

#ifdef __cplusplus
}
#endif

#endif
