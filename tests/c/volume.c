/* Volumes at temperatures, tilts and exchanges, by their typed functions. */

#include "calculators.h"

static brim_status at_base(const request *of,
                           brim_status (*ask)(const brim_amount *, const brim_amount *, brim_base, brim_amount *,
                                              brim_error *)) {
    const brim_amount *density = GIVEN(1, DENSITY), *temperature = GIVEN(2, TEMPERATURE);
    int32_t base = word(of, 3, BRIM_LIST_BASE);
    brim_amount value;
    brim_status status;
    ASK(ask(density, temperature, base, &value, detail));
    return told(status, &value);
}

static brim_status correction_factor(const request *of) {
    return at_base(of, brim_correction_factor);
}

static brim_status base_density(const request *of) {
    return at_base(of, brim_base_density);
}

static brim_status density_at(const request *of) {
    return at_base(of, brim_density_at);
}

static brim_status between(const request *of,
                           brim_status (*ask)(const brim_amount *, const brim_amount *, const brim_amount *,
                                              const brim_amount *, brim_base, const brim_amount *, brim_amount *,
                                              brim_error *)) {
    const brim_amount *volume = GIVEN(1, VOLUME), *one = GIVEN(2, TEMPERATURE), *other = GIVEN(3, TEMPERATURE),
                      *density = GIVEN(4, DENSITY), *coefficient = GIVEN(6, EXPANSION);
    int32_t base = word(of, 5, BRIM_LIST_BASE);
    brim_amount value;
    brim_status status;
    ASK(ask(volume, one, other, density, base, coefficient, &value, detail));
    return told(status, &value);
}

static brim_status at_temperature(const request *of) {
    return between(of, brim_at_temperature);
}

static brim_status temperature_error(const request *of) {
    return between(of, brim_temperature_error);
}

static brim_status mass(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *temperature = GIVEN(2, TEMPERATURE), *density = GIVEN(3, DENSITY);
    int32_t base = word(of, 4, BRIM_LIST_BASE);
    brim_amount kilograms;
    brim_status status;
    ASK(brim_mass(volume, temperature, density, base, &kilograms, detail));
    return told(status, &kilograms);
}

static brim_status volume_of_mass(const request *of) {
    const brim_amount *kilograms = GIVEN(1, MASS), *temperature = GIVEN(2, TEMPERATURE), *density = GIVEN(3, DENSITY);
    int32_t base = word(of, 4, BRIM_LIST_BASE);
    brim_amount volume;
    brim_status status;
    ASK(brim_volume_of_mass(kilograms, temperature, density, base, &volume, detail));
    return told(status, &volume);
}

static brim_status tilt_error(const request *of) {
    const brim_amount *surface = GIVEN(1, AREA), *offset = GIVEN(2, LENGTH), *tilt = GIVEN(3, ANGLE);
    brim_amount height, volume;
    brim_status status;
    ASK(brim_tilt_error(surface, offset, tilt, &height, &volume, detail));
    put_amount("height", &height);
    put_amount("volume", &volume);
    return BRIM_OK;
}

static brim_status segment_share(const request *of) {
    const brim_amount *level = GIVEN(1, LENGTH), *diameter = GIVEN(2, LENGTH);
    brim_amount share;
    brim_status status;
    ASK(brim_segment_share(level, diameter, &share, detail));
    return told(status, &share);
}

static brim_status exchange(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *drained = GIVEN(2, VOLUME);
    uint32_t cycles = count(of, 3);
    brim_amount old, fresh, spent;
    brim_status status;
    ASK(brim_exchange(capacity, drained, cycles, &old, &fresh, &spent, ROOM, detail));
    put_cautions();
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    put_amount("used", &spent);
    return BRIM_OK;
}

static brim_status cycles_needed(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *drained = GIVEN(2, VOLUME), *wanted = GIVEN(3, RATIO);
    uint32_t cycles = 0;
    brim_amount old, fresh, spent;
    brim_status status;
    ASK(brim_cycles_needed(capacity, drained, wanted, &cycles, &old, &fresh, &spent, ROOM, detail));
    put_cautions();
    put_whole("cycles", cycles);
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    put_amount("used", &spent);
    return BRIM_OK;
}

static brim_status flush(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *flowed = GIVEN(2, VOLUME);
    brim_amount old, fresh;
    brim_status status;
    ASK(brim_flush(capacity, flowed, &old, &fresh, ROOM, detail));
    put_cautions();
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    return BRIM_OK;
}

static brim_status flush_needed(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *fresh = GIVEN(2, RATIO);
    brim_amount needed;
    brim_status status;
    ASK(brim_flush_needed(capacity, fresh, &needed, ROOM, detail));
    put_cautions();
    put_amount("volume", &needed);
    return BRIM_OK;
}

static brim_status wrong_left(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *wrong = GIVEN(2, VOLUME), *drained = GIVEN(3, VOLUME);
    uint32_t cycles = count(of, 4);
    brim_amount left;
    brim_status status;
    ASK(brim_wrong_left(capacity, wrong, drained, cycles, &left, detail));
    return told(status, &left);
}

const calculator CALCULATORS_OF_VOLUME[] = {
    {"volume.correction_factor", correction_factor},
    {"volume.at_temperature", at_temperature},
    {"volume.temperature_error", temperature_error},
    {"volume.base_density", base_density},
    {"volume.density_at", density_at},
    {"volume.mass", mass},
    {"volume.volume_of_mass", volume_of_mass},
    {"volume.tilt_error", tilt_error},
    {"volume.segment_share", segment_share},
    {"volume.exchange", exchange},
    {"volume.cycles_needed", cycles_needed},
    {"volume.flush", flush},
    {"volume.flush_needed", flush_needed},
    {"volume.wrong_left", wrong_left},
    {NULL, NULL},
};
