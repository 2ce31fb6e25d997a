/* Limits and drips, by their typed functions. */

#include "calculators.h"

static brim_status against_limit(const request *of) {
    const brim_amount *estimate = any(of, 1, 0), *uncertainty = any(of, 2, kind_of(estimate, 1)),
                      *limit = any(of, 3, kind_of(estimate, 0)), *probability = GIVEN(5, RATIO);
    int32_t rule = word(of, 4, BRIM_LIST_RULE);
    brim_decision decision = 0;
    brim_amount exceeds, guard_band;
    brim_status status;
    ASK(brim_against_limit(estimate, uncertainty, limit, rule, probability,
                           &exceeds, &guard_band, &decision, detail));
    put_amount("exceeds", &exceeds);
    put_amount("guard_band", &guard_band);
    put_word("decision", BRIM_LIST_DECISION, decision);
    return BRIM_OK;
}

static brim_status conformance(const request *of) {
    const brim_amount *value = any(of, 1, 0), *uncertainty = any(of, 2, kind_of(value, 1)),
                      *lower = any(of, 3, kind_of(value, 0)), *upper = any(of, 4, kind_of(value, 0));
    brim_amount conforms;
    brim_status status;
    ASK(brim_conformance(value, uncertainty, lower, upper, &conforms, detail));
    return told(status, &conforms);
}

static brim_status guard_band(const request *of) {
    const brim_amount *uncertainty = any(of, 1, 0), *probability = GIVEN(2, RATIO);
    brim_amount band;
    brim_status status;
    ASK(brim_guard_band(uncertainty, probability, &band, detail));
    return told(status, &band);
}

static brim_status quantile(const request *of) {
    const brim_amount *probability = GIVEN(1, RATIO);
    brim_amount z;
    brim_status status;
    ASK(brim_quantile(probability, &z, detail));
    return told(status, &z);
}

static brim_status expanded_uncertainty(const request *of) {
    const brim_amount *uncertainty = any(of, 1, 0), *factor = GIVEN(2, RATIO);
    brim_amount expanded;
    brim_status status;
    ASK(brim_expanded_uncertainty(uncertainty, factor, &expanded, detail));
    return told(status, &expanded);
}

static brim_status drip_rate(const request *of) {
    uint32_t drops = count(of, 1);
    const brim_amount *in_time = GIVEN(2, TIME), *drop = GIVEN(3, VOLUME);
    brim_amount per_day, per_year, every;
    brim_status status;
    ASK(brim_drip_rate(drops, in_time, drop, &per_day, &per_year, &every, detail));
    put_amount("per_day", &per_day);
    put_amount("per_year", &per_year);
    put_amount("one_drop_every", &every);
    return BRIM_OK;
}

static brim_status drops_for(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *over = GIVEN(2, TIME), *drop = GIVEN(3, VOLUME);
    brim_amount every;
    brim_status status;
    ASK(brim_drops_for(volume, over, drop, &every, detail));
    return told(status, &every);
}

const calculator CALCULATORS_OF_LEAK[] = {
    {"leak.against_limit", against_limit},
    {"leak.conformance", conformance},
    {"leak.guard_band", guard_band},
    {"leak.quantile", quantile},
    {"leak.expanded_uncertainty", expanded_uncertainty},
    {"leak.drip_rate", drip_rate},
    {"leak.drops_for", drops_for},
    {NULL, NULL},
};
