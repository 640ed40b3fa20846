#include "frontend.h"

#include <math.h>
#include <string.h>

#include "boxes.h"
#include "check.h"
#include "eeprom_image.h"
#include "json.h"
#include "noise.h"
#include "wire.h"

static void has_the_agreed_defaults(void)
{
    struct frontend frontend;
    frontend_defaults(&frontend);
    CHECK_NUMBER(frontend.scale[CHANNEL_I].full, 12.4389648, 1e-6);
    CHECK_NUMBER(frontend_counts(&frontend, CHANNEL_J, 0, 0), 5, 0);
    CHECK_NUMBER(frontend.scale[CHANNEL_H].zero, -0.01, 0);
    CHECK_NUMBER(frontend.look_supply_v, 12, 0);
    CHECK_NUMBER(frontend.look_load_f, 1e-3, 1e-15);
    CHECK(!frontend.channels_given && frontend.input[INPUT_CHASSIS_CLIP] && !frontend.input[INPUT_BUTTON]);
}

static void converts_as_the_wire_format_says(void)
{
    struct frontend frontend;
    frontend_defaults(&frontend);
    frontend.scale[CHANNEL_I] = (struct scale){0, 12.5};
    CHECK(frontend_counts(&frontend, CHANNEL_R1, 0, 0) == 512);
    CHECK(frontend_counts(&frontend, CHANNEL_R1, 8.2, 0) == 722);      /* 28.2 / 40 * 1024 = 721.92 */
    CHECK(frontend_counts(&frontend, CHANNEL_R1, -20, 0) == 0);
    CHECK(frontend_counts(&frontend, CHANNEL_R1, -50, 0) == 0);
    CHECK(frontend_counts(&frontend, CHANNEL_R1, 20, 0) == 1023);
    CHECK(frontend_counts(&frontend, CHANNEL_R1, NAN, 0) == 1023);     /* open clip */
    CHECK(frontend_counts(&frontend, CHANNEL_I, 1.0, 0) == 82);    /* 81.92 */
    CHECK(frontend_counts(&frontend, CHANNEL_I, 1.0, 0.6) == 83);  /* 81.92 + 0.6 + 0.5 = 83.02 */
    CHECK(frontend_counts(&frontend, CHANNEL_I, 0.0061, 0) == 0);  /* 0.49971 */
    CHECK(frontend_counts(&frontend, CHANNEL_I, 0.00611, 0) == 1); /* 0.50053 */
}

static void reads_every_key(void)
{
    struct frontend frontend;
    struct failure failure = {.text = ""};
    CHECK(frontend_read_text(&frontend, "f",
                             "{\"channels\":{\"J\":{\"unit\":\"mA\",\"atZero\":1,\"atFull\":399},"
                             "\"H\":{\"unit\":\"mV\",\"atZero\":-5,\"atFull\":5}},"
                             "\"look\":{\"supplyV\":9,\"loadOhm\":50,\"loadUf\":470},\"decayMs\":80,"
                             "\"chassisClip\":false,\"hardShortA\":8,"
                             "\"at\":[{\"ms\":20,\"button\":true},{\"ms\":10,\"pedal\":true,\"hardShortA\":5.5}]}",
                             &failure));
    CHECK(frontend.channels_given);
    CHECK_NUMBER(frontend.scale[CHANNEL_J].full, 0.399, 1e-12);
    CHECK_NUMBER(frontend.scale[CHANNEL_H].zero, -0.005, 1e-12);
    CHECK_NUMBER(frontend.scale[CHANNEL_M].full, 2.5, 0);
    CHECK_NUMBER(frontend.look_load_f, 470e-6, 1e-12);
    CHECK_NUMBER(frontend.decay_s, 0.08, 1e-12);
    CHECK(!frontend.input[INPUT_CHASSIS_CLIP]);
    CHECK(frontend.changes == 3);
    CHECK(frontend.change[0].input == INPUT_PEDAL && frontend.change[0].at_ms == 10);
    CHECK(frontend.change[1].is_hard_short && frontend.change[1].hard_short_a == 5.5);
    CHECK(frontend.change[2].input == INPUT_BUTTON && frontend.change[2].at_ms == 20);
}

static void refuses(const char *text, const char *part)
{
    struct frontend frontend;
    struct failure failure = {.text = ""};
    CHECK(!frontend_read_text(&frontend, "f", text, &failure));
    CHECK_TEXT(failure.text, part);
}

static void refuses_bad_files_with_line_and_field(void)
{
    refuses("{\n\"decay\":1}", "f:2: unknown key decay");
    refuses("{\n\n\"decayMs\":\"long\"}", "f:3: decayMs is \"long\"; expected a number");
    refuses("{\"channels\":{\"X\":{}}}", "unknown channel channels.X");
    refuses("{\"channels\":{\"I\":{\"unit\":\"V\",\"atZero\":0,\"atFull\":1}}}", "channels.I.unit is \"V\"; expected one of A");
    refuses("{\"channels\":{\"I\":{\"atZero\":0}}}", "channels.I: expected both atZero and atFull");
    refuses("{\"channels\":{\"R1\":{\"atZero\":-3000,\"atFull\":1}}}", "out of the range of the calibration record");
    refuses("{\"look\":{\"loadOhm\":-1}}", "look.loadOhm is -1; expected a number from 0");
    refuses("{\"look\":{\"ohm\":1}}", "unknown key look.ohm");
    refuses("{\"at\":[{\"button\":true}]}", "at[] without ms");
    refuses("{\"at\":[{\"ms\":1,\"lid\":true}]}", "unknown key at[].lid");
    refuses("{\"at\":[{\"ms\":1,\"button\":1}]}", "button is 1; expected true or false");
    refuses("{\"hardShortA\":0.1}", "hardShortA is 0.1; expected a number from 0.5");
    refuses("[]", "the file is an array; expected an object");
    refuses("{\"pedal\":true,\"pedal\":true}", "key \"pedal\" twice");
    refuses("{\"pedal\":true", "the end of the file; expected a comma or }");
    refuses("{\"pedal\":true} x", "expected nothing after the value");
    refuses("{\"decayMs\":01}", "expected a value");
    refuses("{\"at\":[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]}", "at most 16 levels");
}

/* Check value of this CRC (polynomial 1021, initial FFFF, not reflected) over "123456789": 29B1, as in the catalogue
   of parametrised CRC algorithms by Greg Cook (from memory). */
/* The first drawn box: its inputs bow and have a floor, what it keeps is not what they do. */
static void takes_a_drawn_box(void)
{
    struct frontend frontend, same;
    struct failure failure = {.text = ""};
    CHECK(boxes_take(&frontend, 1, &failure) && frontend.calibrated);
    CHECK(frontend.kept[CHANNEL_R1].scale.full != frontend.scale[CHANNEL_R1].full);
    CHECK(frontend.kept[CHANNEL_V].gain_e5 == 470 && frontend.kept[CHANNEL_H].gain_e5 == 2500);
    CHECK(frontend.clock_share != 0 && fabs(frontend.clock_share) <= 0.005);
    CHECK(frontend_counts(&frontend, CHANNEL_J, -1, 0) <= 3);
    CHECK(boxes_of_seed(1) == 1 && boxes_of_seed(16) == 16 && boxes_of_seed(17) == 1);
    CHECK(boxes_take(&same, 17, &failure) && memcmp(&same, &frontend, sizeof same) == 0);
}

/* 4 x 2 x 0.5 x 0.5 = 2 counts in the middle; nothing under 3. */
static void bends_and_ends_as_the_file_says(void)
{
    struct frontend frontend;
    struct failure failure = {.text = ""};
    CHECK(frontend_read_text(&frontend, "f",
                             "{\"channels\":{\"V\":{\"atZero\":0,\"atFull\":1024,\"bowCounts\":2,"
                             "\"lowestCounts\":3}},\"kept\":{\"V\":{\"atZero\":1,\"atFull\":2,"
                             "\"gainPercentPlusMinus\":1,\"zeroCountsPlusMinus\":0.5}},\"clockPercent\":-0.4}",
                             &failure));
    CHECK(frontend_counts(&frontend, CHANNEL_V, 512, 0) == 514);
    CHECK(frontend_counts(&frontend, CHANNEL_V, -5, 0) == 3);
    CHECK(frontend.calibrated && frontend.kept[CHANNEL_V].gain_e5 == 500);
    CHECK(frontend.kept[CHANNEL_V].zero_hundredths == 25 && frontend.kept[CHANNEL_V].scale.full == 2);
    CHECK_NUMBER(frontend.clock_share, -0.004, 1e-12);
    CHECK(!frontend_read_text(&frontend, "f", "{\"kept\":{\"V\":{\"atZero\":1,\"atFull\":2,\"bow\":1}}}", &failure));
    CHECK(strstr(failure.text, "kept.V.bow") != NULL);
    CHECK(frontend_read_text(&frontend, "f", "{\"channels\":{},\"calibrated\":false}", &failure));
    CHECK(!frontend.calibrated);
}

static void writes_the_scales_as_calibration(void)
{
    CHECK(wire_crc16((const uint8_t *)"123456789", 9) == 0x29B1);
    uint8_t eeprom[EEPROM_BYTES];
    memset(eeprom, 0xFF, sizeof eeprom);
    struct frontend frontend;
    struct failure failure = {.text = ""};
    CHECK(frontend_read_text(&frontend, "f", "{\"calibrated\":true}", &failure));
    eeprom_calibrate(eeprom, &frontend);
    static const uint8_t RAIL[8] = {0x00, 0xD3, 0xCE, 0xFE, 0x00, 0x2D, 0x31, 0x01}; /* -20 000 000, 20 000 000 uV */
    const uint8_t *record = eeprom;
    while (record < eeprom + sizeof eeprom && *record == 0xFF)
        record++;
    bool found = false;
    for (size_t at = 0; at + sizeof RAIL <= sizeof eeprom; at++)
        found = found || memcmp(eeprom + at, RAIL, sizeof RAIL) == 0;
    CHECK(found);
    CHECK(frontend_base_units(CHANNEL_H, -0.01) == -10000000);
}

static void makes_repeatable_noise_of_the_asked_size(void)
{
    struct noise noise, again;
    noise_init(&noise, 0.7, 5);
    noise_init(&again, 0.7, 5);
    double sum = 0, squares = 0;
    bool same = true;
    enum { N = 100000 };
    for (int i = 0; i < N; i++) {
        double value = noise_next(&noise);
        same = same && value == noise_next(&again);
        sum += value;
        squares += value * value;
    }
    CHECK(same);
    CHECK_NUMBER(sum / N, 0, 0.01);
    CHECK_NUMBER(sqrt(squares / N), 0.7, 0.007);
    noise_init(&noise, 0, 5);
    CHECK(noise_next(&noise) == 0);
}

void frontend_tests(void)
{
    has_the_agreed_defaults();
    converts_as_the_wire_format_says();
    reads_every_key();
    refuses_bad_files_with_line_and_field();
    takes_a_drawn_box();
    bends_and_ends_as_the_file_says();
    writes_the_scales_as_calibration();
    makes_repeatable_noise_of_the_asked_size();
}
