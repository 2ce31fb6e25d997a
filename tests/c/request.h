/* A request, and the operations that answer one. */
#ifndef REQUEST_H
#define REQUEST_H

#include "writer.h"

typedef struct text {
    const char *bytes;
    size_t length;
} text;

typedef struct request {
    text op;
    size_t count;
    text *args;
} request;

/* What a request is answered with. */
extern grown out;

#define ARG(index) of->args[index].bytes, of->args[index].length

int is(text one, const char *other);
/* An argument that is left out where it is empty. */
const char *given(const request *of, size_t index);
/* The number of a word of a list; 0 where there is none. */
int32_t number_of(brim_list list, text word);
long long whole(text digits);
/* Limits as a case states them, such as {"entries":2}. */
void set_limits(brim_options *options, text stated);
/* What the room holds, as a member. */
void put_room(const char *name);

/* quantities.c */
brim_status answer_versions(const request *of);
brim_status answer_convert(const request *of);
brim_status answer_convert_units(const request *of);
brim_status answer_unit(const request *of);
brim_status answer_amount(const request *of);
brim_status answer_amount_to(const request *of);
brim_status answer_amount_add(const request *of);
brim_status answer_amount_sub(const request *of);
brim_status answer_amount_times(const request *of);
brim_status answer_amount_compare(const request *of);
brim_status answer_interval_intersect(const request *of);

/* documents.c */
/* Limits as a case states them, such as {"entries":2}. */
void set_limits(brim_options *options, text stated);
/* The pack of an argument; an empty one names the embedded pack. */
brim_status pack_of(text json, const brim_options *options, brim_pack **pack);
brim_status answer_evaluate(const request *of);
brim_status answer_live(const request *of);
brim_status answer_asked(const request *of);
brim_status answer_start(const request *of);
brim_status answer_lines(const request *of);
brim_status answer_advice(const request *of);
brim_status answer_gate(const request *of);
brim_status answer_recorded(const request *of);
brim_status answer_pack(const request *of);
brim_status answer_pack_json(const request *of);
brim_status answer_pack_lint(const request *of);
brim_status answer_pack_compare(const request *of);
brim_status answer_pack_select(const request *of);
brim_status answer_calculate(const request *of);
brim_status answer_story(const request *of);
brim_status answer_getters(const request *of);
brim_status answer_may_mix(const request *of);
brim_status answer_resolve(const request *of);

/* records.c */
brim_status answer_seal(const request *of);
brim_status answer_reopen(const request *of);
brim_status answer_evidence(const request *of);
brim_status answer_reevaluate(const request *of);
/* tellings.c */
brim_status answer_messages(const request *of);
brim_status answer_profile(const request *of);
brim_status answer_told(const request *of);
brim_status answer_told_estimate(const request *of);
brim_status answer_told_invoice(const request *of);
brim_status answer_told_history(const request *of);
brim_status answer_told_comebacks(const request *of);
brim_status answer_told_follow_up(const request *of);
brim_status answer_told_shadow(const request *of);
brim_status answer_told_audit(const request *of);

/* histories.c */
/* What the operation of the same name is about; and what is told of it, in the room. */
brim_status history_of(const request *of, brim_history **history);
brim_status comebacks_of(const request *of, brim_comebacks **found);
brim_status follow_up_of(const request *of, brim_follow_up **told);
brim_status shadow_told(const request *of, const brim_teller *teller);
brim_status audit_told(const request *of, const brim_teller *teller);
brim_status answer_history(const request *of);
brim_status answer_comebacks(const request *of);
brim_status answer_follow_up(const request *of);
brim_status answer_shadow(const request *of);
brim_status answer_audit(const request *of);

/* counter.c */
/* The price list of an argument; an empty one names the embedded list. */
brim_status prices_of(text json, brim_price_list **prices);
/* The check is the caller's to free, also where there is no estimate or invoice of it. */
brim_status estimate_of(const request *of, brim_check **check, brim_estimate **estimate);
brim_status invoice_of(const request *of, brim_check **check, brim_invoice **invoice);
brim_status answer_price_list(const request *of);
brim_status answer_estimate(const request *of);
brim_status answer_invoice(const request *of);
brim_status answer_waste(const request *of);
/* pages.c */
brim_status answer_page(const request *of);

/* calculators.c */
brim_status answer_typed(const request *of);
/* A member, unless it is absent: unit or number 0. */
void put_amount(const char *name, const brim_amount *amount);
void put_word(const char *name, brim_list list, int32_t number);

/* forecast.c */
brim_status answer_forecast(const request *of);

#endif
