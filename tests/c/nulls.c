/* NULL for everything that is needed, and that nothing is written then. */

#include "expect.h"

static void frees_take_null(void) {
    brim_error_free(NULL);
    brim_options_free(NULL);
    brim_pack_free(NULL);
    brim_teller_free(NULL);
    brim_check_free(NULL);
    brim_evaluation_free(NULL);
    brim_findings_free(NULL);
    brim_gate_free(NULL);
    brim_acts_free(NULL);
    brim_record_free(NULL);
    brim_lacks_free(NULL);
    brim_price_list_free(NULL);
    brim_estimate_free(NULL);
    brim_invoice_free(NULL);
    brim_lines_free(NULL);
}

static void null_is_noticed(brim_pack *pack, brim_check *check, brim_evaluation *evaluation, brim_error *error) {
    char buffer[8];
    size_t size = 7;
    double number = 1;
    int32_t whole = 7;
    brim_amount amount = UNTOUCHED;
    brim_unit unit = 7;
    uint32_t place = 7;
    brim_pack *no_pack = NULL;
    brim_teller *no_teller = NULL;
    brim_evaluation *no_evaluation = NULL;
    brim_check *no_check = NULL;
    brim_findings *no_findings = NULL;
    brim_gate *no_gate = NULL;
    brim_acts *no_acts = NULL;
    brim_record *no_record = NULL;
    brim_lacks *no_lacks = NULL;
    brim_price_list *no_prices = NULL;
    brim_estimate *no_estimate = NULL;
    brim_invoice *no_invoice = NULL;
    brim_lines *no_lines = NULL;

    EXPECT(BRIM_ERROR_NULL_POINTER, brim_convert(1, NO_TEXT, TERMINATED("L"), &number, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_convert(1, TERMINATED("L"), NULL, BRIM_TERMINATED, &number, NULL));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_convert(1, TERMINATED("L"), TERMINATED("mL"), NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_convert_units(1, BRIM_UNIT_LITRE, BRIM_UNIT_LITRE, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_unit_parse(NO_TEXT, 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_unit_parse(TERMINATED("L"), 0, 0, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_unit_kind(BRIM_UNIT_LITRE, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_unit_symbol(BRIM_UNIT_LITRE, NO_ROOM, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_unit_symbol(BRIM_UNIT_LITRE, NULL, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_parse(NO_TEXT, 0, 0, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_parse(TERMINATED("1 L"), 0, 0, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_text(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_add(NULL, &amount, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_subtract(&amount, NULL, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_times(NULL, 2, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_compare(&amount, NULL, &whole, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_to(NULL, BRIM_UNIT_LITRE, 1, BRIM_ROUNDING_UP, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_from_double(1, BRIM_UNIT_LITRE, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_amount_to_double(NULL, &number, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_interval_intersect(NO_TEXT, NO_TEXT, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_word(BRIM_LIST_VERDICT, BRIM_VERDICT_LOW, NO_ROOM, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_word_number(BRIM_LIST_VERDICT, NO_TEXT, &whole, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_versions(NO_ROOM, error));

    EXPECT(BRIM_ERROR_NULL_POINTER, brim_options_limit(NULL, BRIM_LIMIT_BYTES, 1, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_options_flip(NULL, 1, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_options_why_not(NULL, BRIM_VERDICT_LOW, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_embedded(NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_from_json(NO_TEXT, NULL, &no_pack, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_copy(NULL, &no_pack, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_copy(pack, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_id(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_json(pack, NO_ROOM, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_pack_compare_json(pack, NO_TEXT, 1, 2, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluate(NULL, TERMINATED(JOURNAL), NULL, &no_evaluation, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluate(pack, NO_TEXT, NULL, &no_evaluation, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluate(pack, TERMINATED(JOURNAL), NULL, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluate_json(NO_TEXT, NO_TEXT, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_verdict(NULL, &whole, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_verdict(evaluation, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_end(evaluation, BRIM_INTERVAL_NOW, BRIM_END_LO, NULL, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_end(evaluation, BRIM_INTERVAL_NOW, BRIM_END_LO, &whole, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_volume(evaluation, BRIM_VOLUME_NET, &whole, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_findings(NULL, &no_findings, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_next(evaluation, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_gate(NULL, BRIM_ACT_OPEN, &no_gate, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_findings_count(NULL, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_gate_allowed(NULL, &whole, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_acts_wait(NULL, 0, &whole, &amount, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_start(NULL, TERMINATED(HEADER), NULL, &no_check, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_start(pack, NO_TEXT, NULL, &no_check, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_start(pack, TERMINATED(HEADER), NULL, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_replay(NULL, TERMINATED(JOURNAL), &no_check, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_record(NULL, TERMINATED(ENTRY), &no_findings, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_record(check, NO_TEXT, &no_findings, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_gate(check, BRIM_ACT_POUR, NO_TEXT, NO_TEXT, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_evaluation(NULL, NULL, &no_evaluation, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_advice(NULL, &no_acts, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_copy(NULL, &no_check, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_journal_lines(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_seal(NULL, TERMINATED(JOURNAL), NULL, &no_record, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_seal(pack, NO_TEXT, NULL, &no_record, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_seal(pack, TERMINATED(JOURNAL), NULL, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_reopen(NO_TEXT, NULL, &no_record, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_copy(NULL, &no_record, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_verdict(NULL, &whole, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_evidence(NULL, &no_lacks, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_lacks_count(NULL, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_record_reevaluate_json(NULL, pack, BRIM_RULES_LATEST, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_teller_new(NULL, 0, NULL, 0, NULL, NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_teller_copy(NULL, &no_teller, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_teller_messages_json(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_teller_profile_json(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_evaluation_text_with(evaluation, NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_work_sheet(NULL, TERMINATED(JOURNAL), NULL, 0, NULL, BRIM_MEDIUM_TEXT, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_work_sheet(pack, NO_TEXT, NULL, 0, NULL, BRIM_MEDIUM_TEXT, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_bay_card(pack, TERMINATED(JOURNAL), NULL, 0, NULL, BRIM_MEDIUM_TEXT, NO_ROOM, error));
    EXPECT(BRIM_ERROR_UNKNOWN_VALUE,
           brim_bay_card(pack, TERMINATED(JOURNAL), NULL, 0, NULL, 0, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_picture(pack, NO_TEXT, BRIM_PICTURE_OF_WARM_UP, NULL, 0, NULL, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_story_with(pack, TERMINATED(JOURNAL), NULL, buffer, 8, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_price_list_embedded(NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_price_list_from_json(NO_TEXT, NULL, &no_prices, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_estimate(check, NULL, NO_TEXT, &no_estimate, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_estimate(NULL, NULL, NO_TEXT, &no_estimate, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_invoice(check, NULL, NO_TEXT, &no_invoice, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_check_waste_json(NULL, buffer, sizeof buffer, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_estimate_lines(NULL, BRIM_CASE_BEST, &no_lines, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_invoice_lines(NULL, &no_lines, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_lines_count(NULL, &size, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_error_fault_count(NULL, &size));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_error_fault_count(error, NULL));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_error_fault_position(error, 0, &place, NULL, &place));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_error_message(NULL, buffer, sizeof buffer, &size));

    CHECK(number == 1 && whole == 7 && size == 7 && unit == 7 && place == 7 && same(&amount, &UNTOUCHED));
    CHECK(no_pack == NULL && no_evaluation == NULL && no_check == NULL);
    CHECK(no_teller == NULL);
    CHECK(no_findings == NULL && no_gate == NULL && no_acts == NULL);
    CHECK(no_record == NULL && no_lacks == NULL);
    CHECK(no_prices == NULL && no_estimate == NULL && no_invoice == NULL && no_lines == NULL);
}

int main(void) {
    brim_error *error = brim_error_new();
    brim_pack *pack = NULL;
    brim_check *check = NULL;
    brim_evaluation *evaluation = NULL;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_check_start(pack, TERMINATED(HEADER), NULL, &check, error));
    EXPECT(BRIM_OK, brim_evaluate(pack, TERMINATED(JOURNAL), NULL, &evaluation, error));
    EXPECT(BRIM_OK, brim_check_record(check, TERMINATED(ENTRY), NULL, error));
    frees_take_null();
    null_is_noticed(pack, check, evaluation, error);
    brim_evaluation_free(evaluation);
    brim_check_free(check);
    brim_pack_free(pack);
    brim_error_free(error);
    return failures == 0 ? 0 : 1;
}
