/* A forecast that is kept up, told as JSON and by its getters. */

#include "request.h"
#include "tellings.h"

#include <string.h>

static void put_time(const char *name, const brim_amount *earliest, const brim_amount *likely, const brim_amount *latest) {
    if (earliest->unit == 0) {
        return;
    }
    put_member(&out, name);
    put(&out, "{");
    put_amount("earliest", earliest);
    put_amount("likely", likely);
    put_amount("latest", latest);
    put(&out, "}");
}

static void put_forecast(const brim_forecast *forecast) {
    brim_amount now, rate, earliest, likely, latest;
    brim_forecast_method method = 0;
    brim_forecast_reason reason = 0;
    brim_status status;
    must(brim_forecast_now(forecast, &method, &reason, &now, &rate, detail), "brim_forecast_now");
    put_member(&out, "told");
    put(&out, "{");
    put_word("method", BRIM_LIST_FORECAST_METHOD, method);
    put_word("reason", BRIM_LIST_FORECAST_REASON, reason);
    put_amount("now", &now);
    put_amount("rate_per_minute", &rate);
    must(brim_forecast_opens(forecast, &earliest, &likely, &latest, detail), "brim_forecast_opens");
    put_time("opens", &earliest, &likely, &latest);
    must(brim_forecast_closes(forecast, &earliest, &likely, &latest, detail), "brim_forecast_closes");
    put_time("closes", &earliest, &likely, &latest);
    put(&out, "}");
    FILL(brim_forecast_json(forecast, ROOM, detail));
    must(status, "brim_forecast_json");
    put_member(&out, "json");
    put_bytes(&out, room.bytes, room.length);
    TOLD(brim_forecast_text(forecast, ROOM, detail), brim_forecast_text_with(forecast, teller, ROOM, detail));
    put_room("text");
}

static brim_status taken_in(brim_forecast *forecast, const request *of) {
    size_t index;
    for (index = 4; index + 2 < of->count; index += 3) {
        brim_amount at, volume, temperature;
        TRY(brim_amount_parse(ARG(index), BRIM_KIND_TIME, 0, &at, detail));
        TRY(brim_amount_parse(ARG(index + 2), BRIM_KIND_TEMPERATURE, 0, &temperature, detail));
        if (of->args[index + 1].length == 0) {
            TRY(brim_forecast_sample(forecast, &at, &temperature, detail));
        } else {
            TRY(brim_amount_parse(ARG(index + 1), BRIM_KIND_VOLUME, 0, &volume, detail));
            TRY(brim_forecast_poured(forecast, &at, &volume, &temperature, detail));
        }
    }
    return BRIM_OK;
}

/* Lower limit, upper limit, scatter and held volume, then three for each reading or pour: its time, its volume, which a
   reading does not have, and its temperature. */
brim_status answer_forecast(const request *of) {
    static const brim_kind kinds[] = {BRIM_KIND_TEMPERATURE, BRIM_KIND_TEMPERATURE, BRIM_KIND_TEMPERATURE_DIFFERENCE,
                                      BRIM_KIND_VOLUME};
    brim_amount amounts[4];
    const brim_amount *given[4];
    brim_forecast *forecast = NULL;
    brim_status status;
    size_t index;
    for (index = 0; index < 4; index++) {
        given[index] = of->args[index].length > 0 ? &amounts[index] : NULL;
        if (given[index] != NULL) {
            TRY(brim_amount_parse(ARG(index), kinds[index], 0, &amounts[index], detail));
        }
    }
    TRY(brim_forecast_new(given[0], given[1], given[2], given[3], &forecast, detail));
    status = taken_in(forecast, of);
    if (status == BRIM_OK) {
        put(&out, "{");
        put_forecast(forecast);
        put(&out, "}");
    }
    brim_forecast_free(forecast);
    return status;
}
