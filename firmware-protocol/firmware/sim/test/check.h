/* Checks of the unit tests: every failure is printed with its place and what was found. */
#ifndef SIM_TEST_CHECK_H
#define SIM_TEST_CHECK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

void check_true(bool condition, const char *text, const char *file, int line);
void check_number(double found, double expected, double slack, const char *text, const char *file, int line);
void check_text(const char *found, const char *expected_part, const char *file, int line);

#define CHECK(condition) check_true((condition), #condition, __FILE__, __LINE__)
#define CHECK_NUMBER(found, expected, slack) check_number((found), (expected), (slack), #found, __FILE__, __LINE__)
#define CHECK_TEXT(found, part) check_text((found), (part), __FILE__, __LINE__)

/* Writes a temporary file with this text and returns its path; the next call overwrites it. */
const char *test_file(const char *contents);

void waveform_tests(void);
void frontend_tests(void);
void setmodel_tests(void);
void line_tests(void);
void fed_tests(void);

#endif
