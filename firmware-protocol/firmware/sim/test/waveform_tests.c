#include "waveform.h"

#include <string.h>

#include "check.h"

static void reads_quoted_fields_and_absent_columns(void)
{
    struct waveform wave;
    struct failure failure = {.text = ""};
    CHECK(waveform_read(&wave, test_file("t_s,\"supply_A\",rail2_V\r\n0,\"0.5\",1\r\n2,1.5,-3\r\n"), &failure));
    CHECK(wave.rows == 2);
    CHECK(wave.value[WAVE_SUPPLY_V] == NULL);
    CHECK(wave.value[WAVE_RAIL1_V] == NULL);
    CHECK_NUMBER(waveform_at(&wave, WAVE_SUPPLY_A, 0), 0.5, 0);
    CHECK_NUMBER(waveform_at(&wave, WAVE_SUPPLY_A, 0.5), 0.75, 1e-12);
    CHECK_NUMBER(waveform_at(&wave, WAVE_RAIL2_V, 2), -3, 0);
    CHECK_NUMBER(waveform_at(&wave, WAVE_RAIL2_V, 900), -3, 0); /* the last row held */
    waveform_free(&wave);
}

static void refuses(const char *text, const char *part)
{
    struct waveform wave;
    struct failure failure = {.text = ""};
    CHECK(!waveform_read(&wave, test_file(text), &failure));
    CHECK_TEXT(failure.text, part);
}

static void refuses_bad_files_with_line_and_field(void)
{
    refuses("", "expected a header");
    refuses("t_s,supply_V\n", "no rows");
    refuses("supply_V,t_s\n0,0\n", ":1: column 1 is \"supply_V\"");
    refuses("t_s,supplyV\n0,0\n", ":1: unknown column \"supplyV\"");
    refuses("t_s,head_V,head_V\n0,0,0\n", ":1: column head_V twice");
    refuses("t_s,supply_V\n0,1\n1\n", ":3: 1 fields; expected 2");
    refuses("t_s,supply_V\n0,1\n1,one\n", ":3: supply_V is \"one\"");
    refuses("t_s,supply_V\n0,1\n1,nan\n", ":3: supply_V is \"nan\"");
    refuses("t_s,supply_V\n0,1\n1,\n", ":3: supply_V is \"\"");
    refuses("t_s,supply_V\n1,1\n", ":2: t_s is 1; expected 0 in the first row");
    refuses("t_s,supply_V\n0,1\n1,1\n1,1\n", ":4: t_s is 1; expected more than in the row before");
    struct waveform wave;
    struct failure failure = {.text = ""};
    CHECK(!waveform_read(&wave, "/nowhere/at-all.csv", &failure));
    CHECK_TEXT(failure.text, "/nowhere/at-all.csv: cannot be opened");
}

static void finds_crossings_by_interpolation(void)
{
    struct waveform wave;
    struct failure failure = {.text = ""};
    CHECK(waveform_read(&wave, test_file("t_s,supply_A\n0,0\n1,2\n2,2\n3,0\n4,-4\n"), &failure));
    CHECK_NUMBER(waveform_next_crossing(&wave, WAVE_SUPPLY_A, 0.5, 1, false, 0), 0.25, 1e-12);
    CHECK_NUMBER(waveform_next_crossing(&wave, WAVE_SUPPLY_A, 0.5, 1, true, 0.25), 2.75, 1e-12);
    CHECK_NUMBER(waveform_next_crossing(&wave, WAVE_SUPPLY_A, 0.5, 1, false, 2.75), -1, 0);
    CHECK_NUMBER(waveform_next_crossing(&wave, WAVE_SUPPLY_A, 2, 1, false, 0), -1, 0); /* on the level is not over it */
    CHECK_NUMBER(waveform_next_crossing(&wave, WAVE_SUPPLY_A, -1, -1, false, 0), 3.25, 1e-12);
    waveform_free(&wave);
}

void waveform_tests(void)
{
    reads_quoted_fields_and_absent_columns();
    refuses_bad_files_with_line_and_field();
    finds_crossings_by_interpolation();
}
