/* Mixing, cooling and response, by their typed functions. */

#include "calculators.h"

static brim_status mixed_temperature(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *temperature = GIVEN(2, TEMPERATURE), *added = GIVEN(3, VOLUME),
                      *added_temperature = GIVEN(4, TEMPERATURE);
    brim_amount mixed;
    brim_status status;
    ASK(brim_mixed_temperature(volume, temperature, added, added_temperature, &mixed, detail));
    return told(status, &mixed);
}

static brim_status cool_down(const request *of) {
    const brim_amount *first = GIVEN(1, TEMPERATURE), *second = GIVEN(2, TEMPERATURE), *elapsed = GIVEN(3, TIME),
                      *ambient = GIVEN(4, TEMPERATURE), *max = GIVEN(5, TEMPERATURE),
                      *rate = GIVEN(6, TEMPERATURE_DIFFERENCE), *time = GIVEN(7, TIME);
    brim_amount start_at, wait, earliest, latest, time_constant;
    brim_status status;
    ASK(brim_cool_down(first, second, elapsed, ambient, max, rate, time, &start_at, &wait, &earliest, &latest,
                       &time_constant, ROOM, detail));
    put_cautions();
    put_amount("target", &start_at);
    put_amount("wait", &wait);
    put_amount("earliest", &earliest);
    put_amount("latest", &latest);
    put_amount("time_constant", &time_constant);
    return BRIM_OK;
}

static brim_status response_time(const request *of) {
    const brim_amount *time_constant = GIVEN(1, TIME), *share = GIVEN(2, RATIO);
    brim_amount time;
    brim_status status;
    ASK(brim_response_time(time_constant, share, &time, detail));
    return told(status, &time);
}

const calculator CALCULATORS_OF_WARM_UP[] = {
    {"warm_up.mixed_temperature", mixed_temperature},
    {"warm_up.cool_down", cool_down},
    {"warm_up.response_time", response_time},
    {NULL, NULL},
};
