#include "check.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static int checks, failures;
static char path[] = "/tmp/probe-sim-test-XXXXXX";

void check_true(bool condition, const char *text, const char *file, int line)
{
    checks++;
    if (condition)
        return;
    failures++;
    printf("%s:%d: not true: %s\n", file, line, text);
}

void check_number(double found, double expected, double slack, const char *text, const char *file, int line)
{
    checks++;
    if (fabs(found - expected) <= slack)
        return;
    failures++;
    printf("%s:%d: %s is %.12g; expected %.12g\n", file, line, text, found, expected);
}

void check_text(const char *found, const char *expected_part, const char *file, int line)
{
    checks++;
    if (strstr(found, expected_part) != NULL)
        return;
    failures++;
    printf("%s:%d: text is \"%s\"; expected \"%s\" in it\n", file, line, found, expected_part);
}

const char *test_file(const char *contents)
{
    FILE *file = fopen(path, "w");
    if (file == NULL || fputs(contents, file) < 0 || fclose(file) != 0) {
        printf("%s: cannot be written\n", path);
        exit(1);
    }
    return path;
}

int main(void)
{
    int handle = mkstemp(path);
    if (handle < 0)
        return 1;
    close(handle);
    waveform_tests();
    frontend_tests();
    setmodel_tests();
    line_tests();
    fed_tests();
    unlink(path);
    printf("%d checks, %d failed\n", checks, failures);
    return failures == 0 ? 0 : 1;
}
