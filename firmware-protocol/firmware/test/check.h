/* The tests' own few words. A failed check says file, line and both values, and the run ends in failure. */
#ifndef TEST_CHECK_H
#define TEST_CHECK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

extern int checks_failed;
extern int checks_done;

void check_long(long long actual, long long expected, const char *what, const char *file, int line);
void check_bytes(const uint8_t *actual, size_t actual_length, const uint8_t *expected, size_t expected_length,
                 const char *what, const char *file, int line);

#define CHECK(condition) check_long((condition) ? 1 : 0, 1, #condition, __FILE__, __LINE__)
#define CHECK_IS(actual, expected) check_long((long long)(actual), (long long)(expected), #actual, __FILE__, __LINE__)
#define CHECK_BYTES(actual, actual_length, expected, expected_length)                                              \
    check_bytes((actual), (actual_length), (expected), (expected_length), #actual, __FILE__, __LINE__)

void wire_tests(const char *vectors);
void trip_tests(void);
void trip_integral_tests(void);
void trip_start_tests(void);
void look_tests(void);
void stream_tests(void);
void store_tests(void);
void probe_tests(void);
void tripped_tests(void);
void press_tests(void);
void arming_tests(void);
void limiting_tests(void);
void command_tests(const char *vectors);

#endif
