/* A whole day through one function of C: its water, its forecast, and the yeast that makes it fit the evening.
 *
 *   cc -std=c99 day.c -lferment -o day && ./day
 *
 * A question is a JSON document, and so is its answer. Programs with a JSON library read all of it; this one looks for
 * the numbers it needs. */
#include <ferment/ferment.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* An invented day: pizza for friends. Quantities are texts with their unit, or numbers whose key has it. */
static const char day[] =
    "{\"title\": \"Pizza for eight (invented)\", \"start\": \"12:30\","
    " \"today\": {\"room\": \"22C\", \"flour\": \"20C\", \"tap\": \"12C\"},"
    " \"water\": {\"desired\": \"24C\"},"
    " \"dough\": {\"pieces\": 8, \"piece\": \"260g\", \"water_percent\": 62, \"yeast_percent\": 0.3, \"oil_percent\": "
    "2},"
    " \"mixing\": {\"method\": \"stand_mixer\", \"minutes\": 9},"
    " \"stage\": ["
    "  {\"name\": \"bulk\", \"piece\": \"tub\", \"room\": \"22C\", \"until\": \"2h\", \"handling\": [\"divide\", "
    "\"round\"]},"
    "  {\"name\": \"proof\", \"piece\": \"ball\", \"piece_g\": 260, \"until_rise_percent\": 70}]}";

/* Asks about a day. The answer is freed by ferment_free; NULL after a failure, which is told. */
static char* ask(const char* what, const char* about, const char* more) {
  char question[2000];
  char* answer = NULL;
  snprintf(question, sizeof question, "{\"ask\": \"%s\", \"day\": %s%s}", what, about, more);
  if (ferment_ask(question, &answer) != FERMENT_OK) fprintf(stderr, "%s: %s\n", what, ferment_last_error());
  return answer;
}

/* The number of a key, the first one after a text of the answer. Ends the program if there is none. */
static double number(const char* answer, const char* after, const char* key) {
  const char* at = answer != NULL ? strstr(answer, after) : NULL;
  char* end = NULL;
  double value = 0;
  if (at != NULL) at = strstr(at, key);
  if (at != NULL) value = strtod(at + strlen(key), &end);
  if (at == NULL || end == at + strlen(key)) {
    fprintf(stderr, "the answer has no number %s\n", key);
    exit(EXIT_FAILURE);
  }
  return value;
}

/* An hour of the day as a clock shows it. */
static void print_clock(const char* label, double hour) {
  const int minutes = (int)(60 * hour + 0.5);
  printf("%s %d:%02d\n", label, minutes / 60 % 24, minutes % 60);
}

int main(void) {
  char* answer;
  char* untouched = NULL;

  answer = ask("water", day, "");
  printf("Pour %.0f g of water at %.1f C\n", number(answer, "{", "\"pour_g\":"), number(answer, "{", "\"pour_c\":"));
  ferment_free(answer);

  answer = ask("forecast", day, ", \"draws\": 128");
  print_clock("The balls are ready at", number(answer, "\"name\":\"proof\"", "\"ready_h\":"));
  print_clock("Look at them first at ", number(answer, "\"name\":\"proof\"", "\"look_first_h\":"));
  print_clock("and be back by        ", number(answer, "\"name\":\"proof\"", "\"be_back_by_h\":"));
  ferment_free(answer);

  answer = ask("choose", day, ", \"what\": \"yeast\", \"scale\": \"0.1g\", \"ready\": \"18:00\", \"draws\": 128");
  printf("For 18:00 take %.1f g of yeast\n", number(answer, "\"what\":\"yeast_g\"", "\"rounded\":"));
  ferment_free(answer);

  /* What is wrong is told with the way to it, and what was to be answered stays as it was. */
  if (ferment_ask("{\"ask\": \"water\", \"day\": {\"today\": {\"room\": 19}}}", &untouched) != FERMENT_INVALID_INPUT) {
    fprintf(stderr, "a number without a unit was taken\n");
    return EXIT_FAILURE;
  }
  printf("Not understood: %s\n", ferment_last_error());
  if (strstr(ferment_last_error(), "day.today.room: ") == NULL || untouched != NULL) return EXIT_FAILURE;
  return EXIT_SUCCESS;
}
