#include <stdio.h>
#include <string.h>

#include "check.h"

int checks_failed;
int checks_done;

void check_long(long long actual, long long expected, const char *what, const char *file, int line)
{
    checks_done++;
    if (actual == expected)
        return;
    checks_failed++;
    fprintf(stderr, "%s:%d: %s is %lld, expected %lld\n", file, line, what, actual, expected);
}

void check_bytes(const uint8_t *actual, size_t actual_length, const uint8_t *expected, size_t expected_length,
                 const char *what, const char *file, int line)
{
    checks_done++;
    if (actual_length == expected_length && memcmp(actual, expected, actual_length) == 0)
        return;
    checks_failed++;
    fprintf(stderr, "%s:%d: %s:", file, line, what);
    for (size_t i = 0; i < actual_length; i++)
        fprintf(stderr, " %02X", actual[i]);
    fprintf(stderr, "\n  expected:");
    for (size_t i = 0; i < expected_length; i++)
        fprintf(stderr, " %02X", expected[i]);
    fprintf(stderr, "\n");
}

int main(int arguments, char **argument)
{
    const char *vectors = arguments > 1 ? argument[1] : "../vectors";
    wire_tests(vectors);
    trip_tests();
    trip_integral_tests();
    trip_start_tests();
    look_tests();
    stream_tests();
    store_tests();
    probe_tests();
    tripped_tests();
    press_tests();
    arming_tests();
    limiting_tests();
    command_tests(vectors);
    printf("%d checks, %d failed\n", checks_done, checks_failed);
    return checks_failed == 0 && checks_done > 0 ? 0 : 1;
}
