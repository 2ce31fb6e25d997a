/* Wrenches, joints and threads, by their typed functions. */

#include "calculators.h"

static brim_status wrench_setting(const request *of) {
    const brim_amount *target = GIVEN(1, TORQUE), *lever = GIVEN(2, LENGTH), *adapter = GIVEN(3, LENGTH),
                      *angle = GIVEN(4, ANGLE), *graduation = GIVEN(5, TORQUE), *printed = GIVEN(6, TORQUE);
    brim_amount setting, applied, difference;
    brim_status status;
    ASK(brim_wrench_setting(target, lever, adapter, angle, graduation, printed, &setting, &applied, &difference, ROOM,
                            detail));
    put_cautions();
    put_amount("setting", &setting);
    put_amount("applied", &applied);
    put_amount("error", &difference);
    return BRIM_OK;
}

static brim_status applied_torque(const request *of) {
    const brim_amount *setting = GIVEN(1, TORQUE), *lever = GIVEN(2, LENGTH), *adapter = GIVEN(3, LENGTH),
                      *angle = GIVEN(4, ANGLE);
    brim_amount applied;
    brim_status status;
    ASK(brim_applied_torque(setting, lever, adapter, angle, &applied, detail));
    return told(status, &applied);
}

static brim_status preload(const request *of) {
    const brim_amount *torque = GIVEN(1, TORQUE), *diameter = GIVEN(2, LENGTH), *k = GIVEN(3, RATIO);
    int32_t condition = word(of, 4, BRIM_LIST_THREAD_CONDITION);
    brim_amount low, high, k_low, k_high;
    brim_status status;
    ASK(brim_preload(torque, diameter, k, condition, &low, &high, &k_low, &k_high, detail));
    put_range("preload", &low, &high);
    put_range("k", &k_low, &k_high);
    return BRIM_OK;
}

static brim_status torque_for_preload(const request *of) {
    const brim_amount *force = GIVEN(1, FORCE), *diameter = GIVEN(2, LENGTH), *k = GIVEN(3, RATIO);
    int32_t condition = word(of, 4, BRIM_LIST_THREAD_CONDITION);
    brim_amount low, high, k_low, k_high;
    brim_status status;
    ASK(brim_torque_for_preload(force, diameter, k, condition, &low, &high, &k_low, &k_high, ROOM, detail));
    put_cautions();
    put_range("torque", &low, &high);
    put_range("k", &k_low, &k_high);
    return BRIM_OK;
}

static brim_status proof_load(const request *of) {
    int32_t strength_class = word(of, 2, BRIM_LIST_STRENGTH_CLASS);
    brim_amount load;
    brim_status status;
    ASK(brim_proof_load(ARG(1), strength_class, &load, detail));
    return told(status, &load);
}

static brim_status plausible(const request *of) {
    const brim_amount *torque = GIVEN(1, TORQUE);
    int32_t plug = word(of, 3, BRIM_LIST_PLUG);
    brim_fits fits = 0;
    brim_unit unit = 0;
    brim_amount low, high, slip;
    brim_status status;
    ASK(brim_plausible(torque, ARG(2), plug, &fits, &low, &high, &unit, &slip, ROOM, detail));
    put_cautions();
    put_word("fits", BRIM_LIST_FITS, fits);
    put_range("band", &low, &high);
    put_member(&out, "basis");
    put(&out, "\"steel_bolt\"");
    if (unit != 0) {
        put_member(&out, "slip");
        put(&out, "{");
        FILL(brim_unit_symbol(unit, ROOM, detail));
        must(status, "brim_unit_symbol");
        put_room("unit");
        put_amount("torque", &slip);
        put(&out, "}");
    }
    return BRIM_OK;
}

const calculator CALCULATORS_OF_TORQUE[] = {
    {"torque.wrench_setting", wrench_setting},
    {"torque.applied_torque", applied_torque},
    {"torque.preload", preload},
    {"torque.torque_for_preload", torque_for_preload},
    {"torque.proof_load", proof_load},
    {"torque.plausible", plausible},
    {NULL, NULL},
};
