/* Price lists, estimates and invoices. */

#include "request.h"
#include "tellings.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

brim_status prices_of(text json, brim_price_list **prices) {
    if (json.length == 0) {
        return brim_price_list_embedded(prices, detail);
    }
    return brim_price_list_from_json(json.bytes, json.length, NULL, prices, detail);
}

brim_status answer_price_list(const request *of) {
    brim_price_list *prices = NULL;
    brim_price_list *copy = NULL;
    brim_status status;
    TRY(prices_of(of->args[0], &prices));
    must(brim_price_list_copy(prices, &copy, detail), "brim_price_list_copy");
    brim_price_list_free(prices);
    /* What it says of itself reads back to the same digest. */
    FILL(brim_price_list_json(copy, ROOM, detail));
    TRY(status);
    brim_price_list_free(copy);
    must(brim_price_list_from_json(room.bytes, room.length, NULL, &copy, detail), "brim_price_list_from_json");
    put(&out, "{");
    FILL(brim_price_list_currency(copy, ROOM, detail));
    put_room("currency");
    FILL(brim_price_list_digest(copy, ROOM, detail));
    put_room("digest");
    FILL(brim_price_list_id(copy, ROOM, detail));
    put_room("id");
    FILL(brim_price_list_version(copy, ROOM, detail));
    put_room("version");
    put(&out, "}");
    brim_price_list_free(copy);
    return status;
}

/* The check of a pack and a journal, from this argument on. */
static brim_status check_of(const request *of, size_t first, brim_check **check) {
    brim_pack *pack = NULL;
    brim_status status = pack_of(of->args[first], NULL, &pack);
    if (status == BRIM_OK) {
        status = brim_check_replay(pack, ARG(first + 1), check, detail);
    }
    brim_pack_free(pack);
    return status;
}

static brim_status begun(const request *of, brim_price_list **prices, brim_check **check) {
    TRY(prices_of(of->args[0], prices));
    return check_of(of, 1, check);
}

/* Money with two decimals, as all of the vectors is. */
static void put_money(grown *told, const brim_money *money) {
    char text[64];
    long long minor = (long long)money->minor_units;
    snprintf(text, sizeof text, "%lld.%02lld %s", minor / 100, minor % 100, money->currency);
    put_string(told, text, strlen(text));
}

/* The digits of a text up to its unit. */
static int64_t digits_of(const char *bytes) {
    int64_t digits = 0;
    for (; *bytes != 0 && *bytes != ' '; bytes++) {
        if (*bytes != '.') {
            digits = 10 * digits + (*bytes - '0');
        }
    }
    return digits;
}

/* The lines put together from their getters are those of the document. */
static void compare_lines(brim_lines *lines) {
    brim_status status;
    grown told = {NULL, 0, 0};
    size_t count = 0, index;
    must(brim_lines_count(lines, &count, detail), "brim_lines_count");
    put(&told, "[");
    for (index = 0; index < count; index++) {
        size_t entries = 0, item;
        brim_amount quantity;
        brim_money net;
        char *tax;
        put_comma(&told);
        put(&told, "{");
        FILL(brim_lines_id(lines, index, ROOM, detail));
        put_member(&told, "id");
        put_string(&told, room.bytes, room.length);
        FILL(brim_lines_item(lines, index, ROOM, detail));
        put_member(&told, "item");
        put_string(&told, room.bytes, room.length);
        put_member(&told, "cause");
        put(&told, "{");
        FILL(brim_lines_policy(lines, index, ROOM, detail));
        put_member(&told, "policy");
        put_string(&told, room.bytes, room.length);
        must(brim_lines_entry_count(lines, index, &entries, detail), "brim_lines_entry_count");
        put_member(&told, "entries");
        put(&told, "[");
        for (item = 0; item < entries; item++) {
            uint64_t seq = 0;
            must(brim_lines_entry(lines, index, item, &seq, detail), "brim_lines_entry");
            put_comma(&told);
            put_number(&told, (long long)seq);
        }
        put(&told, "]}");
        FILL(brim_lines_quantity_text(lines, index, ROOM, detail));
        put_member(&told, "quantity");
        put_string(&told, room.bytes, room.length);
        must(brim_lines_quantity(lines, index, &quantity, detail), "brim_lines_quantity");
        if (digits_of(room.bytes) != quantity.mantissa) {
            fail("a quantity is not its text");
        }
        FILL(brim_lines_unit_code(lines, index, ROOM, detail));
        put_member(&told, "unit_code");
        put_string(&told, room.bytes, room.length);
        FILL(brim_lines_price(lines, index, ROOM, detail));
        put_member(&told, "price");
        put_string(&told, room.bytes, room.length);
        must(brim_lines_net(lines, index, &net, detail), "brim_lines_net");
        put_member(&told, "net");
        put_money(&told, &net);
        put_member(&told, "taxes");
        put(&told, "[");
        FILL(brim_lines_taxes(lines, index, ROOM, detail));
        must(status, "brim_lines_taxes");
        for (tax = room.length > 0 ? strtok(room.bytes, "\n") : NULL; tax != NULL; tax = strtok(NULL, "\n")) {
            put_comma(&told);
            put_string(&told, tax, strlen(tax));
        }
        put(&told, "]}");
    }
    put(&told, "]");
    FILL(brim_lines_json(lines, ROOM, detail));
    must(status, "brim_lines_json");
    if (room.length != told.length || memcmp(room.bytes, told.bytes, room.length) != 0) {
        fail("brim_lines_json differs from the getters");
    }
    free(told.bytes);
    brim_lines_free(lines);
}

/* A total stands in the document as it is told. */
static void compare_total(const brim_money *total) {
    grown told = {NULL, 0, 0};
    put(&told, "\"total\":");
    put_money(&told, total);
    put(&out, "");
    if (strstr(out.bytes, told.bytes) == NULL) {
        fail("a total is not in the document");
    }
    free(told.bytes);
}

/* The findings of a document are those of the handle. */
static void compare_findings(brim_findings *findings) {
    brim_status status;
    FILL(brim_findings_json(findings, ROOM, detail));
    must(status, "brim_findings_json");
    if (strstr(out.bytes, room.bytes) == NULL) {
        fail("the findings are not in the document");
    }
    brim_findings_free(findings);
}

brim_status estimate_of(const request *of, brim_check **check, brim_estimate **estimate) {
    brim_price_list *prices = NULL;
    brim_status status = begun(of, &prices, check);
    if (status == BRIM_OK) {
        status = brim_check_estimate(*check, prices, given(of, 3), of->args[3].length, estimate, detail);
    }
    brim_price_list_free(prices);
    return status;
}

static brim_status put_estimate(const brim_estimate *estimate, const brim_check *check) {
    brim_status status;
    brim_case kind;
    brim_findings *findings = NULL;
    FILL(brim_estimate_json(estimate, ROOM, detail));
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    for (kind = BRIM_CASE_BEST; kind <= BRIM_CASE_WORST; kind++) {
        brim_lines *lines = NULL;
        brim_money total;
        must(brim_estimate_lines(estimate, kind, &lines, detail), "brim_estimate_lines");
        compare_lines(lines);
        must(brim_estimate_total(estimate, kind, &total, detail), "brim_estimate_total");
        compare_total(&total);
    }
    must(brim_estimate_findings(estimate, &findings, detail), "brim_estimate_findings");
    compare_findings(findings);
    FILL(brim_estimate_cautions(estimate, ROOM, detail));
    if (status != BRIM_OK || room.length == 0) {
        fail("an estimate has no cautions");
    }
    TOLD(brim_estimate_text(estimate, check, NULL, ROOM, detail),
         brim_estimate_text(estimate, check, teller, ROOM, detail));
    return BRIM_OK;
}

brim_status answer_estimate(const request *of) {
    brim_check *check = NULL;
    brim_estimate *estimate = NULL;
    brim_status status = estimate_of(of, &check, &estimate);
    if (status == BRIM_OK) {
        status = put_estimate(estimate, check);
    }
    brim_check_free(check);
    brim_estimate_free(estimate);
    return status;
}

brim_status invoice_of(const request *of, brim_check **check, brim_invoice **invoice) {
    brim_price_list *prices = NULL;
    brim_status status = begun(of, &prices, check);
    if (status == BRIM_OK) {
        status = brim_check_invoice(*check, prices, given(of, 3), of->args[3].length, invoice, detail);
    }
    brim_price_list_free(prices);
    return status;
}

static brim_status put_invoice(const brim_invoice *invoice, const brim_check *check) {
    brim_lines *lines = NULL;
    brim_findings *findings = NULL;
    brim_money total;
    brim_status status;
    FILL(brim_invoice_json(invoice, ROOM, detail));
    must(status, "brim_invoice_json");
    put_bytes(&out, room.bytes, room.length);
    must(brim_invoice_lines(invoice, &lines, detail), "brim_invoice_lines");
    compare_lines(lines);
    must(brim_invoice_total(invoice, &total, detail), "brim_invoice_total");
    compare_total(&total);
    must(brim_invoice_findings(invoice, &findings, detail), "brim_invoice_findings");
    compare_findings(findings);
    FILL(brim_invoice_cautions(invoice, ROOM, detail));
    if (status != BRIM_OK || room.length == 0) {
        fail("an invoice has no cautions");
    }
    TOLD(brim_invoice_text(invoice, check, NULL, ROOM, detail),
         brim_invoice_text(invoice, check, teller, ROOM, detail));
    return BRIM_OK;
}

brim_status answer_invoice(const request *of) {
    brim_check *check = NULL;
    brim_invoice *invoice = NULL;
    brim_status status = invoice_of(of, &check, &invoice);
    if (status == BRIM_OK) {
        status = put_invoice(invoice, check);
    }
    brim_check_free(check);
    brim_invoice_free(invoice);
    return status;
}

brim_status answer_waste(const request *of) {
    brim_check *check = NULL;
    brim_status status;
    TRY(check_of(of, 0, &check));
    FILL(brim_check_waste_json(check, ROOM, detail));
    brim_check_free(check);
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}
