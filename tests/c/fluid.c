/* Viscosities and grades, by their typed functions. */

#include "calculators.h"

static brim_status viscosity_at(const request *of) {
    const brim_amount *v1 = GIVEN(1, KINEMATIC_VISCOSITY), *t1 = GIVEN(2, TEMPERATURE),
                      *v2 = GIVEN(3, KINEMATIC_VISCOSITY), *t2 = GIVEN(4, TEMPERATURE), *at = GIVEN(5, TEMPERATURE);
    brim_amount viscosity;
    brim_status status;
    ASK(brim_viscosity_at(v1, t1, v2, t2, at, &viscosity, detail));
    return told(status, &viscosity);
}

static brim_status temperature_for(const request *of) {
    const brim_amount *v1 = GIVEN(1, KINEMATIC_VISCOSITY), *t1 = GIVEN(2, TEMPERATURE),
                      *v2 = GIVEN(3, KINEMATIC_VISCOSITY), *t2 = GIVEN(4, TEMPERATURE),
                      *viscosity = GIVEN(5, KINEMATIC_VISCOSITY);
    brim_amount temperature;
    brim_status status;
    ASK(brim_temperature_for(v1, t1, v2, t2, viscosity, &temperature, detail));
    return told(status, &temperature);
}

static brim_status viscosity_index(const request *of) {
    const brim_amount *at_40 = GIVEN(1, KINEMATIC_VISCOSITY), *at_100 = GIVEN(2, KINEMATIC_VISCOSITY);
    int64_t index = 0;
    brim_index_procedure procedure = 0;
    brim_amount l, h, unrounded;
    brim_status status;
    ASK(brim_viscosity_index(at_40, at_100, &index, &procedure, &l, &h, &unrounded, detail));
    put_whole("index", index);
    put_word("procedure", BRIM_LIST_INDEX_PROCEDURE, procedure);
    put_amount("l", &l);
    put_amount("h", &h);
    put_amount("unrounded", &unrounded);
    return BRIM_OK;
}

static brim_status grade(const request *of) {
    const brim_amount *at_40 = GIVEN(1, KINEMATIC_VISCOSITY);
    uint32_t number = 0;
    brim_amount low, high;
    brim_status status;
    ASK(brim_grade(at_40, &number, &low, &high, detail));
    if (number != 0) {
        put_whole("grade", number);
    }
    put_amount("low", &low);
    put_amount("high", &high);
    return BRIM_OK;
}

static brim_status grade_limits(const request *of) {
    uint32_t number = count(of, 1);
    brim_amount low, high;
    brim_status status;
    ASK(brim_grade_limits(number, &low, &high, detail));
    put_range("value", &low, &high);
    return BRIM_OK;
}

const calculator CALCULATORS_OF_FLUID[] = {
    {"fluid.viscosity_at", viscosity_at},
    {"fluid.temperature_for", temperature_for},
    {"fluid.viscosity_index", viscosity_index},
    {"fluid.grade", grade},
    {"fluid.grade_limits", grade_limits},
    {NULL, NULL},
};
