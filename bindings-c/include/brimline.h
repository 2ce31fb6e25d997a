/* brimline: the arithmetic of a sealed-gearbox fluid level check. A service sheet and a journal in,
   an evidenced verdict out. C99 and C++11.

   Generated from bindings-c/src: change it there, see DEVELOPERS.md.

   It calculates from what was entered and from the sheet that was selected. It does not replace the
   vehicle maker's current procedure or a trained person's judgement. Whoever shows a result or a
   next act to a person shows the cautions that come with it.

   LINKING
     shared    cc program.c -L<dir> -lbrimline
     static    cc program.c <dir>/libbrimline.a -lgcc_s -lutil -lrt -lpthread -lm -ldl
     Compare brim_abi_version() with BRIM_ABI_VERSION once.

   STATUS
     Functions answer a brim_status: BRIM_OK, which is 0, or what went wrong. Inputs come first and
     outputs after them; last comes the brim_error, which receives the detail. It may be NULL.
     Outputs are written only on success; the one exception is the length of a text, see below.
     There is no error slot behind the scenes. Each function names its errors. Any function may
     answer these beside them:
       BRIM_ERROR_NULL_POINTER      NULL for something it needs
       BRIM_ERROR_UNRESOLVED        a handle that was freed or is of another type, where that shows
       BRIM_ERROR_NOT_UTF8          a text that is not UTF-8
       BRIM_ERROR_OUT_OF_RANGE      a length that no text has
       BRIM_ERROR_BUFFER_TOO_SMALL  a buffer that is too small for the text
       BRIM_ERROR_INTERNAL          a defect of the library, caught at its border
     Only a lack of memory ends the program, as it does in most libraries.

   TEXT IN
     UTF-8, as a pointer and a length in bytes, or BRIM_TERMINATED for text that ends with a NUL. A
     text that may be left out is left out as NULL. The library reads it during the call and keeps
     no pointer to it. A journal of JSON Lines may end where a power cut left it, also within a
     character: what is left of its last line is told in the findings.

   TEXT OUT
     Into a buffer of yours of `capacity` bytes: the whole text and a NUL after it, or nothing at
     all. `length`, which may be NULL, receives the bytes of the text without the NUL, also where
     the answer is BRIM_ERROR_BUFFER_TOO_SMALL: the text needs a capacity of length + 1. A NULL
     buffer of capacity 0 asks for the length only, and that is BRIM_OK. Host data in a text may
     hold a NUL: trust the length.

   NUMBERS
     Words of closed lists cross as int32_t, named BRIM_<LIST>_<WORD>; a number that is none of them
     is an error. brim_word and brim_word_number turn them into words and back. An optional value
     comes as `present`, 1 or 0, and the value; where it is absent the value is zero.

   CALCULATORS
     brim_calculate asks any of them by name, in JSON. Those that take and answer a few values
     have a function of their own, without JSON or floats, by the same name after brim_. Its
     amounts go in as pointers, NULL where one may be left out and is; refusals have the argument
     as path. An amount that is absent from an answer has the unit 0, which no unit has. An answer
     may be written where an argument was. Where it tells a person to do something, the ids of the
     cautions that belong to it come with it: without room for them there is no answer.

   HANDLES
     Opaque. You free each handle that a function gave you, with the function of its own type, once.
     Freeing NULL does nothing. Nothing else changes owner: what you pass in stays yours. No handle
     depends on another one's life. One thread at a time uses a handle; different handles go to
     different threads freely, also copies. */


#ifndef BRIMLINE_H
#define BRIMLINE_H

#include <stddef.h>
#include <stdint.h>

/* As the length of a text that goes in: the text ends at its first NUL. */
#define BRIM_TERMINATED ((size_t)-1)

// The version of this header. It rises when a program compiled with an older one would no longer
// do.
#define BRIM_ABI_VERSION 1

// What to do next, the first thing first, each with a stable id and the cautions that go with it.
// From `brim_evaluation_next` or `brim_check_advice`. Whoever shows an act to a person shows its
// cautions with it.
//
// Ownership: the caller's, to `brim_acts_free`. Threads: one at a time. Lifetime: its own; it is a
// copy.
typedef struct brim_acts brim_acts;

// A check as it happens: append an entry, get what follows from it.
//
// Ownership: `brim_check_start`, `brim_check_replay` or `brim_check_copy` to `brim_check_free`.
// Threads: one at a time. Lifetime: its own; it does not need the pack it was started on.
typedef struct brim_check brim_check;

// What was found in many records: closed jobs that were never proven right, leaks nobody
// followed
// up, holds nobody lifted, units that were soon low again, and what looks written afterwards.
//
// Ownership: `brim_comebacks_of` to `brim_comebacks_free`. Threads: one at a time. Lifetime: its
// own; it does not need the records.
typedef struct brim_comebacks brim_comebacks;

// The detail of an error: every fault of what was handed in, in the order they stand there.
//
// A call that is given one empties it first, and fills it if it fails. Ownership: `brim_error_new`
// to `brim_error_free`. Threads: one at a time. Lifetime: its own; nothing in it points elsewhere.
typedef struct brim_error brim_error;

// What a job will cost: best, likely and worst.
//
// Ownership: `brim_check_estimate` to `brim_estimate_free`. Threads: one at a time. Lifetime: its
// own.
typedef struct brim_estimate brim_estimate;

// The answer to one journal. Nothing in it changes any more.
//
// Ownership: `brim_evaluate` or `brim_check_evaluation` to `brim_evaluation_free`. Threads: one at
// a time. Lifetime: its own; it does not need the pack or the check it was made of.
typedef struct brim_evaluation brim_evaluation;

// Findings: what a person should know of a journal, each with a stable id. From
// `brim_evaluation_findings` or `brim_check_record`.
//
// Ownership: the caller's, to `brim_findings_free`. Threads: one at a time. Lifetime: its own; it
// is a copy.
typedef struct brim_findings brim_findings;

// When a job is to be looked at again, and why.
//
// Ownership: `brim_follow_up_of` to `brim_follow_up_free`. Threads: one at a time. Lifetime: its
// own; it does not need the record or the history.
typedef struct brim_follow_up brim_follow_up;

// A forecast that is kept up: readings and pours go in as they come, and it is asked at any time.
// What it holds does not grow.
//
// Ownership: `brim_forecast_new` to `brim_forecast_free`. Threads: one at a time. Lifetime: its
// own.
typedef struct brim_forecast brim_forecast;

// The answer to "may I do this now": whether it is allowed, and every item that stands in the way.
// From `brim_evaluation_gate` or `brim_check_gate`.
//
// Ownership: the caller's, to `brim_gate_free`. Threads: one at a time. Lifetime: its own; it is a
// copy.
typedef struct brim_gate brim_gate;

// The records of a shop by vehicle and unit, each in order of time.
//
// Ownership: `brim_history_of` to `brim_history_free`. Threads: one at a time. Lifetime: its
// own;
// it does not need the records.
typedef struct brim_history brim_history;

// What a job costs: the facts of its journal.
//
// Ownership: `brim_check_invoice` to `brim_invoice_free`. Threads: one at a time. Lifetime: its
// own.
typedef struct brim_invoice brim_invoice;

// The journal of a running check, kept entry by entry in a storage of yours as JSON Lines. An entry
// is answered for only once the storage said that it is durable, so nothing that was answered for
// is lost.
//
// Ownership: `brim_kept_journal_start` or `brim_kept_journal_recover` to `brim_kept_journal_free`.
// Threads: one at a time; the storage is called on the thread that appends. Lifetime: its own; what
// `user` points to must outlive it.
typedef struct brim_kept_journal brim_kept_journal;

// What a warranty file is asked for and a record does not say, each with a stable id. From
// `brim_record_evidence`.
//
// Ownership: the caller's, to `brim_lacks_free`. Threads: one at a time. Lifetime: its own; it is a
// copy.
typedef struct brim_lacks brim_lacks;

// Lines of money in their order, for a host to map to its own. From `brim_estimate_lines` and
// `brim_invoice_lines`.
//
// Ownership: the caller's, to `brim_lines_free`. Threads: one at a time. Lifetime: its own; it is
// a copy.
typedef struct brim_lines brim_lines;

// What is asked for beside an answer, and how much is read before a document is refused.
// Everywhere options are taken, NULL stands for those of `brim_options_new`, and a call looks at
// them but does not keep them.
//
// Ownership: `brim_options_new` to `brim_options_free`. Threads: one at a time. Lifetime: its own.
typedef struct brim_options brim_options;

// The service sheets and fluids of one publisher, read and checked.
//
// Ownership: `brim_pack_embedded`, `brim_pack_from_json` or `brim_pack_copy` to `brim_pack_free`.
// Threads: one at a time; give each thread a copy, which costs next to nothing. Lifetime: its own;
// checks and evaluations made of it go on after it is freed.
typedef struct brim_pack brim_pack;

// The price list of a counter, read and checked: fluid, parts, work and disposal, and what of it
// is billed.
//
// Ownership: `brim_price_list_embedded`, `brim_price_list_from_json` or `brim_price_list_copy` to
// `brim_price_list_free`. Threads: one at a time; give each thread a copy, which costs next to
// nothing. Lifetime: its own; estimates and invoices made by it go on after it is freed.
typedef struct brim_price_list brim_price_list;

// A job as it was closed: its pack's name and digest, its journal, the answer, and a digest over
// all of it. Nothing in it changes any more.
//
// Ownership: `brim_record_seal`, `brim_record_reopen` or `brim_record_copy` to
// `brim_record_free`. Threads: one at a time; give each thread a copy, which costs next to
// nothing. Lifetime: its own; it does not need the pack.
typedef struct brim_record brim_record;

// Tells answers in the language of a document of messages and in the units of a shop's profile.
//
// Ownership: `brim_teller_new` or `brim_teller_copy` to `brim_teller_free`. Threads: one at a time;
// give each thread a copy, which costs next to nothing. Lifetime: its own.
typedef struct brim_teller brim_teller;

// What a call answers: `BRIM_OK`, or what kind of error the first fault is. Numbers are never
// changed or reused; later versions add some. Words: `BRIM_LIST_STATUS`.
typedef int32_t brim_status;

// One of the closed lists whose words have numbers.
typedef int32_t brim_list;

// What a quantity is a quantity of. 0 where a kind is given: any.
typedef int32_t brim_kind;

// Whose gallon, quart, pint and fluid ounce a bare name means. 0 where measures are given: not
// said.
typedef int32_t brim_measures;

// A unit of measure. Numbers are never changed or reused.
//
// Definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2, 1 US gal = 231
// cubic inches, 1 imp gal = 4.54609 L (NIST SP 811, appendix B.8).
typedef uint16_t brim_unit;

// What a person typed or a sheet prints, exactly: mantissa * 10^exponent of a unit. `1.50 L` is
// 150, -2, `BRIM_UNIT_LITRE`. At most 15 digits, 9 of them decimals: the exponent is 0 to -9.
//
// A value of 16 bytes like any other in C: mantissa at byte 0, exponent at 8, unit at 12; what
// follows is not read.
typedef struct brim_amount {
  // The digits as an integer.
  int64_t mantissa;
  // The power of ten, 0 or negative.
  int32_t exponent;
  // The unit.
  brim_unit unit;
} brim_amount;

// How a value between two printable ones is rounded.
typedef int32_t brim_rounding;

// One of the bounds on what a document may hold.
typedef int32_t brim_limit;

// What can be said of the level.
typedef int32_t brim_verdict;

// What the sheet's own count says of a leak.
typedef int32_t brim_by_sheet;

// How far what is proved bears the count out.
typedef int32_t brim_certainty;

// The acts that a gate is asked about.
typedef int32_t brim_act;

// One of the intervals of an evaluation.
typedef int32_t brim_interval;

// One of the ends of an interval.
typedef int32_t brim_end;

// One of the volumes of the leak reading.
typedef int32_t brim_volume;

// How serious a finding is.
typedef int32_t brim_severity;

// What a record is evaluated again by.
typedef int32_t brim_rules;

// A sum of money, exactly: whole smallest units of a currency. `12.50 EUR` is 1250, "EUR".
typedef struct brim_money {
  // The smallest units.
  int64_t minor_units;
  // The ISO 4217 code, and a NUL.
  char currency[4];
} brim_money;

// The cases of an estimate.
typedef int32_t brim_case;

// Adds bytes at the end of a storage of yours, and answers 0 once they are durable: written, and
// flushed down to the medium. Any other answer is a refusal; the bytes may be there in part.
// `user` is what was given with it. It calls nothing on the journal it is called for, and leaves
// by its return only.
typedef int32_t (*brim_storage_append)(void *user, const uint8_t *bytes, size_t length);

// Drops all but the first `length` bytes of a storage of yours, and answers 0, or anything else
// for a refusal. It need not be durable before the next append is. As `brim_storage_append`.
typedef int32_t (*brim_storage_truncate)(void *user, size_t length);

// What the threads and the face under the head are like. 0 where K itself is given.
typedef int32_t brim_thread_condition;

// A strength class of steel bolts (ISO 898-1); `BRIM_STRENGTH_CLASS_8_8` is 8.8.
typedef int32_t brim_strength_class;

// What is screwed in, and into what.
typedef int32_t brim_plug;

// Whether a torque fits a thread.
typedef int32_t brim_fits;

// The temperature at which the density of an oil is told, and the procedure that goes with it
// (API MPMS 11.1 / ASTM D1250, lubricating-oil group). 0 stands for `BRIM_BASE_15C`.
typedef int32_t brim_base;

// How a forecast was made.
typedef int32_t brim_forecast_method;

// Why a forecast was not made by a first-order response, or not all of it.
typedef int32_t brim_forecast_reason;

// Which procedure a viscosity index was found by.
typedef int32_t brim_index_procedure;

// What a value from a network is worth. Only `BRIM_SIGNAL_STATE_VALID` may be used.
typedef int32_t brim_signal_state;

// One value from a network: what it is worth, and the value where its code stands for one, which
// is with `BRIM_SIGNAL_STATE_VALID` and `BRIM_SIGNAL_STATE_IMPLAUSIBLE`; else its unit is 0.
//
// A record of 24 bytes: state at byte 0, value at 8.
typedef struct brim_reading {
  // What it is worth.
  brim_signal_state state;
  // The value, if any.
  struct brim_amount value;
} brim_reading;

// Whether the level was measured, and if not, what is in the way.
typedef int32_t brim_level_status;

// Which byte of a number comes first.
typedef int32_t brim_byte_order;

// Where a number stands in a row of bytes, and what it is worth: offset + number * scale. Bits
// are counted from 0, the lowest bit of the first byte, eight to a byte: bit 7 is the highest of
// the first byte, bit 8 the lowest of the second.
//
// A record of 88 bytes, each member at the byte that is told with it.
typedef struct brim_layout {
  // At 0: the bit it starts at, its lowest for the low byte first, its highest for the high byte.
  uint32_t start;
  // At 4: how many bits it has, 1 to 64.
  uint32_t length;
  // At 8: which byte of it comes first.
  brim_byte_order order;
  // At 12: 1 if its highest bit counts below zero (two's complement), else 0.
  int32_t is_signed;
  // At 16: what one step is worth, of the unit's kind (for a temperature, a difference), not
  // zero.
  struct brim_amount scale;
  // At 32: what the number 0 stands for, of the unit's kind; with unit 0, nothing.
  struct brim_amount offset;
  // At 48: the least value that is valid, of the unit's kind; with unit 0, none is too small.
  struct brim_amount min;
  // At 64: the greatest value that is valid, of the unit's kind; with unit 0, none is too great.
  struct brim_amount max;
  // At 80: the unit of the answer.
  brim_unit unit;
} brim_layout;

// How a control unit answers.
typedef int32_t brim_reply;

// Why a control unit refuses.
typedef int32_t brim_refusal;

// How much doubt a decision may carry; the caller chooses (JCGM 106:2012, clause 8).
typedef int32_t brim_rule;

// On which side of a limit.
typedef int32_t brim_decision;

// What a page is written as.
typedef int32_t brim_medium;

// What a picture shows.
typedef int32_t brim_picture_of;

// The call did what it says.
#define BRIM_OK 0

// The text is not well-formed JSON.
#define BRIM_ERROR_SYNTAX 1

// A limit was passed; see `brim_options_limit`.
#define BRIM_ERROR_LIMIT 2

// The document's `format` is not one this version reads.
#define BRIM_ERROR_WRONG_FORMAT 3

// A value of another JSON type was expected.
#define BRIM_ERROR_WRONG_TYPE 4

// A required member is absent.
#define BRIM_ERROR_MISSING_FIELD 5

// A member that the format does not have.
#define BRIM_ERROR_UNKNOWN_FIELD 6

// The same member stands twice in one object.
#define BRIM_ERROR_DUPLICATE_FIELD 7

// A word or number outside the list of those allowed.
#define BRIM_ERROR_UNKNOWN_VALUE 8

// Two members that exclude each other, or none of a set of which one is needed.
#define BRIM_ERROR_CONFLICT 9

// A reference to something that is not there; of a handle: it was freed, or is of another type.
#define BRIM_ERROR_UNRESOLVED 10

// The same identity given twice.
#define BRIM_ERROR_DUPLICATE_ID 11

// A chain of references that returns to its start.
#define BRIM_ERROR_CYCLE 12

// `seq` does not rise.
#define BRIM_ERROR_SEQUENCE 13

// Not a date or time in the expected form.
#define BRIM_ERROR_NOT_A_TIME 14

// A sealed document whose bytes are not those that were sealed.
#define BRIM_ERROR_CHANGED 15

// The host's storage did not keep or give what was asked of it.
#define BRIM_ERROR_STORAGE 16

// Not a number in plain decimal notation, or not finite.
#define BRIM_ERROR_NOT_A_NUMBER 20

// More digits than an amount holds.
#define BRIM_ERROR_TOO_MANY_DIGITS 21

// A comma that may be a decimal sign or a thousands separator.
#define BRIM_ERROR_DECIMAL_COMMA 22

// A fraction that has no finite decimal.
#define BRIM_ERROR_FRACTION 23

// A number without its unit.
#define BRIM_ERROR_UNIT_MISSING 24

// A unit this library does not know.
#define BRIM_ERROR_UNIT_UNKNOWN 25

// A unit that names more than one size.
#define BRIM_ERROR_UNIT_AMBIGUOUS 26

// A unit of another kind of quantity than the one expected.
#define BRIM_ERROR_WRONG_KIND 27

// A value outside the range that is meaningful here.
#define BRIM_ERROR_OUT_OF_RANGE 28

// NULL where something is needed.
#define BRIM_ERROR_NULL_POINTER 40

// The buffer is too small; the needed length was reported.
#define BRIM_ERROR_BUFFER_TOO_SMALL 41

// A text is not UTF-8.
#define BRIM_ERROR_NOT_UTF8 42

// A defect of the library itself, caught at its border.
#define BRIM_ERROR_INTERNAL 90

// Volume of a liquid.
#define BRIM_KIND_VOLUME 1

// Turning moment.
#define BRIM_KIND_TORQUE 2

// Mass.
#define BRIM_KIND_MASS 3

// Length and distance.
#define BRIM_KIND_LENGTH 4

// Area.
#define BRIM_KIND_AREA 5

// A point on a temperature scale.
#define BRIM_KIND_TEMPERATURE 6

// How far two temperatures are apart.
#define BRIM_KIND_TEMPERATURE_DIFFERENCE 7

// Pressure above that of the surrounding air, as a gauge shows it.
#define BRIM_KIND_PRESSURE 8

// Pressure above vacuum.
#define BRIM_KIND_ABSOLUTE_PRESSURE 9

// Plane angle, in degrees only.
#define BRIM_KIND_ANGLE 10

// Duration.
#define BRIM_KIND_TIME 11

// Mass per volume.
#define BRIM_KIND_DENSITY 12

// Kinematic viscosity.
#define BRIM_KIND_KINEMATIC_VISCOSITY 13

// Volume per time.
#define BRIM_KIND_VOLUME_FLOW 14

// A plain number: a share, a factor, a probability.
#define BRIM_KIND_RATIO 15

// Force.
#define BRIM_KIND_FORCE 16

// Part of its volume that a liquid gains per degree.
#define BRIM_KIND_EXPANSION 17

// United States liquid measures, from the gallon of 231 cubic inches.
#define BRIM_MEASURES_US 1

// Imperial measures, from the gallon of 4.54609 L.
#define BRIM_MEASURES_IMPERIAL 2

// To the nearest; halfway to the even digit.
#define BRIM_ROUNDING_HALF_EVEN 1

// To the nearest; halfway away from zero.
#define BRIM_ROUNDING_HALF_UP 2

// Toward zero.
#define BRIM_ROUNDING_DOWN 3

// Away from zero.
#define BRIM_ROUNDING_UP 4

// Toward minus infinity.
#define BRIM_ROUNDING_FLOOR 5

// Toward plus infinity.
#define BRIM_ROUNDING_CEILING 6

// The job is on hold; no level may be told.
#define BRIM_VERDICT_ON_HOLD 1

// No sheet applies.
#define BRIM_VERDICT_NO_PROCEDURE 2

// The check was broken off and must be made again.
#define BRIM_VERDICT_REPEAT 3

// Nothing has been shown yet.
#define BRIM_VERDICT_INCOMPLETE 4

// Below the level.
#define BRIM_VERDICT_LOW 5

// At the level.
#define BRIM_VERDICT_AT_LEVEL 6

// Above the level.
#define BRIM_VERDICT_OVER 7

// At the level or above it.
#define BRIM_VERDICT_NOT_LOW 8

// At the level or below it.
#define BRIM_VERDICT_NOT_FULL 9

// What was seen proves neither.
#define BRIM_VERDICT_NOT_PROVEN 10

// Past the limit: a leak must be looked for.
#define BRIM_BY_SHEET_ABOVE 1

// Not past the limit, with the level found. Never "no leak".
#define BRIM_BY_SHEET_BELOW 2

// Not past the limit, with the level not found yet.
#define BRIM_BY_SHEET_OPEN 3

// The sheet has no limit, or the job is not one it applies to.
#define BRIM_BY_SHEET_NOT_APPLICABLE 4

// All that is possible lies on the same side.
#define BRIM_CERTAINTY_CLEAR 1

// Something possible lies on the other side.
#define BRIM_CERTAINTY_MARGINAL 2

// Nothing is said yet.
#define BRIM_CERTAINTY_OPEN 3

// There is nothing to say.
#define BRIM_CERTAINTY_NOT_APPLICABLE 4

// Worth knowing.
#define BRIM_SEVERITY_NOTE 1

// The answer may be worth less than it looks.
#define BRIM_SEVERITY_CAUTION 2

// Do not go on before this is settled.
#define BRIM_SEVERITY_STOP 3

// Opening the plug.
#define BRIM_ACT_OPEN 1

// Pouring fluid in.
#define BRIM_ACT_POUR 2

// Closing the plug for good.
#define BRIM_ACT_CLOSE 3

// Stopping the engine.
#define BRIM_ACT_STOP_ENGINE 4

// The rules and the pack it was sealed with.
#define BRIM_RULES_AS_RECORDED 1

// The rules of this library, and the pack that is given, whatever its edition.
#define BRIM_RULES_LATEST 2

// Nothing more has to be poured.
#define BRIM_CASE_BEST 1

// What such a job mostly takes.
#define BRIM_CASE_LIKELY 2

// The worst before a new approval.
#define BRIM_CASE_WORST 3

// `brim_status`, as `unit_ambiguous`.
#define BRIM_LIST_STATUS 1

// `brim_kind`, as `volume`.
#define BRIM_LIST_KIND 2

// `brim_measures`, as `us`.
#define BRIM_LIST_MEASURES 3

// `brim_rounding`, as `half_even`.
#define BRIM_LIST_ROUNDING 4

// `brim_verdict`, as `at_level`.
#define BRIM_LIST_VERDICT 5

// `brim_by_sheet`, as `below`.
#define BRIM_LIST_BY_SHEET 6

// `brim_certainty`, as `clear`.
#define BRIM_LIST_CERTAINTY 7

// `brim_severity`, as `caution`.
#define BRIM_LIST_SEVERITY 8

// `brim_act`, as `stop_engine`.
#define BRIM_LIST_ACT 9

// `brim_index_procedure`, as `a`.
#define BRIM_LIST_INDEX_PROCEDURE 10

// `brim_signal_state`, as `not_available`.
#define BRIM_LIST_SIGNAL_STATE 11

// `brim_level_status`, as `settling`.
#define BRIM_LIST_LEVEL_STATUS 12

// `brim_byte_order`, as `little`.
#define BRIM_LIST_BYTE_ORDER 13

// `brim_reply`, as `positive`.
#define BRIM_LIST_REPLY 14

// `brim_refusal`, as `busy`.
#define BRIM_LIST_REFUSAL 15

// `brim_thread_condition`, as `dry_steel`.
#define BRIM_LIST_THREAD_CONDITION 16

// `brim_strength_class`, as `8.8`.
#define BRIM_LIST_STRENGTH_CLASS 17

// `brim_plug`, as `steel`.
#define BRIM_LIST_PLUG 18

// `brim_fits`, as `not_judged`.
#define BRIM_LIST_FITS 19

// `brim_rule`, as `simple_acceptance`.
#define BRIM_LIST_RULE 20

// `brim_decision`, as `undecided`.
#define BRIM_LIST_DECISION 21

// `brim_forecast_method`, as `slope`.
#define BRIM_LIST_FORECAST_METHOD 22

// `brim_forecast_reason`, as `too_few`.
#define BRIM_LIST_FORECAST_REASON 23

// `brim_base`, as `base_15c`.
#define BRIM_LIST_BASE 24

// `brim_rules`, as `as_recorded`.
#define BRIM_LIST_RULES 25

// `brim_case`, as `likely`.
#define BRIM_LIST_CASE 26

// `brim_medium`, as `html`.
#define BRIM_LIST_MEDIUM 27

// `brim_picture_of`, as `narrowing`.
#define BRIM_LIST_PICTURE_OF 28

// Litre.
#define BRIM_UNIT_LITRE 1

// Millilitre.
#define BRIM_UNIT_MILLILITRE 2

// Cubic centimetre, the size of a millilitre.
#define BRIM_UNIT_CUBIC_CENTIMETRE 3

// Cubic metre.
#define BRIM_UNIT_CUBIC_METRE 4

// Cubic inch.
#define BRIM_UNIT_CUBIC_INCH 5

// United States gallon, 231 cubic inches.
#define BRIM_UNIT_US_GALLON 6

// United States liquid quart, a quarter of a gallon.
#define BRIM_UNIT_US_QUART 7

// United States liquid pint, an eighth of a gallon.
#define BRIM_UNIT_US_PINT 8

// United States fluid ounce, 1/128 of a gallon.
#define BRIM_UNIT_US_FLUID_OUNCE 9

// Imperial gallon, 4.54609 L.
#define BRIM_UNIT_IMPERIAL_GALLON 10

// Imperial quart, a quarter of a gallon.
#define BRIM_UNIT_IMPERIAL_QUART 11

// Imperial pint, an eighth of a gallon.
#define BRIM_UNIT_IMPERIAL_PINT 12

// Imperial fluid ounce, 1/160 of a gallon.
#define BRIM_UNIT_IMPERIAL_FLUID_OUNCE 13

// Newton metre.
#define BRIM_UNIT_NEWTON_METRE 14

// Newton centimetre.
#define BRIM_UNIT_NEWTON_CENTIMETRE 15

// Pound-force foot.
#define BRIM_UNIT_POUND_FORCE_FOOT 16

// Pound-force inch, a twelfth of a pound-force foot.
#define BRIM_UNIT_POUND_FORCE_INCH 17

// Ounce-force inch, a sixteenth of a pound-force inch.
#define BRIM_UNIT_OUNCE_FORCE_INCH 18

// Kilogram-force metre.
#define BRIM_UNIT_KILOGRAM_FORCE_METRE 19

// Kilogram-force centimetre.
#define BRIM_UNIT_KILOGRAM_FORCE_CENTIMETRE 20

// Kilogram.
#define BRIM_UNIT_KILOGRAM 21

// Gram.
#define BRIM_UNIT_GRAM 22

// Avoirdupois pound, 0.45359237 kg.
#define BRIM_UNIT_POUND 23

// Kilometre.
#define BRIM_UNIT_KILOMETRE 24

// International mile, 1609.344 m.
#define BRIM_UNIT_MILE 25

// Metre.
#define BRIM_UNIT_METRE 26

// Millimetre.
#define BRIM_UNIT_MILLIMETRE 27

// Inch, 25.4 mm.
#define BRIM_UNIT_INCH 28

// Square metre.
#define BRIM_UNIT_SQUARE_METRE 29

// Square centimetre.
#define BRIM_UNIT_SQUARE_CENTIMETRE 30

// Square inch.
#define BRIM_UNIT_SQUARE_INCH 31

// Kelvin.
#define BRIM_UNIT_KELVIN 32

// Degree Celsius as a point on the scale.
#define BRIM_UNIT_DEGREE_CELSIUS 33

// Degree Fahrenheit as a point on the scale.
#define BRIM_UNIT_DEGREE_FAHRENHEIT 34

// Difference of one degree Celsius, or of one kelvin.
#define BRIM_UNIT_CELSIUS_DIFFERENCE 35

// Difference of one degree Fahrenheit, 5/9 K.
#define BRIM_UNIT_FAHRENHEIT_DIFFERENCE 36

// Kilopascal above the surrounding air.
#define BRIM_UNIT_KILOPASCAL 37

// Bar above the surrounding air.
#define BRIM_UNIT_BAR 38

// Pound-force per square inch above the surrounding air.
#define BRIM_UNIT_POUND_PER_SQUARE_INCH 39

// Kilopascal above vacuum.
#define BRIM_UNIT_KILOPASCAL_ABSOLUTE 40

// Pound-force per square inch above vacuum.
#define BRIM_UNIT_POUND_PER_SQUARE_INCH_ABSOLUTE 41

// Degree of plane angle.
#define BRIM_UNIT_DEGREE 42

// Second.
#define BRIM_UNIT_SECOND 43

// Minute.
#define BRIM_UNIT_MINUTE 44

// Hour.
#define BRIM_UNIT_HOUR 45

// Kilogram per cubic metre, the size of a gram per litre.
#define BRIM_UNIT_KILOGRAM_PER_CUBIC_METRE 46

// Gram per millilitre, the size of a kilogram per litre.
#define BRIM_UNIT_GRAM_PER_MILLILITRE 47

// Square millimetre per second, the size of a centistokes.
#define BRIM_UNIT_SQUARE_MILLIMETRE_PER_SECOND 48

// Millilitre per second.
#define BRIM_UNIT_MILLILITRE_PER_SECOND 49

// Litre per minute.
#define BRIM_UNIT_LITRE_PER_MINUTE 50

// Decinewton metre, on older prints.
#define BRIM_UNIT_DECINEWTON_METRE 51

// The number itself. Where a ratio is meant, a number alone is read as one.
#define BRIM_UNIT_ONE 52

// A hundredth.
#define BRIM_UNIT_PERCENT 53

// Newton.
#define BRIM_UNIT_NEWTON 54

// Kilonewton.
#define BRIM_UNIT_KILONEWTON 55

// Pound-force.
#define BRIM_UNIT_POUND_FORCE 56

// Per kelvin, or per degree Celsius.
#define BRIM_UNIT_PER_KELVIN 57

// Per degree Fahrenheit.
#define BRIM_UNIT_PER_FAHRENHEIT 58

// Square millimetre.
#define BRIM_UNIT_SQUARE_MILLIMETRE 59

// Bytes of one document; 16 MiB if not set.
#define BRIM_LIMIT_BYTES 1

// Objects and lists inside each other; 32 if not set, 100 at most.
#define BRIM_LIMIT_DEPTH 2

// Members of any one list, such as the entries of a journal; 100000 if not set.
#define BRIM_LIMIT_ENTRIES 3

// Bytes of any one text value; 10000 if not set.
#define BRIM_LIMIT_TEXT 4

// Faults collected before the rest are left out; 100 if not set, at least one.
#define BRIM_LIMIT_FAULTS 5

// What is proved of the departure as found; negative is short.
#define BRIM_INTERVAL_AS_FOUND 1

// What is proved of the net volume added since.
#define BRIM_INTERVAL_NET_ADDED 2

// What is proved of the departure now; negative is short.
#define BRIM_INTERVAL_NOW 3

// What is proved of the shortage as found; positive is short.
#define BRIM_INTERVAL_SHORTAGE 4

// The lower end.
#define BRIM_END_LO 1

// The upper end.
#define BRIM_END_HI 2

// What was added, nominal.
#define BRIM_VOLUME_GROSS 1

// What was added less what came out again, nominal, not below zero.
#define BRIM_VOLUME_NET 2

// The one of these two that the sheet holds against its limit.
#define BRIM_VOLUME_USED 3

// The sheet's limit.
#define BRIM_VOLUME_LIMIT 4

// How much the deciding count would have to change to turn the reading.
#define BRIM_VOLUME_MARGIN 5

// Plain steel, dry.
#define BRIM_THREAD_CONDITION_DRY_STEEL 1

// Steel with machine oil.
#define BRIM_THREAD_CONDITION_MACHINE_OIL 2

// Cadmium plated.
#define BRIM_THREAD_CONDITION_CADMIUM 3

// Phosphated and oiled.
#define BRIM_THREAD_CONDITION_PHOSPHATE_AND_OIL 4

// Zinc plated.
#define BRIM_THREAD_CONDITION_ZINC 5

// Stainless steel of type 302.
#define BRIM_THREAD_CONDITION_STAINLESS 6

// With threadlocker: published values contradict each other, so it has no range.
#define BRIM_THREAD_CONDITION_THREADLOCKER 7

// With another lubricant: published values run too far apart, so it has no range.
#define BRIM_THREAD_CONDITION_LUBRICATED_OTHER 8

// Soft steel.
#define BRIM_STRENGTH_CLASS_4_6 1

// Soft steel, cold worked.
#define BRIM_STRENGTH_CLASS_4_8 2

// Soft steel.
#define BRIM_STRENGTH_CLASS_5_6 3

// Soft steel, cold worked.
#define BRIM_STRENGTH_CLASS_5_8 4

// Soft steel, cold worked.
#define BRIM_STRENGTH_CLASS_6_8 5

// Quenched and tempered.
#define BRIM_STRENGTH_CLASS_8_8 6

// Quenched and tempered.
#define BRIM_STRENGTH_CLASS_9_8 7

// Quenched and tempered.
#define BRIM_STRENGTH_CLASS_10_9 8

// Quenched and tempered.
#define BRIM_STRENGTH_CLASS_12_9 9

// A solid bolt or plug of steel, in steel. For one that only seals, the band is an upper bound.
#define BRIM_PLUG_STEEL 1

// Into aluminium or another light alloy, or a plug of one.
#define BRIM_PLUG_LIGHT_ALLOY 2

// A hollow plug, as one with a standpipe.
#define BRIM_PLUG_HOLLOW 3

// Not known.
#define BRIM_PLUG_UNKNOWN 4

// It lies within the band.
#define BRIM_FITS_YES 1

// It lies above the band.
#define BRIM_FITS_NO 2

// It lies below the band, where a plug that seals is right, or the band is none for this plug.
#define BRIM_FITS_NOT_JUDGED 3

// 15 deg C, the SI form of 1980.
#define BRIM_BASE_15C 1

// 60 deg F, the form of 1980.
#define BRIM_BASE_60F 2

// 60 deg F by the procedure of 2004, the factor rounded to five decimals.
#define BRIM_BASE_60F_2004 3

// 15 deg C by way of 60 deg F, by the procedure of 2004, the factor rounded to five decimals.
#define BRIM_BASE_15C_2004 4

// From a first-order response fitted to the readings.
#define BRIM_FORECAST_METHOD_FIRST_ORDER 1

// From the straight line through the latest readings.
#define BRIM_FORECAST_METHOD_SLOPE 2

// Not at all.
#define BRIM_FORECAST_METHOD_NONE 3

// Too few readings are believed.
#define BRIM_FORECAST_REASON_TOO_FEW 1

// The readings do not rise.
#define BRIM_FORECAST_REASON_NOT_WARMING 2

// The readings do not tell yet whether they get there.
#define BRIM_FORECAST_REASON_ASYMPTOTE_UNKNOWN 3

// The readings level out before they get there.
#define BRIM_FORECAST_REASON_ASYMPTOTE_BELOW 4

// At this rate it takes more than a day.
#define BRIM_FORECAST_REASON_TOO_SLOW 5

// The reading stands still.
#define BRIM_FORECAST_REASON_STUCK 6

// For an index up to 100.
#define BRIM_INDEX_PROCEDURE_A 1

// For an index above 100.
#define BRIM_INDEX_PROCEDURE_B 2

// Within the range of valid values.
#define BRIM_SIGNAL_STATE_VALID 1

// A code whose meaning belongs to the parameter.
#define BRIM_SIGNAL_STATE_PARAMETER_SPECIFIC 2

// A code kept for later use.
#define BRIM_SIGNAL_STATE_RESERVED 3

// The sender knows that its value is wrong.
#define BRIM_SIGNAL_STATE_ERROR 4

// The sender has no value.
#define BRIM_SIGNAL_STATE_NOT_AVAILABLE 5

// A valid code for something that cannot be, or that lies outside the range given for it.
#define BRIM_SIGNAL_STATE_IMPLAUSIBLE 6

// The conditions for measuring are met.
#define BRIM_LEVEL_STATUS_CONDITIONS_MET 1

// The fluid is still settling; the countdown tells how long.
#define BRIM_LEVEL_STATUS_SETTLING 2

// A range is engaged.
#define BRIM_LEVEL_STATUS_IN_GEAR 3

// The fluid is too cold.
#define BRIM_LEVEL_STATUS_TOO_COLD 4

// The fluid is too hot.
#define BRIM_LEVEL_STATUS_TOO_HOT 5

// The vehicle is moving.
#define BRIM_LEVEL_STATUS_MOVING 6

// The vehicle does not stand level.
#define BRIM_LEVEL_STATUS_NOT_LEVEL 7

// The engine turns too slowly.
#define BRIM_LEVEL_STATUS_ENGINE_TOO_SLOW 8

// A code without a known meaning.
#define BRIM_LEVEL_STATUS_UNKNOWN 9

// The sender knows that the status is wrong.
#define BRIM_LEVEL_STATUS_ERROR 10

// The sender has no status.
#define BRIM_LEVEL_STATUS_NOT_AVAILABLE 11

// The low byte first; the number starts at its lowest bit.
#define BRIM_BYTE_ORDER_LITTLE 1

// The high byte first; the number starts at its highest bit.
#define BRIM_BYTE_ORDER_BIG 2

// With data.
#define BRIM_REPLY_POSITIVE 1

// With a refusal.
#define BRIM_REPLY_NEGATIVE 2

// That the answer will come later: wait for it, and do not ask again.
#define BRIM_REPLY_PENDING 3

// No reason given.
#define BRIM_REFUSAL_GENERAL_REJECT 1

// It does not have the service.
#define BRIM_REFUSAL_SERVICE_NOT_SUPPORTED 2

// It does not have this part of the service.
#define BRIM_REFUSAL_SUB_FUNCTION_NOT_SUPPORTED 3

// The request has the wrong length or form.
#define BRIM_REFUSAL_INCORRECT_LENGTH 4

// The answer would be too long.
#define BRIM_REFUSAL_RESPONSE_TOO_LONG 5

// It is busy; ask again.
#define BRIM_REFUSAL_BUSY 6

// Its conditions are not met.
#define BRIM_REFUSAL_CONDITIONS_NOT_CORRECT 7

// The request comes out of order.
#define BRIM_REFUSAL_SEQUENCE_ERROR 8

// It does not have the identifier, or not now.
#define BRIM_REFUSAL_OUT_OF_RANGE 9

// It must be unlocked first.
#define BRIM_REFUSAL_SECURITY_ACCESS_DENIED 10

// It wants to know who asks first.
#define BRIM_REFUSAL_AUTHENTICATION_REQUIRED 11

// The answer will come later.
#define BRIM_REFUSAL_RESPONSE_PENDING 12

// It does not have this part of the service in the session it is in.
#define BRIM_REFUSAL_SUB_FUNCTION_NOT_IN_SESSION 13

// It does not have the service in the session it is in.
#define BRIM_REFUSAL_SERVICE_NOT_IN_SESSION 14

// A code without a name here.
#define BRIM_REFUSAL_OTHER 15

// Decided by the estimate alone: the risk is shared.
#define BRIM_RULE_SIMPLE_ACCEPTANCE 1

// Called below only where the estimate is below by the guard band.
#define BRIM_RULE_GUARDED_ACCEPTANCE 2

// Called above only where the estimate is above by more than the guard band.
#define BRIM_RULE_GUARDED_REJECTION 3

// Above the limit.
#define BRIM_DECISION_ABOVE 1

// At the limit or below it, which is all it says: no gearbox is shown to be tight by it.
#define BRIM_DECISION_BELOW 2

// Within the guard band, where the rule decides nothing.
#define BRIM_DECISION_UNDECIDED 3

// One HTML document that needs nothing from elsewhere and runs nothing.
#define BRIM_MEDIUM_HTML 1

// Markdown; pictures are told in words.
#define BRIM_MEDIUM_MARKDOWN 2

// Lines of at most 80 columns; pictures are told in words.
#define BRIM_MEDIUM_TEXT 3

// The temperatures by time, the window, the forecast, the plug and the pours.
#define BRIM_PICTURE_OF_WARM_UP 1

// What is known of the departure, entry by entry.
#define BRIM_PICTURE_OF_NARROWING 2

// The closing torque, on the tool.
#define BRIM_PICTURE_OF_CLOSING 3

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

// The version of the library's binary interface. Compare it with `BRIM_ABI_VERSION`, which the
// program was compiled with.
int32_t brim_abi_version(void);

// The versions of everything, as JSON:
// `{"library","rules","documents":{"pack","journal","result","record","prices","messages",
// "profile","estimate","invoice","history","comebacks","follow_up","audit","shadow"},"abi"}`.
//
// Errors: none of its own.
brim_status brim_versions(char *buffer, size_t capacity, size_t *length, struct brim_error *error);

// A new, empty error handle, for any number of calls; NULL only after a defect of the library.
struct brim_error *brim_error_new(void);

// Frees an error handle. NULL is allowed.
void brim_error_free(struct brim_error *error);

// How many faults there are; 0 if the last call did well.
//
// Errors: none of its own.
brim_status brim_error_fault_count(const struct brim_error *error, size_t *count);

// What kind a fault is: one of `BRIM_ERROR_...`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_fault_kind(const struct brim_error *error, size_t index, brim_status *kind);

// Where in the text a fault stands: line and column in characters, both from 1, and the bytes
// before it. All three are 0 where that is not known, and at most 4294967295.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_fault_position(const struct brim_error *error,
                                      size_t index,
                                      uint32_t *line,
                                      uint32_t *column,
                                      uint32_t *offset);

// Where in the document a fault stands, as `entries[3].volume`, or which argument it is about;
// empty if neither.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_fault_path(const struct brim_error *error,
                                  size_t index,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length);

// What was found, shortened to 80 characters; empty if nothing is to be told.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_fault_got(const struct brim_error *error,
                                 size_t index,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length);

// What to do about a fault, in English; empty if nothing is to be told.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_fault_hint(const struct brim_error *error,
                                  size_t index,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length);

// How many values are listed that would have been accepted.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_allowed_count(const struct brim_error *error, size_t index, size_t *count);

// One of the values that would have been accepted.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_error_allowed(const struct brim_error *error,
                               size_t index,
                               size_t item,
                               char *buffer,
                               size_t capacity,
                               size_t *length);

// The whole error in English, a line for each fault; empty if the last call did well.
//
// Errors: none of its own.
brim_status brim_error_message(const struct brim_error *error,
                               char *buffer,
                               size_t capacity,
                               size_t *length);

// The whole error as JSON:
// `{"kind","code","message","faults":[{"kind","code","path"?,"line"?,"column"?,"offset"?,
// "got"?,"allowed"?,"hint"?}]}`; empty if the last call did well.
//
// Errors: none of its own.
brim_status brim_error_json(const struct brim_error *error,
                            char *buffer,
                            size_t capacity,
                            size_t *length);

// The word of a number of a list, as it stands in documents.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE`.
brim_status brim_word(brim_list list,
                      int32_t number,
                      char *buffer,
                      size_t capacity,
                      size_t *length,
                      struct brim_error *error);

// The number of a word of a list.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE`.
brim_status brim_word_number(brim_list list,
                             const char *word,
                             size_t word_length,
                             int32_t *number,
                             struct brim_error *error);

// Reads a unit as people type it: `ft-lb`, `N.m`, `deg F`, `cc`, `qt (US)`. A kind decides how a
// text reads: `deg C` as a temperature difference is one. Measures say what bare `qt`, `pt`, `gal`
// and `fl oz` mean.
//
// Errors: `BRIM_ERROR_UNIT_AMBIGUOUS` with the candidates, `BRIM_ERROR_UNIT_UNKNOWN` with the
// nearest names, `BRIM_ERROR_UNIT_MISSING`, `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_UNKNOWN_VALUE`
// for a number of no kind or measures.
brim_status brim_unit_parse(const char *name,
                            size_t name_length,
                            brim_kind kind,
                            brim_measures measures,
                            brim_unit *unit,
                            struct brim_error *error);

// The kind of quantity a unit measures.
//
// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_unit_kind(brim_unit unit, brim_kind *kind, struct brim_error *error);

// The canonical symbol of a unit, the one that is printed.
//
// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_unit_symbol(brim_unit unit,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// The code of a unit in the Unified Code for Units of Measure, case-sensitive form:
// `[lbf_av].[ft_i]`. Where that code has no unit for it the nearest expression stands.
//
// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_unit_ucum(brim_unit unit,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// The common code of a unit in UN/ECE Recommendation 20: `M92`; empty where it has none.
//
// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_unit_rec20(brim_unit unit,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// Converts a number from one unit to another of the same kind, units by name: `brim_convert(104,
// "deg F", BRIM_TERMINATED, "deg C", BRIM_TERMINATED, &result, NULL)` gives 40. The result is the
// double nearest to the exact value.
//
// Errors: `BRIM_ERROR_NOT_A_NUMBER` for a NaN or an infinity, `BRIM_ERROR_OUT_OF_RANGE` where the
// result is above the largest double, `BRIM_ERROR_WRONG_KIND` for units of two kinds; of the names
// those of `brim_unit_parse`.
brim_status brim_convert(double number,
                         const char *from,
                         size_t from_length,
                         const char *to,
                         size_t to_length,
                         double *result,
                         struct brim_error *error);

// Converts a number from one unit to another of the same kind, units by number.
//
// Errors: as `brim_convert`; `BRIM_ERROR_UNIT_UNKNOWN` for a number of no unit.
brim_status brim_convert_units(double number,
                               brim_unit from,
                               brim_unit to,
                               double *result,
                               struct brim_error *error);

// Reads an amount as people type it: `1.5 L`, `1/2 US qt`, `1 1/2 in`, `104 deg F`, `14Nm`. The
// kind and the measures are those of `brim_unit_parse`.
//
// Errors: `BRIM_ERROR_NOT_A_NUMBER`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_DECIMAL_COMMA` with
// the readings, `BRIM_ERROR_FRACTION` with the neighbours, `BRIM_ERROR_OUT_OF_RANGE`; of the unit
// those of `brim_unit_parse`.
brim_status brim_amount_parse(const char *written,
                              size_t written_length,
                              brim_kind kind,
                              brim_measures measures,
                              struct brim_amount *amount,
                              struct brim_error *error);

// Writes an amount: `1.50 L`, with an ASCII minus and one space.
//
// Errors: `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`, `BRIM_ERROR_UNIT_UNKNOWN` for
// what is no amount.
brim_status brim_amount_text(const struct brim_amount *amount,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// The amount of the shortest decimal that names a double: 0.1 is 0.1.
//
// Errors: `BRIM_ERROR_NOT_A_NUMBER` for a NaN or an infinity, `BRIM_ERROR_TOO_MANY_DIGITS`,
// `BRIM_ERROR_OUT_OF_RANGE` from 1e15 on, `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_amount_from_double(double number,
                                    brim_unit unit,
                                    struct brim_amount *amount,
                                    struct brim_error *error);

// The double nearest to an amount's number, in its own unit.
//
// Errors: as `brim_amount_text`.
brim_status brim_amount_to_double(const struct brim_amount *amount,
                                  double *number,
                                  struct brim_error *error);

// An amount in another unit of its kind, rounded to `places` decimals (0 to 9).
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`,
// `BRIM_ERROR_UNIT_UNKNOWN`, `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rounding.
brim_status brim_amount_to(const struct brim_amount *amount,
                           brim_unit unit,
                           int32_t places,
                           brim_rounding rounding,
                           struct brim_amount *result,
                           struct brim_error *error);

// The sum of two amounts of one kind, exact, in the unit of the first. A difference of
// temperatures may be added to a temperature.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, also for two temperatures; `BRIM_ERROR_TOO_MANY_DIGITS` where
// the exact sum does not end within the digits of an amount, `BRIM_ERROR_OUT_OF_RANGE`,
// `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_amount_add(const struct brim_amount *a,
                            const struct brim_amount *b,
                            struct brim_amount *sum,
                            struct brim_error *error);

// The first amount less the second, exact, in the unit of the first. Two temperatures give a
// difference of temperatures.
//
// Errors: as `brim_amount_add`.
brim_status brim_amount_subtract(const struct brim_amount *a,
                                 const struct brim_amount *b,
                                 struct brim_amount *difference,
                                 struct brim_error *error);

// A whole multiple of an amount, exact.
//
// Errors: `BRIM_ERROR_WRONG_KIND` for a temperature, which has no multiples;
// `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`, `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_amount_times(const struct brim_amount *amount,
                              int64_t factor,
                              struct brim_amount *product,
                              struct brim_error *error);

// How an amount stands to another of its kind, exactly: -1 less, 0 equal, 1 greater.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`,
// `BRIM_ERROR_UNIT_UNKNOWN`.
brim_status brim_amount_compare(const struct brim_amount *a,
                                const struct brim_amount *b,
                                int32_t *order,
                                struct brim_error *error);

// What two intervals, written as `[-2 L, -1.5 L]` or `(-inf, 0 L]`, have in common; empty where
// that is nothing.
//
// Errors: `BRIM_ERROR_SYNTAX` for another form, `BRIM_ERROR_OUT_OF_RANGE` where the lower end is
// above the upper, `BRIM_ERROR_WRONG_KIND`; of the ends those of `brim_amount_parse`.
brim_status brim_interval_intersect(const char *a,
                                    size_t a_length,
                                    const char *b,
                                    size_t b_length,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// New options: the default limits, nothing more asked for; NULL only after a defect of the
// library.
struct brim_options *brim_options_new(void);

// Frees options. NULL is allowed.
void brim_options_free(struct brim_options *options);

// Sets one limit.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no limit.
brim_status brim_options_limit(struct brim_options *options,
                               brim_limit limit,
                               size_t value,
                               struct brim_error *error);

// Asks for the smallest changes that would turn the answer (1), or not (0). They stand in the
// result document.
//
// Errors: none of its own.
brim_status brim_options_flip(struct brim_options *options, int32_t flip, struct brim_error *error);

// Asks what keeps a verdict away; 0 asks for none. It stands in the result document.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no verdict.
brim_status brim_options_why_not(struct brim_options *options,
                                 brim_verdict verdict,
                                 struct brim_error *error);

// The embedded demonstration pack: invented units, fluids and numbers of an invented shop.
//
// Errors: none of its own.
brim_status brim_pack_embedded(struct brim_pack **pack, struct brim_error *error);

// Reads a pack from its JSON text, within the limits of the options.
//
// Errors: every fault of the document, with path and position.
brim_status brim_pack_from_json(const char *json,
                                size_t json_length,
                                const struct brim_options *options,
                                struct brim_pack **pack,
                                struct brim_error *error);

// Another handle of the same pack, for another thread. It shares the pack's data.
//
// Errors: none of its own.
brim_status brim_pack_copy(const struct brim_pack *pack,
                           struct brim_pack **copy,
                           struct brim_error *error);

// Frees a pack. NULL is allowed.
void brim_pack_free(struct brim_pack *pack);

// The pack's own name.
//
// Errors: none of its own.
brim_status brim_pack_id(const struct brim_pack *pack,
                         char *buffer,
                         size_t capacity,
                         size_t *length,
                         struct brim_error *error);

// The publisher's version of the pack.
//
// Errors: none of its own.
brim_status brim_pack_version(const struct brim_pack *pack,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// What the pack is called.
//
// Errors: none of its own.
brim_status brim_pack_title(const struct brim_pack *pack,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// SHA-256 of the canonical form, in lower-case hex.
//
// Errors: none of its own.
brim_status brim_pack_digest(const struct brim_pack *pack,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// The canonical form of the pack, as JSON.
//
// Errors: none of its own.
brim_status brim_pack_json(const struct brim_pack *pack,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// Every defect of the sheets themselves, as JSON:
// `[{"id","severity","procedure","edition","field","args"?}]`.
//
// Errors: none of its own.
brim_status brim_pack_lint_json(const struct brim_pack *pack,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// Where two editions of a procedure differ, field by field, as JSON: `[{"field","from"?,"to"?}]`.
//
// Errors: `BRIM_ERROR_UNRESOLVED` if the pack lacks one of them.
brim_status brim_pack_compare_json(const struct brim_pack *pack,
                                   const char *procedure,
                                   size_t procedure_length,
                                   uint32_t from,
                                   uint32_t to,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// The sheets for a vehicle, a unit or both (NULL leaves one out), in force on a day `YYYY-MM-DD`
// (NULL: the newest), as JSON:
// `{"answer":"one|several|none","candidates":[{"procedure","edition","unit"?}]}`.
//
// Errors: `BRIM_ERROR_CONFLICT` if neither is named, `BRIM_ERROR_NOT_A_TIME`.
brim_status brim_pack_select_json(const struct brim_pack *pack,
                                  const char *vehicle,
                                  size_t vehicle_length,
                                  const char *unit,
                                  size_t unit_length,
                                  const char *day,
                                  size_t day_length,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length,
                                  struct brim_error *error);

// Whether one fluid of the pack may be poured onto another, by their ids, as JSON:
// `{"answer","relation","path":[{"from","to","relation"}],"reason"}`. The answer is `yes`,
// `after_exchange`, `no` or `unknown`; only `yes` is a yes. A fluid that the pack lacks is
// `unknown`, and so is one that the other's sheet never lets in, whatever its own allows.
//
// Errors: none of its own.
brim_status brim_pack_may_mix_json(const struct brim_pack *pack,
                                   const char *poured,
                                   size_t poured_length,
                                   const char *onto,
                                   size_t onto_length,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// What each fluid on offer may do where the pack's fluid `required` is asked for, as JSON:
// `[{"id","answer","fill","top_up","path":[{"from","to","relation"}],"reason"}]`, in the order of
// the offers. The answer is `same`, `may_replace`, `may_top_up`, `after_exchange`, `never` or
// `unknown`. `offered` points to `offered_count` ids, each of which ends with a NUL.
//
// Errors: none of its own.
brim_status brim_pack_resolve_json(const struct brim_pack *pack,
                                   const char *required,
                                   size_t required_length,
                                   const char *const *offered,
                                   size_t offered_count,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// Evaluates a journal, one JSON document or JSON Lines, on a pack.
//
// Errors: every fault of the journal, with path and position.
brim_status brim_evaluate(const struct brim_pack *pack,
                          const char *journal,
                          size_t journal_length,
                          const struct brim_options *options,
                          struct brim_evaluation **evaluation,
                          struct brim_error *error);

// Evaluates a journal in one call, text in and text out, for hosts that keep no handles: `pack` is
// the text of a pack, or NULL for the embedded one; the result document goes into the buffer.
//
// A buffer that is too small costs a second evaluation; 65536 bytes hold the result of most
// journals.
//
// Errors: every fault of the pack, or else of the journal, with path and position.
brim_status brim_evaluate_json(const char *pack,
                               size_t pack_length,
                               const char *journal,
                               size_t journal_length,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// Frees an evaluation. NULL is allowed.
void brim_evaluation_free(struct brim_evaluation *evaluation);

// What can be said of the level.
//
// Errors: none of its own.
brim_status brim_evaluation_verdict(const struct brim_evaluation *evaluation,
                                    brim_verdict *verdict,
                                    struct brim_error *error);

// The procedure that the journal names.
//
// Errors: none of its own.
brim_status brim_evaluation_procedure(const struct brim_evaluation *evaluation,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *length,
                                      struct brim_error *error);

// The edition that applied; 0 if none did.
//
// Errors: none of its own.
brim_status brim_evaluation_edition(const struct brim_evaluation *evaluation,
                                    uint32_t *edition,
                                    struct brim_error *error);

// The digest of the edition that applied; empty if none did.
//
// Errors: none of its own.
brim_status brim_evaluation_digest(const struct brim_evaluation *evaluation,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// What the sheet's own count says of a leak.
//
// Errors: none of its own.
brim_status brim_evaluation_by_sheet(const struct brim_evaluation *evaluation,
                                     brim_by_sheet *by_sheet,
                                     struct brim_error *error);

// How far what is proved bears that count out.
//
// Errors: none of its own.
brim_status brim_evaluation_certainty(const struct brim_evaluation *evaluation,
                                      brim_certainty *certainty,
                                      struct brim_error *error);

// What a person should know of the journal, in a handle of the caller's.
//
// Errors: none of its own.
brim_status brim_evaluation_findings(const struct brim_evaluation *evaluation,
                                     struct brim_findings **findings,
                                     struct brim_error *error);

// What to do next, in a handle of the caller's.
//
// Errors: none of its own.
brim_status brim_evaluation_next(const struct brim_evaluation *evaluation,
                                 struct brim_acts **acts,
                                 struct brim_error *error);

// Whether an act is allowed at the moment of the newest entry, in a handle of the caller's.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no act.
brim_status brim_evaluation_gate(const struct brim_evaluation *evaluation,
                                 brim_act act,
                                 struct brim_gate **gate,
                                 struct brim_error *error);

// How many cautions go with the state of the job. They belong beside every telling of the result.
//
// Errors: none of its own.
brim_status brim_evaluation_caution_count(const struct brim_evaluation *evaluation,
                                          size_t *count,
                                          struct brim_error *error);

// The id of one of these cautions.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_evaluation_caution(const struct brim_evaluation *evaluation,
                                    size_t index,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// The result document: canonical JSON, the same bytes in every language.
//
// Errors: none of its own.
brim_status brim_evaluation_json(const struct brim_evaluation *evaluation,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// An interval as text: `[-2 L, -1.5 L]` or `(-inf, 0 L]`.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval.
brim_status brim_evaluation_interval(const struct brim_evaluation *evaluation,
                                     brim_interval interval,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// One end of an interval. `present` is 1 where there is an end; where it is unbounded `present` is
// 0 and all of `amount` is 0.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval or end.
brim_status brim_evaluation_end(const struct brim_evaluation *evaluation,
                                brim_interval interval,
                                brim_end end,
                                int32_t *present,
                                struct brim_amount *amount,
                                struct brim_error *error);

// One of the volumes of the leak reading. `present` is 1 where there is one; else it is 0 and all
// of `amount` is 0.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no volume.
brim_status brim_evaluation_volume(const struct brim_evaluation *evaluation,
                                   brim_volume volume,
                                   int32_t *present,
                                   struct brim_amount *amount,
                                   struct brim_error *error);

// Frees findings. NULL is allowed.
void brim_findings_free(struct brim_findings *findings);

// How many findings there are.
//
// Errors: none of its own.
brim_status brim_findings_count(const struct brim_findings *findings,
                                size_t *count,
                                struct brim_error *error);

// The id of a finding.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_id(const struct brim_findings *findings,
                             size_t index,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// How serious a finding is.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_severity(const struct brim_findings *findings,
                                   size_t index,
                                   brim_severity *severity,
                                   struct brim_error *error);

// The field of the entry or the sheet that a finding is about; empty if none.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_field(const struct brim_findings *findings,
                                size_t index,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// How many entries a finding is about.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_entry_count(const struct brim_findings *findings,
                                      size_t index,
                                      size_t *count,
                                      struct brim_error *error);

// One of the entries that a finding is about, by its `seq`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_entry(const struct brim_findings *findings,
                                size_t index,
                                size_t item,
                                uint64_t *seq,
                                struct brim_error *error);

// What a finding says under a name, as text; empty if nothing.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_arg(const struct brim_findings *findings,
                              size_t index,
                              const char *name,
                              size_t name_length,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// All findings as JSON: `[{"id","severity","entries","field"?,"args"}]`.
//
// Errors: none of its own.
brim_status brim_findings_json(const struct brim_findings *findings,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// Frees a gate. NULL is allowed.
void brim_gate_free(struct brim_gate *gate);

// Whether nothing stands in the way: 1 or 0.
//
// Errors: none of its own.
brim_status brim_gate_allowed(const struct brim_gate *gate,
                              int32_t *allowed,
                              struct brim_error *error);

// How many items stand in the way.
//
// Errors: none of its own.
brim_status brim_gate_unmet_count(const struct brim_gate *gate,
                                  size_t *count,
                                  struct brim_error *error);

// The id of an item that stands in the way.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_gate_unmet_id(const struct brim_gate *gate,
                               size_t index,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// How long an item takes to mend itself, where that is known: `present` is 1, else 0.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_gate_unmet_wait(const struct brim_gate *gate,
                                 size_t index,
                                 int32_t *present,
                                 struct brim_amount *wait,
                                 struct brim_error *error);

// What an item says under a name, as text; empty if nothing.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_gate_unmet_arg(const struct brim_gate *gate,
                                size_t index,
                                const char *name,
                                size_t name_length,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// The gate as JSON: `{"allowed","unmet":[{"id","wait"?,"args"}]}`.
//
// Errors: none of its own.
brim_status brim_gate_json(const struct brim_gate *gate,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// Frees next acts. NULL is allowed.
void brim_acts_free(struct brim_acts *acts);

// How many acts there are.
//
// Errors: none of its own.
brim_status brim_acts_count(const struct brim_acts *acts, size_t *count, struct brim_error *error);

// The id of an act.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_id(const struct brim_acts *acts,
                         size_t index,
                         char *buffer,
                         size_t capacity,
                         size_t *length,
                         struct brim_error *error);

// How long to wait before an act, where that is said: `present` is 1, else 0.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_wait(const struct brim_acts *acts,
                           size_t index,
                           int32_t *present,
                           struct brim_amount *wait,
                           struct brim_error *error);

// What an act says under a name, as text, such as the `volume` to pour; empty if nothing.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_arg(const struct brim_acts *acts,
                          size_t index,
                          const char *name,
                          size_t name_length,
                          char *buffer,
                          size_t capacity,
                          size_t *length,
                          struct brim_error *error);

// How many cautions go with an act.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_caution_count(const struct brim_acts *acts,
                                    size_t index,
                                    size_t *count,
                                    struct brim_error *error);

// The id of one of the cautions that go with an act.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_caution(const struct brim_acts *acts,
                              size_t index,
                              size_t item,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// All acts as JSON: `[{"id","args","wait"?,"cautions"}]`.
//
// Errors: none of its own.
brim_status brim_acts_json(const struct brim_acts *acts,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// Begins a check from the header of a journal, as JSON, within the limits of the options.
//
// Errors: every fault of the header, with path and position.
brim_status brim_check_start(const struct brim_pack *pack,
                             const char *header,
                             size_t header_length,
                             const struct brim_options *options,
                             struct brim_check **check,
                             struct brim_error *error);

// Builds a check from a whole journal, as if every entry had been recorded in turn.
//
// Errors: every fault of the journal, with path and position.
brim_status brim_check_replay(const struct brim_pack *pack,
                              const char *journal,
                              size_t journal_length,
                              struct brim_check **check,
                              struct brim_error *error);

// A copy that goes its own way from here. It costs next to nothing.
//
// Errors: none of its own.
brim_status brim_check_copy(const struct brim_check *check,
                            struct brim_check **copy,
                            struct brim_error *error);

// Frees a check. NULL is allowed.
void brim_check_free(struct brim_check *check);

// Records one entry, as JSON. `findings` receives what is new with it, in a handle of the
// caller's; NULL if that is not wanted. An entry that repeats an earlier one under the same `id`
// changes nothing.
//
// Errors: every fault of the entry, with path and position; `BRIM_ERROR_SEQUENCE` if its `seq`
// does not rise. The check then stays as it was.
brim_status brim_check_record(struct brim_check *check,
                              const char *entry,
                              size_t entry_length,
                              struct brim_findings **findings,
                              struct brim_error *error);

// Whether an act is allowed, in a handle of the caller's. `planned` is the volume about to be
// poured, as text, or NULL; `at` the moment that is asked about, RFC 3339, or NULL for that of the
// newest entry.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no act, `BRIM_ERROR_NOT_A_TIME`; of the
// volume those of `brim_amount_parse`.
brim_status brim_check_gate(const struct brim_check *check,
                            brim_act act,
                            const char *planned,
                            size_t planned_length,
                            const char *at,
                            size_t at_length,
                            struct brim_gate **gate,
                            struct brim_error *error);

// The answer so far, the same as `brim_evaluate` gives for the same journal, in a handle of the
// caller's. Of the options only what is asked for beside the answer counts.
//
// Errors: none of its own.
brim_status brim_check_evaluation(const struct brim_check *check,
                                  const struct brim_options *options,
                                  struct brim_evaluation **evaluation,
                                  struct brim_error *error);

// What to do next, in a handle of the caller's.
//
// Errors: none of its own.
brim_status brim_check_advice(const struct brim_check *check,
                              struct brim_acts **acts,
                              struct brim_error *error);

// The journal as JSON Lines: the header, then a line for each entry, each ending in a line feed.
// `brim_check_replay` reads it again.
//
// Errors: none of its own.
brim_status brim_check_journal_lines(const struct brim_check *check,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// Seals a job: evaluates the journal, one JSON document or JSON Lines, on the pack, and keeps both
// with the answer. Of the options, the limits count.
//
// Errors: every fault of the journal, with path and position; `BRIM_ERROR_CONFLICT` if the journal
// names another pack.
brim_status brim_record_seal(const struct brim_pack *pack,
                             const char *journal,
                             size_t journal_length,
                             const struct brim_options *options,
                             struct brim_record **record,
                             struct brim_error *error);

// Reopens a record from the text it was kept as. Of the options, the limits count.
//
// Errors: `BRIM_ERROR_CHANGED` if any byte is not as it was sealed; the faults of reading, with
// path and position, of what is cut off or no record; `BRIM_ERROR_WRONG_FORMAT` of a newer one.
brim_status brim_record_reopen(const char *json,
                               size_t json_length,
                               const struct brim_options *options,
                               struct brim_record **record,
                               struct brim_error *error);

// Another handle of the same record, for another thread. It shares the record's data.
//
// Errors: none of its own.
brim_status brim_record_copy(const struct brim_record *record,
                             struct brim_record **copy,
                             struct brim_error *error);

// Frees a record. NULL is allowed.
void brim_record_free(struct brim_record *record);

// The record as it is kept: canonical JSON, to be stored byte for byte.
//
// Errors: none of its own.
brim_status brim_record_json(const struct brim_record *record,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// SHA-256 of the record without its `digest`, in lower-case hex.
//
// Errors: none of its own.
brim_status brim_record_digest(const struct brim_record *record,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// What a warranty file is asked for and the record does not say; only what its job calls for.
//
// Errors: none of its own.
brim_status brim_record_evidence(const struct brim_record *record,
                                 struct brim_lacks **lacks,
                                 struct brim_error *error);

// Evaluates the journal again, and tells where the answer differs from the sealed one, by member
// of the result document, as JSON: `[{"path","was"?,"now"?}]`. Another version or digest of the
// pack is told first.
//
// Errors: `BRIM_ERROR_CONFLICT` for another pack, as recorded for another version or digest of it
// as well; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rules, and as recorded for rules this
// library does not know.
brim_status brim_record_reevaluate_json(const struct brim_record *record,
                                        const struct brim_pack *pack,
                                        brim_rules rules,
                                        char *buffer,
                                        size_t capacity,
                                        size_t *length,
                                        struct brim_error *error);

// The name of the pack the job was done on.
//
// Errors: none of its own.
brim_status brim_record_pack_id(const struct brim_record *record,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// The version of that pack.
//
// Errors: none of its own.
brim_status brim_record_pack_version(const struct brim_record *record,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// The digest of that pack.
//
// Errors: none of its own.
brim_status brim_record_pack_digest(const struct brim_record *record,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// The journal in its canonical form, as one JSON document.
//
// Errors: none of its own.
brim_status brim_record_journal_json(const struct brim_record *record,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// The answer as it was sealed: the result document.
//
// Errors: none of its own.
brim_status brim_record_result_json(const struct brim_record *record,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// The version of the rules the answer was given by.
//
// Errors: none of its own.
brim_status brim_record_rules(const struct brim_record *record,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// The procedure that the journal names.
//
// Errors: none of its own.
brim_status brim_record_procedure(const struct brim_record *record,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length,
                                  struct brim_error *error);

// When the first entry was made, as it was written; empty without entries.
//
// Errors: none of its own.
brim_status brim_record_began(const struct brim_record *record,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// When the last entry was made, as it was written; empty without entries.
//
// Errors: none of its own.
brim_status brim_record_ended(const struct brim_record *record,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// What could be said of the level, as it was sealed.
//
// Errors: none of its own.
brim_status brim_record_verdict(const struct brim_record *record,
                                brim_verdict *verdict,
                                struct brim_error *error);

// What the sheet's own count said of a leak.
//
// Errors: none of its own.
brim_status brim_record_by_sheet(const struct brim_record *record,
                                 brim_by_sheet *by_sheet,
                                 struct brim_error *error);

// How far what was proved bears that out.
//
// Errors: none of its own.
brim_status brim_record_certainty(const struct brim_record *record,
                                  brim_certainty *certainty,
                                  struct brim_error *error);

// An interval as text, as it was sealed: `[-2 L, -1.5 L]` or `(-inf, 0 L]`.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval.
brim_status brim_record_interval(const struct brim_record *record,
                                 brim_interval interval,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// Frees what a record lacks. NULL is allowed.
void brim_lacks_free(struct brim_lacks *lacks);

// How many things are lacking.
//
// Errors: none of its own.
brim_status brim_lacks_count(const struct brim_lacks *lacks,
                             size_t *count,
                             struct brim_error *error);

// The id of what is lacking.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_id(const struct brim_lacks *lacks,
                          size_t index,
                          char *buffer,
                          size_t capacity,
                          size_t *length,
                          struct brim_error *error);

// How much it is missed.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_severity(const struct brim_lacks *lacks,
                                size_t index,
                                brim_severity *severity,
                                struct brim_error *error);

// How many entries do not say it; 0 where it is the whole job.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_entry_count(const struct brim_lacks *lacks,
                                   size_t index,
                                   size_t *count,
                                   struct brim_error *error);

// One of the entries that do not say it, by its `seq`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_entry(const struct brim_lacks *lacks,
                             size_t index,
                             size_t item,
                             uint64_t *seq,
                             struct brim_error *error);

// What is lacking in an English sentence.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_text(const struct brim_lacks *lacks,
                            size_t index,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// As `brim_lacks_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lacks_text_with(const struct brim_lacks *lacks,
                                 size_t index,
                                 const struct brim_teller *teller,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// All of them as JSON: `[{"id","severity","entries"}]`.
//
// Errors: none of its own.
brim_status brim_lacks_json(const struct brim_lacks *lacks,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// The history of records, as they were recorded; no pack is asked. A record that comes twice
// counts
// once, and the order in which records are given says nothing. `records` points to `count`
// handles;
// NULL is allowed where `count` is 0.
//
// Errors: none of its own.
brim_status brim_history_of(const struct brim_record *const *records,
                            size_t count,
                            struct brim_history **history,
                            struct brim_error *error);

// Frees a history. NULL is allowed.
void brim_history_free(struct brim_history *history);

// The history as canonical JSON.
//
// Errors: none of its own.
brim_status brim_history_json(const struct brim_history *history,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// The history in plain English lines, with every caution in full.
//
// Errors: none of its own.
brim_status brim_history_text(const struct brim_history *history,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// As `brim_history_text`, by a teller.
//
// Errors: none of its own.
brim_status brim_history_text_with(const struct brim_history *history,
                                   const struct brim_teller *teller,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// How many units there are, by vehicle and unit in the order of their names.
//
// Errors: none of its own.
brim_status brim_history_vehicle_count(const struct brim_history *history,
                                       size_t *count,
                                       struct brim_error *error);

// The vehicle of a unit.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_vehicle(const struct brim_history *history,
                                 size_t index,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// The name of a unit; empty where the records name none.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_unit(const struct brim_history *history,
                              size_t index,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// How many visits of a unit there are.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_visit_count(const struct brim_history *history,
                                     size_t index,
                                     size_t *count,
                                     struct brim_error *error);

// How many losses between visits of a unit are known.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_loss_count(const struct brim_history *history,
                                    size_t index,
                                    size_t *count,
                                    struct brim_error *error);

// Whether a unit loses more than at first: `rising`, `not_shown`, `falling` or `not_told`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_trend(const struct brim_history *history,
                               size_t index,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// One end of all that a unit lost. `present` is 1 where there is one; else it is 0 and all of
// `amount` is 0.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last, `BRIM_ERROR_UNKNOWN_VALUE` for a
// number of no end.
brim_status brim_history_lost(const struct brim_history *history,
                              size_t index,
                              brim_end end,
                              int32_t *present,
                              struct brim_amount *amount,
                              struct brim_error *error);

// One end of the distance from the last loss to the leak limit at its rate. `present` is 1 where
// there is one; else it is 0 and all of `amount` is 0.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last, `BRIM_ERROR_UNKNOWN_VALUE` for a
// number of no end.
brim_status brim_history_to_limit(const struct brim_history *history,
                                  size_t index,
                                  brim_end end,
                                  int32_t *present,
                                  struct brim_amount *amount,
                                  struct brim_error *error);

// How many things a person should know of a unit.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_notice_count(const struct brim_history *history,
                                      size_t index,
                                      size_t *count,
                                      struct brim_error *error);

// The id of one of them.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_history_notice_id(const struct brim_history *history,
                                   size_t index,
                                   size_t notice,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// Looks through records for what may come back. A record that comes twice counts once, and the
// order in which records are given says nothing. `records` points to `count` handles; NULL is
// allowed where `count` is 0. `rules` is a JSON object of the shop's own numbers, or NULL for
// the
// default ones.
//
// Errors: every fault of the rules, with path and position.
brim_status brim_comebacks_of(const struct brim_record *const *records,
                              size_t count,
                              const char *rules,
                              size_t rules_length,
                              struct brim_comebacks **comebacks,
                              struct brim_error *error);

// Frees what was found. NULL is allowed.
void brim_comebacks_free(struct brim_comebacks *comebacks);

// All that was found, as canonical JSON.
//
// Errors: none of its own.
brim_status brim_comebacks_json(const struct brim_comebacks *comebacks,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// All that was found in plain English lines, with every caution in full.
//
// Errors: none of its own.
brim_status brim_comebacks_text(const struct brim_comebacks *comebacks,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// As `brim_comebacks_text`, by a teller.
//
// Errors: none of its own.
brim_status brim_comebacks_text_with(const struct brim_comebacks *comebacks,
                                     const struct brim_teller *teller,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// How many things were found.
//
// Errors: none of its own.
brim_status brim_comebacks_count(const struct brim_comebacks *comebacks,
                                 size_t *count,
                                 struct brim_error *error);

// The id of one of them.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_comebacks_id(const struct brim_comebacks *comebacks,
                              size_t index,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// How serious it is.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_comebacks_severity(const struct brim_comebacks *comebacks,
                                    size_t index,
                                    brim_severity *severity,
                                    struct brim_error *error);

// How many records it is about.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_comebacks_record_count(const struct brim_comebacks *comebacks,
                                        size_t index,
                                        size_t *count,
                                        struct brim_error *error);

// The digest of one of those records.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_comebacks_digest(const struct brim_comebacks *comebacks,
                                  size_t index,
                                  size_t item,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length,
                                  struct brim_error *error);

// When the job of a record is to be looked at again. `history` may be NULL; the rate of the
// record's unit is used where the record is its newest visit. `rules` is a JSON object of the
// shop's own numbers, or NULL for the default ones. No clock is asked.
//
// Errors: every fault of the rules, with path and position.
brim_status brim_follow_up_of(const struct brim_record *record,
                              const struct brim_history *history,
                              const char *rules,
                              size_t rules_length,
                              struct brim_follow_up **follow_up,
                              struct brim_error *error);

// Frees a follow-up. NULL is allowed.
void brim_follow_up_free(struct brim_follow_up *follow_up);

// All of it as canonical JSON.
//
// Errors: none of its own.
brim_status brim_follow_up_json(const struct brim_follow_up *follow_up,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// All of it in plain English lines, with every caution in full.
//
// Errors: none of its own.
brim_status brim_follow_up_text(const struct brim_follow_up *follow_up,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// As `brim_follow_up_text`, by a teller.
//
// Errors: none of its own.
brim_status brim_follow_up_text_with(const struct brim_follow_up *follow_up,
                                     const struct brim_teller *teller,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// The job to be done then, as `recheck`; empty where nothing asks for one.
//
// Errors: none of its own.
brim_status brim_follow_up_job(const struct brim_follow_up *follow_up,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// 1 where it is to be done before the vehicle is handed over; else 0.
//
// Errors: none of its own.
brim_status brim_follow_up_is_now(const struct brim_follow_up *follow_up,
                                  int32_t *now,
                                  struct brim_error *error);

// 1 where it is to be done after one drive that brings the unit to its heat; else 0.
//
// Errors: none of its own.
brim_status brim_follow_up_after_hot_drive(const struct brim_follow_up *follow_up,
                                           int32_t *after,
                                           struct brim_error *error);

// After what distance at the latest. `present` is 1 where there is one; else it is 0 and all of
// `amount` is 0.
//
// Errors: none of its own.
brim_status brim_follow_up_distance(const struct brim_follow_up *follow_up,
                                    int32_t *present,
                                    struct brim_amount *amount,
                                    struct brim_error *error);

// After how many days at the latest; -1 where no days are asked.
//
// Errors: none of its own.
brim_status brim_follow_up_days(const struct brim_follow_up *follow_up,
                                int64_t *days,
                                struct brim_error *error);

// The calendar day that many days after the day of the last work; empty where no days are
// asked.
//
// Errors: none of its own.
brim_status brim_follow_up_date(const struct brim_follow_up *follow_up,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// Runs beside a host's old rule: evaluates old jobs on the pack and answers, as JSON, what
// differs and how good the evidence is. `jobs` has one job a line:
// `{"id", "journal": {...}, "verdict"?, "leak"?}`.
//
// Errors: every fault of the first job that cannot be read, with its path.
brim_status brim_shadow_json(const struct brim_pack *pack,
                             const char *jobs,
                             size_t jobs_length,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// What `brim_shadow_json` answers, in plain lines of at most 80 columns. The teller may be NULL,
// for English.
//
// Errors: those of `brim_shadow_json`.
brim_status brim_shadow_text(const struct brim_pack *pack,
                             const char *jobs,
                             size_t jobs_length,
                             const struct brim_teller *teller,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// What records cost a shop, by its price list and without tax, as JSON: checks that were never
// proven, leaks that were missed, fluid that was poured and not billed, pours nobody can tell the
// volume of, promises that were missed. `records` points to `count` handles. `billed` points to as
// many texts, each the volume of fluid the customer was billed, or NULL where that is not known; or
// `billed` is NULL. A job that was sealed again counts once, by its last record, billed what the
// last one tells that tells anything.
//
// Errors: those of an amount, and `BRIM_ERROR_WRONG_KIND` for one that is no volume.
brim_status brim_audit_json(const struct brim_price_list *prices,
                            const struct brim_pack *pack,
                            const struct brim_record *const *records,
                            const char *const *billed,
                            size_t count,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// What `brim_audit_json` answers, in plain lines of at most 80 columns, with every caution in
// full. The teller may be NULL, for English.
//
// Errors: those of `brim_audit_json`.
brim_status brim_audit_text(const struct brim_price_list *prices,
                            const struct brim_pack *pack,
                            const struct brim_record *const *records,
                            const char *const *billed,
                            size_t count,
                            const struct brim_teller *teller,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// The embedded demonstration list: invented prices of an invented shop, for the embedded pack.
//
// Errors: none of its own.
brim_status brim_price_list_embedded(struct brim_price_list **prices, struct brim_error *error);

// Reads a price list from its JSON, within the limits of the options.
//
// Errors: every fault of the document, with path and position.
brim_status brim_price_list_from_json(const char *json,
                                      size_t json_length,
                                      const struct brim_options *options,
                                      struct brim_price_list **prices,
                                      struct brim_error *error);

// Another handle of the same list, for another thread. It shares the list's data.
//
// Errors: none of its own.
brim_status brim_price_list_copy(const struct brim_price_list *prices,
                                 struct brim_price_list **copy,
                                 struct brim_error *error);

// Frees a price list. NULL is allowed.
void brim_price_list_free(struct brim_price_list *prices);

// The canonical JSON of the list.
//
// Errors: none of its own.
brim_status brim_price_list_json(const struct brim_price_list *prices,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// The list's own name.
//
// Errors: none of its own.
brim_status brim_price_list_id(const struct brim_price_list *prices,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// The shop's version of the list.
//
// Errors: none of its own.
brim_status brim_price_list_version(const struct brim_price_list *prices,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// The currency of every price in the list, by its ISO 4217 code.
//
// Errors: none of its own.
brim_status brim_price_list_currency(const struct brim_price_list *prices,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// SHA-256 of the canonical JSON, in lower-case hex.
//
// Errors: none of its own.
brim_status brim_price_list_digest(const struct brim_price_list *prices,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// Frees lines. NULL is allowed.
void brim_lines_free(struct brim_lines *lines);

// How many lines there are.
//
// Errors: none of its own.
brim_status brim_lines_count(const struct brim_lines *lines,
                             size_t *count,
                             struct brim_error *error);

// What a line is for: the stable id, as `fluid`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_id(const struct brim_lines *lines,
                          size_t index,
                          char *buffer,
                          size_t capacity,
                          size_t *length,
                          struct brim_error *error);

// What of that, by the price list's name.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_item(const struct brim_lines *lines,
                            size_t index,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// The rule that put a line there, as `whole_container`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_policy(const struct brim_lines *lines,
                              size_t index,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// How many entries a line rests on; 0 for what is assumed, or due on every such job.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_entry_count(const struct brim_lines *lines,
                                   size_t index,
                                   size_t *count,
                                   struct brim_error *error);

// One of the entries a line rests on, by its `seq`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_entry(const struct brim_lines *lines,
                             size_t index,
                             size_t item,
                             uint64_t *seq,
                             struct brim_error *error);

// How much, in the unit of the price; pieces are a ratio.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_quantity(const struct brim_lines *lines,
                                size_t index,
                                struct brim_amount *quantity,
                                struct brim_error *error);

// How much, as text; pieces are a plain number.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_quantity_text(const struct brim_lines *lines,
                                     size_t index,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// The unit of the quantity by UN/ECE Recommendation 20, as `LTR`; `C62` for pieces.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_unit_code(const struct brim_lines *lines,
                                 size_t index,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// The price of one of the unit, as `18.40 EUR/L`; it may be finer than money.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_price(const struct brim_lines *lines,
                             size_t index,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// What a line comes to, without tax.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_net(const struct brim_lines *lines,
                           size_t index,
                           struct brim_money *net,
                           struct brim_error *error);

// The taxes a line bears, by the price list's names, a line of text each; empty if none.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_lines_taxes(const struct brim_lines *lines,
                             size_t index,
                             char *buffer,
                             size_t capacity,
                             size_t *length,
                             struct brim_error *error);

// All lines as JSON:
// `[{"id","item","cause":{"policy","entries"},"quantity","unit_code","price","net","taxes"}]`.
//
// Errors: none of its own.
brim_status brim_lines_json(const struct brim_lines *lines,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// What a job will cost: the best, the likely and the worst case under one price list, each a
// consistent set of lines. What was poured is a fact in every case. `asked` is what the host knows
// besides, as JSON, or NULL: `{"likely"?,"planned"?,"ceiling"?,"stock"?:{"full","opened","bulk"},
// "on"?}`.
//
// Errors: every fault of what is asked, with path and position; `BRIM_ERROR_UNRESOLVED` without a
// sheet, and for everything that has no price, all at once; `BRIM_ERROR_CONFLICT` and
// `BRIM_ERROR_OUT_OF_RANGE` at the ceiling.
brim_status brim_check_estimate(const struct brim_check *check,
                                const struct brim_price_list *prices,
                                const char *asked,
                                size_t asked_length,
                                struct brim_estimate **estimate,
                                struct brim_error *error);

// Frees an estimate. NULL is allowed.
void brim_estimate_free(struct brim_estimate *estimate);

// The canonical JSON of the estimate document.
//
// Errors: none of its own.
brim_status brim_estimate_json(const struct brim_estimate *estimate,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// The lines of a case.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no case.
brim_status brim_estimate_lines(const struct brim_estimate *estimate,
                                brim_case case_,
                                struct brim_lines **lines,
                                struct brim_error *error);

// What a case comes to, tax included.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no case.
brim_status brim_estimate_total(const struct brim_estimate *estimate,
                                brim_case case_,
                                struct brim_money *total,
                                struct brim_error *error);

// What to mind: before the next pour, before the start.
//
// Errors: none of its own.
brim_status brim_estimate_findings(const struct brim_estimate *estimate,
                                   struct brim_findings **findings,
                                   struct brim_error *error);

// The ids of the cautions that go with the state of the job, a line each. They belong beside every
// telling of the estimate.
//
// Errors: none of its own.
brim_status brim_estimate_cautions(const struct brim_estimate *estimate,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// The estimate in plain lines of at most 80 columns, with every caution in full. `check` is the one
// it was made of: its sheet words its own cautions. The teller may be NULL, for English.
//
// Errors: none of its own.
brim_status brim_estimate_text(const struct brim_estimate *estimate,
                               const struct brim_check *check,
                               const struct brim_teller *teller,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// What a job costs: the facts of its journal under a price list. `estimated` is the document of an
// estimate, or NULL: with it the invoice tells how it differs from the likely case, and why.
//
// Errors: every fault of the estimate, with path and position; `BRIM_ERROR_UNRESOLVED` for
// everything that has no price, all at once; `BRIM_ERROR_CONFLICT` for an estimate in another
// currency.
brim_status brim_check_invoice(const struct brim_check *check,
                               const struct brim_price_list *prices,
                               const char *estimated,
                               size_t estimated_length,
                               struct brim_invoice **invoice,
                               struct brim_error *error);

// What came out, for the disposal log, as JSON:
// `{"stream","volume","between":[lo,hi],"entries","unmeasured"}`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for more than an amount holds.
brim_status brim_check_waste_json(const struct brim_check *check,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length,
                                  struct brim_error *error);

// Frees an invoice. NULL is allowed.
void brim_invoice_free(struct brim_invoice *invoice);

// The canonical JSON of the invoice document.
//
// Errors: none of its own.
brim_status brim_invoice_json(const struct brim_invoice *invoice,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// The lines.
//
// Errors: none of its own.
brim_status brim_invoice_lines(const struct brim_invoice *invoice,
                               struct brim_lines **lines,
                               struct brim_error *error);

// What they come to, tax included.
//
// Errors: none of its own.
brim_status brim_invoice_total(const struct brim_invoice *invoice,
                               struct brim_money *total,
                               struct brim_error *error);

// What whoever bills the job should know of it.
//
// Errors: none of its own.
brim_status brim_invoice_findings(const struct brim_invoice *invoice,
                                  struct brim_findings **findings,
                                  struct brim_error *error);

// The ids of the cautions that go with the state of the job, a line each. They belong beside every
// telling of the invoice.
//
// Errors: none of its own.
brim_status brim_invoice_cautions(const struct brim_invoice *invoice,
                                  char *buffer,
                                  size_t capacity,
                                  size_t *length,
                                  struct brim_error *error);

// The invoice in plain lines of at most 80 columns, with every caution in full. `check` is the one
// it was made of: its sheet words its own cautions. The teller may be NULL, for English.
//
// Errors: none of its own.
brim_status brim_invoice_text(const struct brim_invoice *invoice,
                              const struct brim_check *check,
                              const struct brim_teller *teller,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// Begins a journal in an empty storage, from its header as JSON. Of the options, the limits count.
//
// Errors: every fault of the header, with path and position; `BRIM_ERROR_STORAGE` if it could not
// be kept.
brim_status brim_kept_journal_start(const struct brim_pack *pack,
                                    const char *header,
                                    size_t header_length,
                                    brim_storage_append append,
                                    brim_storage_truncate truncate,
                                    void *user,
                                    const struct brim_options *options,
                                    struct brim_kept_journal **journal,
                                    struct brim_error *error);

// Takes a journal up again from the bytes that its storage holds. What stands after the last line
// feed was never answered for: it is left out, and the storage is asked to drop it before the next
// entry comes. Of the options, the limits count.
//
// Errors: every fault of what was kept, with path and position; `BRIM_ERROR_UNRESOLVED` if not even
// the header was kept whole.
brim_status brim_kept_journal_recover(const struct brim_pack *pack,
                                      const uint8_t *kept,
                                      size_t kept_length,
                                      brim_storage_append append,
                                      brim_storage_truncate truncate,
                                      void *user,
                                      const struct brim_options *options,
                                      struct brim_kept_journal **journal,
                                      struct brim_error *error);

// Frees a journal; what is kept of it stays. NULL is allowed.
void brim_kept_journal_free(struct brim_kept_journal *journal);

// Records one entry, as JSON, and keeps it. `findings` receives what is new with it, once it is
// durable, in a handle of the caller's; NULL if that is not wanted. An entry that repeats an
// earlier one under the same `id` is kept already.
//
// Errors: as `brim_check_record`; `BRIM_ERROR_STORAGE` if the entry could not be kept. The check
// then stays as it was, and the same entry can be given again.
brim_status brim_kept_journal_append(struct brim_kept_journal *journal,
                                     const char *entry,
                                     size_t entry_length,
                                     struct brim_findings **findings,
                                     struct brim_error *error);

// A copy of the check as far as it is kept, which goes its own way from here. It costs next to
// nothing.
//
// Errors: none of its own.
brim_status brim_kept_journal_check(const struct brim_kept_journal *journal,
                                    struct brim_check **check,
                                    struct brim_error *error);

// The bytes after the last whole line that the recovery left out.
//
// Errors: none of its own.
brim_status brim_kept_journal_dropped_bytes(const struct brim_kept_journal *journal,
                                            size_t *count,
                                            struct brim_error *error);

// The whole answer in English lines of at most 80 columns, with every caution in full.
//
// Errors: none of its own.
brim_status brim_evaluation_text(const struct brim_evaluation *evaluation,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// A whole check told entry by entry in English, with every caution in full.
//
// Errors: every fault of the journal, with path and position.
brim_status brim_story(const struct brim_pack *pack,
                       const char *journal,
                       size_t journal_length,
                       char *buffer,
                       size_t capacity,
                       size_t *length,
                       struct brim_error *error);

// A finding in one English sentence.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_text(const struct brim_findings *findings,
                               size_t index,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// An item that stands in the way, in one English sentence.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_gate_unmet_text(const struct brim_gate *gate,
                                 size_t index,
                                 char *buffer,
                                 size_t capacity,
                                 size_t *length,
                                 struct brim_error *error);

// An act in an English sentence or two. Its cautions belong to it: `brim_acts_caution_text`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_text(const struct brim_acts *acts,
                           size_t index,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// One of the cautions that go with an act, in English.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_caution_text(const struct brim_acts *acts,
                                   size_t index,
                                   size_t item,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// A caution of the library in English, by its id, as the calculators give them.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for an id of none.
brim_status brim_caution_text(const char *id,
                              size_t id_length,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// One of the cautions that go with the state of the job: the library's in English, a sheet's own in
// the words of the sheet.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_evaluation_caution_text(const struct brim_evaluation *evaluation,
                                         size_t index,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *length,
                                         struct brim_error *error);

// Asks one calculator by its name: its arguments as one JSON object, its answer as JSON. So
// `leak.drops_for` of `{"volume":"0.5 L","over":"24 h","drop":"0.05 mL"}` answers
// `{"value":"8.64 s"}`. A calculator that answers one quantity answers it as `value`. Of the
// options only the limits count.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a name of no calculator, with those there
// are; every fault of the arguments,
// with path and position; what the calculator refuses, with the argument as path.
brim_status brim_calculate(const char *function,
                           size_t function_length,
                           const char *arguments,
                           size_t arguments_length,
                           const struct brim_options *options,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// What a wrench is set to so that the plug gets the target torque, above zero. `lever` is from
// the mark of the grip to the drive. NULL leaves out: `adapter`, from the drive to the plug, not
// above the lever; `angle` between the two, 0 deg straight out, which it is if left out, to 180
// deg pointing back; `graduation`, the step of the scale; `printed`, what the sheet prints, so
// that the setting for it is not taken for the target. `setting` is on the graduation and in its
// unit, else in the unit of the target; `applied` is what the plug gets with it, and `difference`
// how far that is from the target, in %. `buffer` receives the ids of the cautions that whoever
// sets the wrench is shown, a line each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for what is not above zero, an
// adapter longer than the lever or pointing back over more than half of it, an angle outside 0 to
// 180 deg, a graduation coarser than the setting; `BRIM_ERROR_CONFLICT` for an angle without an
// adapter and for a set-point given as target.
brim_status brim_wrench_setting(const struct brim_amount *target,
                                const struct brim_amount *lever,
                                const struct brim_amount *adapter,
                                const struct brim_amount *angle,
                                const struct brim_amount *graduation,
                                const struct brim_amount *printed,
                                struct brim_amount *setting,
                                struct brim_amount *applied,
                                struct brim_amount *difference,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// The torque at the plug of a wrench that is set to `setting` and carries an adapter, in the unit
// of the setting. Lengths and `angle`, which NULL leaves out, are those of `brim_wrench_setting`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for what is not above zero, an
// adapter longer than the lever or pointing back over all of it, an angle outside 0 to 180 deg.
brim_status brim_applied_torque(const struct brim_amount *setting,
                                const struct brim_amount *lever,
                                const struct brim_amount *adapter,
                                const struct brim_amount *angle,
                                struct brim_amount *applied,
                                struct brim_error *error);

// The preload of a joint that was tightened to a torque, in N, from the least to the most, by the
// short form F = T / (K * D). `torque` and the nominal `diameter` are above zero. K is `k`, a
// ratio above 0 and up to 1, or the range published for `condition`: one of the two, the other
// NULL or 0. `k_low` and `k_high` receive the range it was reckoned with.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` for both or
// neither of `k` and `condition`; `BRIM_ERROR_UNKNOWN_VALUE` for a condition without a range.
brim_status brim_preload(const struct brim_amount *torque,
                         const struct brim_amount *diameter,
                         const struct brim_amount *k,
                         brim_thread_condition condition,
                         struct brim_amount *preload_low,
                         struct brim_amount *preload_high,
                         struct brim_amount *k_low,
                         struct brim_amount *k_high,
                         struct brim_error *error);

// The torque that gives a joint its preload, in N.m, from the least to the most, by the short
// form T = K * D * F; `preload`, a force, and the nominal `diameter` are above zero, the rest is
// as in `brim_preload`. `buffer` receives the ids of the cautions that whoever tightens the joint
// is shown, a line each: see `brim_caution_text`.
//
// Errors: as `brim_preload`.
brim_status brim_torque_for_preload(const struct brim_amount *preload,
                                    const struct brim_amount *diameter,
                                    const struct brim_amount *k,
                                    brim_thread_condition condition,
                                    struct brim_amount *torque_low,
                                    struct brim_amount *torque_high,
                                    struct brim_amount *k_low,
                                    struct brim_amount *k_high,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// The load that a bolt of a metric thread, as `M10x1` or `M10`, and of a strength class bears
// without lengthening, in N: the nominal stress area times the stress under proof load (ISO
// 898-1).
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a thread that is none, with those there are, and for a
// unified one.
brim_status brim_proof_load(const char *thread,
                            size_t thread_length,
                            brim_strength_class strength_class,
                            struct brim_amount *load,
                            struct brim_error *error);

// Whether a printed torque, above zero, fits a thread, as `M10x1` or `1/4-20`. `band_low` to
// `band_high` is usual for solid steel bolts that clamp, in steel, in N.m. Only its upper end
// judges, for a plug that seals gets less; for any other plug it is told and judges nothing.
// `slip_unit` is the unit in which the number would fit, which makes it `slip_torque`; 0 for none,
// and no more than a question where the fit is not judged, as below a sixth of `band_low`, where
// no plug holds. `buffer` receives the ids of the cautions that go with it, a line each: see
// `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_UNKNOWN_VALUE` for a
// thread that is none, with those there are, and for a number of no plug.
brim_status brim_plausible(const struct brim_amount *torque,
                           const char *thread,
                           size_t thread_length,
                           brim_plug plug,
                           brim_fits *fits,
                           struct brim_amount *band_low,
                           struct brim_amount *band_high,
                           brim_unit *slip_unit,
                           struct brim_amount *slip_torque,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// The factor from a volume at a temperature, -50 to 150 deg C, to the volume at the base: a ratio
// of nine decimals, of five by the procedure of 2004. `density` is that at the base, 800.9 to
// 1163.5 kg/m3.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_UNKNOWN_VALUE` for a
// number of no base.
brim_status brim_correction_factor(const struct brim_amount *density,
                                   const struct brim_amount *temperature,
                                   brim_base base,
                                   struct brim_amount *factor,
                                   struct brim_error *error);

// What a volume at one temperature becomes at another, both -50 to 150 deg C, in its own unit: by
// the density of the oil at a base, 800.9 to 1163.5 kg/m3, with `coefficient` NULL; or by a plain
// coefficient, above zero and at most 0.002 per K, with `density` NULL and `base` 0.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` for both or
// neither of density and coefficient, or a coefficient with a base; `BRIM_ERROR_UNKNOWN_VALUE`
// for a number of no base.
brim_status brim_at_temperature(const struct brim_amount *volume,
                                const struct brim_amount *from,
                                const struct brim_amount *to,
                                const struct brim_amount *density,
                                brim_base base,
                                const struct brim_amount *coefficient,
                                struct brim_amount *becomes,
                                struct brim_error *error);

// How much more the fluid takes up at the temperature it is read at than at the reference, below
// zero where it is colder; in the unit of `volume`, which is what the unit holds at the
// reference. The rest is as in `brim_at_temperature`. It tells by how much a level deceives; no
// sheet is corrected by it that does not say so.
//
// Errors: as `brim_at_temperature`.
brim_status brim_temperature_error(const struct brim_amount *volume,
                                   const struct brim_amount *read_at,
                                   const struct brim_amount *reference,
                                   const struct brim_amount *density,
                                   brim_base base,
                                   const struct brim_amount *coefficient,
                                   struct brim_amount *more,
                                   struct brim_error *error);

// The density at the base of an oil whose density was observed at a temperature, -50 to 150 deg
// C, in the unit it was given in; it must come out as 800.9 to 1163.5 kg/m3.
//
// Errors: as `brim_correction_factor`.
brim_status brim_base_density(const struct brim_amount *density,
                              const struct brim_amount *temperature,
                              brim_base base,
                              struct brim_amount *at_base,
                              struct brim_error *error);

// The density at a temperature, -50 to 150 deg C, of an oil whose density at the base is given,
// 800.9 to 1163.5 kg/m3; in its unit.
//
// Errors: as `brim_correction_factor`.
brim_status brim_density_at(const struct brim_amount *density,
                            const struct brim_amount *temperature,
                            brim_base base,
                            struct brim_amount *at_temperature,
                            struct brim_error *error);

// The mass of a volume at a temperature, -50 to 150 deg C, in kg. `density` is that at the base,
// 800.9 to 1163.5 kg/m3.
//
// Errors: as `brim_correction_factor`.
brim_status brim_mass(const struct brim_amount *volume,
                      const struct brim_amount *temperature,
                      const struct brim_amount *density,
                      brim_base base,
                      struct brim_amount *mass,
                      struct brim_error *error);

// The volume of a mass at a temperature, in L; the other way round as `brim_mass`.
//
// Errors: as `brim_correction_factor`.
brim_status brim_volume_of_mass(const struct brim_amount *mass,
                                const struct brim_amount *temperature,
                                const struct brim_amount *density,
                                brim_base base,
                                struct brim_amount *volume,
                                struct brim_error *error);

// How far the level deceives where the opening lies off the middle of the surface and the unit
// leans: in height, in the unit of `offset`, and in volume, in L. `surface`, an area, is above
// zero, `offset` along the lean from zero, `tilt` 0 to below 45 deg. Leaning towards the opening
// it reads too high, away from it too low: an opening on the low side reads full too early, with
// less in the unit than there should be, one on the high side too late.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_tilt_error(const struct brim_amount *surface,
                            const struct brim_amount *offset,
                            const struct brim_amount *tilt,
                            struct brim_amount *height,
                            struct brim_amount *volume,
                            struct brim_error *error);

// The share of a circle that lies below a level, a ratio. The diameter is above zero, the level,
// from the lowest point, zero to the diameter.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_segment_share(const struct brim_amount *level,
                               const struct brim_amount *diameter,
                               struct brim_amount *share,
                               struct brim_error *error);

// What is left after draining and filling a number of times, mixed in between: the shares of old
// and fresh fluid, ratios, and the fresh fluid used, in the unit of what is drained. `capacity`,
// of all the fluid in the unit, is above zero, `drained` each time zero to the capacity, both at
// one temperature. `buffer` receives the ids of the cautions that whoever does it is shown, a line
// each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_exchange(const struct brim_amount *capacity,
                          const struct brim_amount *drained,
                          uint32_t cycles,
                          struct brim_amount *old,
                          struct brim_amount *fresh,
                          struct brim_amount *used,
                          char *buffer,
                          size_t buffer_capacity,
                          size_t *length,
                          struct brim_error *error);

// How often to drain and fill until the fresh fluid is at least a share of the whole, `fresh`, a
// ratio of 0 to 1, 1 only where everything is drained; `old_left`, `fresh_there` and `used` are
// what `brim_exchange` tells of that many times. `buffer` receives the ids of the cautions that
// whoever does it is shown, a line each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_cycles_needed(const struct brim_amount *capacity,
                               const struct brim_amount *drained,
                               const struct brim_amount *fresh,
                               uint32_t *cycles,
                               struct brim_amount *old_left,
                               struct brim_amount *fresh_there,
                               struct brim_amount *used,
                               char *buffer,
                               size_t buffer_capacity,
                               size_t *length,
                               struct brim_error *error);

// What is left when fresh fluid flows through and mixes perfectly: the shares of old and fresh
// fluid, ratios. `capacity` is above zero, `flowed` from zero, both at one temperature. Imperfect
// mixing leaves more of the old. `buffer` receives the ids of the cautions that whoever does it is
// shown, a line each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_flush(const struct brim_amount *capacity,
                       const struct brim_amount *flowed,
                       struct brim_amount *old,
                       struct brim_amount *fresh,
                       char *buffer,
                       size_t buffer_capacity,
                       size_t *length,
                       struct brim_error *error);

// How much fresh fluid must flow through, mixing perfectly, until it is a share of the whole, a
// ratio from 0 to below 1; in the unit of the capacity, which is above zero. `buffer` receives the
// ids of the cautions that whoever does it is shown, a line each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_flush_needed(const struct brim_amount *capacity,
                              const struct brim_amount *fresh,
                              struct brim_amount *needed,
                              char *buffer,
                              size_t buffer_capacity,
                              size_t *length,
                              struct brim_error *error);

// The share of a wrong fluid, a ratio, that is left in the whole after draining and filling a
// number of times. `capacity` is above zero; `wrong` in it at the start and `drained` each time
// are zero to the capacity, all at one temperature.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_wrong_left(const struct brim_amount *capacity,
                            const struct brim_amount *wrong,
                            const struct brim_amount *drained,
                            uint32_t cycles,
                            struct brim_amount *left,
                            struct brim_error *error);

// The temperature of fluid after more of it was poured in, in the unit of `temperature`:
// perfectly mixed, nothing lost to the case or the air. The `volume` that was there is above
// zero, what was `added` from zero.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_mixed_temperature(const struct brim_amount *volume,
                                   const struct brim_amount *temperature,
                                   const struct brim_amount *added,
                                   const struct brim_amount *added_temperature,
                                   struct brim_amount *mixed,
                                   struct brim_error *error);

// When fluid that was found too warm has cooled far enough to start again and read the level
// below the upper limit of the window. `first` and `second` are readings while it cools, the
// second lower, `elapsed` apart; `ambient` is the air, below both; `max` the upper limit;
// `reheat_per_minute` the degrees that a minute of running warms again, a difference, and
// `reheat_time` from starting until the level is read, both from zero. Start at `start_at`, in
// the unit of `max`; `wait` runs from the second reading, `earliest` and `latest` being its ends
// where each reading is half its last place off, and in `time_constant` the distance from the
// air falls to 1/e, all in the unit of `elapsed`. `buffer` receives the ids of the cautions that
// whoever waits is shown, a line each: see `brim_caution_text`.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for readings that do not fall by
// more than the place they are read to or lie at or below the air, for times or rates that
// cannot be, and where cooling to this air never gets there.
brim_status brim_cool_down(const struct brim_amount *first,
                           const struct brim_amount *second,
                           const struct brim_amount *elapsed,
                           const struct brim_amount *ambient,
                           const struct brim_amount *max,
                           const struct brim_amount *reheat_per_minute,
                           const struct brim_amount *reheat_time,
                           struct brim_amount *start_at,
                           struct brim_amount *wait,
                           struct brim_amount *earliest,
                           struct brim_amount *latest,
                           struct brim_amount *time_constant,
                           char *buffer,
                           size_t capacity,
                           size_t *length,
                           struct brim_error *error);

// How long a first-order response takes to go a share of its way, a ratio from 0 to below 1; in
// the unit of the time constant, which is above zero.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_response_time(const struct brim_amount *time_constant,
                               const struct brim_amount *share,
                               struct brim_amount *time,
                               struct brim_error *error);

// A forecast with no reading yet. NULL leaves out: the temperatures at which the window opens,
// `min`, and closes, `max`; `scatter`, what readings scatter, a difference above zero, 0.5 deg C
// if left out; `held`, the fluid in the unit, above zero, which a pour mixes with: without it a
// pour starts the forecast anew.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for a scatter or a held volume that
// is not above zero, a window that ends below its beginning.
brim_status brim_forecast_new(const struct brim_amount *min,
                              const struct brim_amount *max,
                              const struct brim_amount *scatter,
                              const struct brim_amount *held,
                              struct brim_forecast **forecast,
                              struct brim_error *error);

// Frees a forecast. NULL is allowed.
void brim_forecast_free(struct brim_forecast *forecast);

// Takes a reading in: `at` is a time on a clock of the caller's, not before that of the last
// reading or pour.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; the forecast is then as it was.
brim_status brim_forecast_sample(struct brim_forecast *forecast,
                                 const struct brim_amount *at,
                                 const struct brim_amount *reading,
                                 struct brim_error *error);

// Takes a pour in, at a time on the clock of the readings: its volume, from zero, and its
// temperature.
//
// Errors: as `brim_forecast_sample`.
brim_status brim_forecast_poured(struct brim_forecast *forecast,
                                 const struct brim_amount *at,
                                 const struct brim_amount *volume,
                                 const struct brim_amount *temperature,
                                 struct brim_error *error);

// How the readings so far were taken: by which method, and why not by a first-order response, or
// not all of it; 0 for no reason. `now` is the temperature at the last reading or pour, in the
// unit last read in, and `rate_per_minute` how many degrees a minute it rises there, a
// difference; the unit is 0 where there is none.
//
// Errors: none of its own.
brim_status brim_forecast_now(const struct brim_forecast *forecast,
                              brim_forecast_method *method,
                              brim_forecast_reason *reason,
                              struct brim_amount *now,
                              struct brim_amount *rate_per_minute,
                              struct brim_error *error);

// When the window opens, in whole seconds from the last reading or pour, 0 s where it has: hardly
// before `earliest`, most likely at `likely`, hardly after `latest`. The unit is 0 where that is
// not told.
//
// Errors: none of its own.
brim_status brim_forecast_opens(const struct brim_forecast *forecast,
                                struct brim_amount *earliest,
                                struct brim_amount *likely,
                                struct brim_amount *latest,
                                struct brim_error *error);

// When the window closes, as `brim_forecast_opens` tells when it opens.
//
// Errors: none of its own.
brim_status brim_forecast_closes(const struct brim_forecast *forecast,
                                 struct brim_amount *earliest,
                                 struct brim_amount *likely,
                                 struct brim_amount *latest,
                                 struct brim_error *error);

// All that the readings so far tell, as JSON:
// `{"method","reason"?,"now"?,"rate_per_minute"?,"opens"?,"closes"?,"suspect":[place]}`, `opens`
// and `closes` being `{"earliest","likely"?,"latest"?}`, and `suspect` the places, from 0, of
// readings that were not believed.
//
// Errors: none of its own.
brim_status brim_forecast_json(const struct brim_forecast *forecast,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// The same in English, a sentence or a few.
//
// Errors: none of its own.
brim_status brim_forecast_text(const struct brim_forecast *forecast,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// The kinematic viscosity of an oil at a temperature, in mm2/s, from two measured ones in either
// order (ASTM D341). Viscosities of 0.21 to 20000000 mm2/s, temperatures of -70 to 370 deg C.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` outside those spans;
// `BRIM_ERROR_CONFLICT` for two measurements at one temperature, or where the hotter oil is not
// the thinner one.
brim_status brim_viscosity_at(const struct brim_amount *viscosity_1,
                              const struct brim_amount *temperature_1,
                              const struct brim_amount *viscosity_2,
                              const struct brim_amount *temperature_2,
                              const struct brim_amount *temperature,
                              struct brim_amount *viscosity,
                              struct brim_error *error);

// The temperature at which an oil has a kinematic viscosity, in deg C, from two measured
// viscosities in either order; spans as for `brim_viscosity_at`.
//
// Errors: as `brim_viscosity_at`.
brim_status brim_temperature_for(const struct brim_amount *viscosity_1,
                                 const struct brim_amount *temperature_1,
                                 const struct brim_amount *viscosity_2,
                                 const struct brim_amount *temperature_2,
                                 const struct brim_amount *viscosity,
                                 struct brim_amount *temperature,
                                 struct brim_error *error);

// The viscosity index of an oil from its viscosities at 40 deg C and 100 deg C (ASTM D2270): from
// 2 mm2/s on at 100 deg C, and more than that at 40 deg C. `index` is whole, as it is reported,
// and `unrounded` the ratio it comes from; `l` and `h` are the viscosities at 40 deg C, in mm2/s,
// of oils of index 0 and 100 with the same viscosity at 100 deg C. Lubricants lie from below 0 to
// some 400 (from memory): far outside, one of the viscosities or its temperature was mistaken.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` where the oil
// is not thicker at 40 deg C.
brim_status brim_viscosity_index(const struct brim_amount *viscosity_40,
                                 const struct brim_amount *viscosity_100,
                                 int64_t *index,
                                 brim_index_procedure *procedure,
                                 struct brim_amount *l,
                                 struct brim_amount *h,
                                 struct brim_amount *unrounded,
                                 struct brim_error *error);

// The ISO viscosity grade of an oil from its viscosity at 40 deg C, and the limits of that grade
// in mm2/s at 40 deg C (ISO 3448). Between two grades and outside the series `grade` is 0, and
// the limits are those of the neighbours; the unit of a limit is 0 where there is no neighbour.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for a viscosity not above zero.
brim_status brim_grade(const struct brim_amount *viscosity_40,
                       uint32_t *grade,
                       struct brim_amount *low,
                       struct brim_amount *high,
                       struct brim_error *error);

// The limits of an ISO viscosity grade, in mm2/s at 40 deg C (ISO 3448).
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number that is no grade, with all that are.
brim_status brim_grade_limits(uint32_t grade,
                              struct brim_amount *low,
                              struct brim_amount *high,
                              struct brim_error *error);

// Reads the frame in which a heavy vehicle's transmission tells of its fluid: parameter group
// 65272, eight bytes (SAE J1939-71). `temperature` in deg C, implausible outside -40 to 200;
// `level` in % of full; `departure` from the right level in L, below zero too little, which
// counts only with the status `BRIM_LEVEL_STATUS_CONDITIONS_MET`; `countdown` in min until the
// level will be measured, 0 for less than one.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an identifier of more than 29 bits or of another
// parameter group, and for anything but eight bytes.
brim_status brim_transmission_frame(uint32_t id,
                                    const uint8_t *data,
                                    size_t data_length,
                                    struct brim_reading *temperature,
                                    struct brim_reading *level,
                                    struct brim_reading *departure,
                                    brim_level_status *level_status,
                                    struct brim_reading *countdown,
                                    struct brim_error *error);

// Reads one number from a row of bytes, exactly: valid from `min` to `max`, both included, and
// implausible outside; told in either case. Codes that stand for no value are for the caller to
// keep out by `min` and `max`.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for a number that does not lie within the data, a length
// outside 1 to 64, a scale of zero, a value past the digits of an amount;
// `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_TOO_MANY_DIGITS` where the value does not end in the unit;
// of the layout's amounts those of `brim_amount_text`, with the member as path.
brim_status brim_linear(const uint8_t *data,
                        size_t data_length,
                        const struct brim_layout *layout,
                        struct brim_reading *reading,
                        struct brim_error *error);

// Reads the answer to a request for one value: `22` and a data identifier of two bytes (ISO
// 14229), or `01` and a parameter of one byte (SAE J1979); both without what the transport puts
// before or after them. Of a positive answer `data_start` and `data_count` tell which bytes of
// `reply` are the data, which `brim_linear` reads; of another, `code` is that of the refusal or
// the delay, and `reason` what it means. What an answer does not have is 0.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for a request of another service or length, and for an answer
// cut short or, if negative, too long; `BRIM_ERROR_CONFLICT` for an answer to something else.
brim_status brim_diagnostic_reply(const uint8_t *request,
                                  size_t request_length,
                                  const uint8_t *reply,
                                  size_t reply_length,
                                  brim_reply *state,
                                  size_t *data_start,
                                  size_t *data_count,
                                  uint32_t *code,
                                  brim_refusal *reason,
                                  struct brim_error *error);

// Decides by a rule whether an estimate is above a limit. Any kind of quantity; the standard
// `uncertainty` is of the same (of a temperature: a difference) and above zero. A guarded rule
// takes the `probability` that its decision is right, a ratio of 0.5 to 0.999999999; simple
// acceptance takes NULL. `exceeds` is the probability that the true value is above the limit,
// `guard_band` how far from the limit the estimate must be, in the unit of the uncertainty; its
// unit is 0 for simple acceptance.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for an uncertainty that is not above
// zero or a probability outside the range; `BRIM_ERROR_CONFLICT` for a guarded rule without a
// probability, or simple acceptance with one; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rule.
brim_status brim_against_limit(const struct brim_amount *estimate,
                               const struct brim_amount *uncertainty,
                               const struct brim_amount *limit,
                               brim_rule rule,
                               const struct brim_amount *probability,
                               struct brim_amount *exceeds,
                               struct brim_amount *guard_band,
                               brim_decision *decision,
                               struct brim_error *error);

// The probability, a ratio, that a true value lies within limits, from its estimate and standard
// uncertainty (JCGM 106:2012, clause 7). Any kind of quantity; the uncertainty is of the same (of
// a temperature: a difference) and above zero. NULL leaves one of the limits out.
//
// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for an uncertainty that is not above
// zero or limits the wrong way round; `BRIM_ERROR_CONFLICT` without any limit.
brim_status brim_conformance(const struct brim_amount *value,
                             const struct brim_amount *uncertainty,
                             const struct brim_amount *lower,
                             const struct brim_amount *upper,
                             struct brim_amount *conforms,
                             struct brim_error *error);

// How far from a limit an estimate must be for a decision that is right with a probability, a
// ratio of 0.5 to 0.999999999 (JCGM 106:2012, clause 8). In the unit of the standard uncertainty,
// which is above zero.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_guard_band(const struct brim_amount *uncertainty,
                            const struct brim_amount *probability,
                            struct brim_amount *guard_band,
                            struct brim_error *error);

// The number of standard deviations that a standard normal variable stays below with a
// probability, a ratio of 0.000000001 to 0.999999999; a ratio, negative below a half.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_quantile(const struct brim_amount *probability,
                          struct brim_amount *quantile,
                          struct brim_error *error);

// The half width of an interval that is expected to hold most of what the true value could be:
// `factor` times the standard uncertainty, in its unit (JCGM 100:2008, 6.2.1). The factor, a
// ratio above zero, is 2 where NULL leaves it out.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_expanded_uncertainty(const struct brim_amount *uncertainty,
                                      const struct brim_amount *factor,
                                      struct brim_amount *expanded,
                                      struct brim_error *error);

// What a drip loses, from drops counted in a time: in 24 hours and in 365 days, in L, and the
// time from drop to drop, in s. At least one drop; the time and the volume of one `drop` above
// zero. A drop has no volume of its own: published ones differ fivefold.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_drip_rate(uint32_t drops,
                           const struct brim_amount *in_time,
                           const struct brim_amount *drop,
                           struct brim_amount *per_day,
                           struct brim_amount *per_year,
                           struct brim_amount *one_drop_every,
                           struct brim_error *error);

// The time from drop to drop, in s, of a drip that loses a volume over a time; all above zero,
// and a drop no more than the volume.
//
// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
brim_status brim_drops_for(const struct brim_amount *volume,
                           const struct brim_amount *over,
                           const struct brim_amount *drop,
                           struct brim_amount *every,
                           struct brim_error *error);

// Makes a teller of a document of messages and a profile, within the limits of the options. Without
// messages, as NULL, it tells English, and without a profile each quantity in the unit it was
// entered or printed in. No teller leaves a caution out.
//
// Errors: every fault of the messages, or else of the profile, with path and position;
// `BRIM_ERROR_CONFLICT` where the profile names another language.
brim_status brim_teller_new(const char *messages,
                            size_t messages_length,
                            const char *profile,
                            size_t profile_length,
                            const struct brim_options *options,
                            struct brim_teller **teller,
                            struct brim_error *error);

// Another handle of the same teller, for another thread. It shares the messages.
//
// Errors: none of its own.
brim_status brim_teller_copy(const struct brim_teller *teller,
                             struct brim_teller **copy,
                             struct brim_error *error);

// Frees a teller. NULL is allowed.
void brim_teller_free(struct brim_teller *teller);

// Every message as canonical JSON: the English one is what a translator starts from.
//
// Errors: none of its own.
brim_status brim_teller_messages_json(const struct brim_teller *teller,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *length,
                                      struct brim_error *error);

// The profile as canonical JSON.
//
// Errors: none of its own.
brim_status brim_teller_profile_json(const struct brim_teller *teller,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *length,
                                     struct brim_error *error);

// As `brim_story`, by a teller.
//
// Errors: every fault of the journal, with path and position.
brim_status brim_story_with(const struct brim_pack *pack,
                            const char *journal,
                            size_t journal_length,
                            const struct brim_teller *teller,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// As `brim_caution_text`, by a teller.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for an id of none.
brim_status brim_caution_text_with(const char *id,
                                   size_t id_length,
                                   const struct brim_teller *teller,
                                   char *buffer,
                                   size_t capacity,
                                   size_t *length,
                                   struct brim_error *error);

// As `brim_evaluation_text`, by a teller.
//
// Errors: none of its own.
brim_status brim_evaluation_text_with(const struct brim_evaluation *evaluation,
                                      const struct brim_teller *teller,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *length,
                                      struct brim_error *error);

// As `brim_evaluation_caution_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_evaluation_caution_text_with(const struct brim_evaluation *evaluation,
                                              size_t index,
                                              const struct brim_teller *teller,
                                              char *buffer,
                                              size_t capacity,
                                              size_t *length,
                                              struct brim_error *error);

// As `brim_findings_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_findings_text_with(const struct brim_findings *findings,
                                    size_t index,
                                    const struct brim_teller *teller,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// As `brim_gate_unmet_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_gate_unmet_text_with(const struct brim_gate *gate,
                                      size_t index,
                                      const struct brim_teller *teller,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *length,
                                      struct brim_error *error);

// As `brim_acts_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_text_with(const struct brim_acts *acts,
                                size_t index,
                                const struct brim_teller *teller,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// As `brim_acts_caution_text`, by a teller.
//
// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
brim_status brim_acts_caution_text_with(const struct brim_acts *acts,
                                        size_t index,
                                        size_t item,
                                        const struct brim_teller *teller,
                                        char *buffer,
                                        size_t capacity,
                                        size_t *length,
                                        struct brim_error *error);

// As `brim_forecast_text`, by a teller.
//
// Errors: none of its own.
brim_status brim_forecast_text_with(const struct brim_forecast *forecast,
                                    const struct brim_teller *teller,
                                    char *buffer,
                                    size_t capacity,
                                    size_t *length,
                                    struct brim_error *error);

// A verdict in one sentence. The teller may be NULL, for English.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no verdict.
brim_status brim_verdict_text(brim_verdict verdict,
                              const struct brim_teller *teller,
                              char *buffer,
                              size_t capacity,
                              size_t *length,
                              struct brim_error *error);

// Why the answer is what it is: a sentence for each reason, a line each, in the order of the result
// document. The teller may be NULL, for English.
//
// Errors: none of its own.
brim_status brim_evaluation_reasons_text(const struct brim_evaluation *evaluation,
                                         const struct brim_teller *teller,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *length,
                                         struct brim_error *error);

// Every defect of the sheets themselves in a sentence, a line each, in the order of
// `brim_pack_lint_json`. The teller may be NULL, for English.
//
// Errors: none of its own.
brim_status brim_pack_lint_text(const struct brim_pack *pack,
                                const struct brim_teller *teller,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// A departure from the correct level, written as `[-2 L, -1.5 L]`, in words: short, over, or across
// it. The teller may be NULL, for English.
//
// Errors: those of `brim_interval_intersect`.
brim_status brim_departure_text(const char *interval,
                                size_t interval_length,
                                const struct brim_teller *teller,
                                char *buffer,
                                size_t capacity,
                                size_t *length,
                                struct brim_error *error);

// What an id that a calculator answers means, in words: by its room, as `leak`, the list it is of,
// as `response`, and the id, as `report`. The teller may be NULL, for English.
//
// Errors: `BRIM_ERROR_UNKNOWN_VALUE` where there are no words, as for names that stand for
// themselves.
brim_status brim_answered_text(const char *of_room,
                               size_t of_room_length,
                               const char *of_list,
                               size_t of_list_length,
                               const char *id,
                               size_t id_length,
                               const struct brim_teller *teller,
                               char *buffer,
                               size_t capacity,
                               size_t *length,
                               struct brim_error *error);

// The work sheet of a job, on one printed page: what was found and done, what it means and what
// comes next, the leak reading, the lines of money, what is not proven, three pictures, every
// caution in full.
//
// The particulars are JSON, each member of which may be left out, or NULL: `shop` (a list of
// lines), `tool` (as for `torque.tool_suits`), `adapter` and `angle` of it, `record` (the digest of
// the sealed record), `prices` (a price list), `estimate` (the document of an estimate). The teller
// may be NULL, for English.
//
// Errors: every fault of the journal, or else of the particulars, with path and position; what the
// tool and the prices are refused for; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no medium.
brim_status brim_work_sheet(const struct brim_pack *pack,
                            const char *journal,
                            size_t journal_length,
                            const char *particulars,
                            size_t particulars_length,
                            const struct brim_teller *teller,
                            brim_medium medium,
                            char *buffer,
                            size_t capacity,
                            size_t *length,
                            struct brim_error *error);

// The bay card of a job that is to begin: the window as the scan tool shows it, what must be met
// before the plug comes out, the acts in their order, what the pours add up to, how many containers
// that is, what the wrench is set to, every caution in full. Of the journal only the header counts.
//
// The particulars are those of `brim_work_sheet`, and `scan_unit`, as `degF`, and `container`, the
// size of one. The teller may be NULL, for English.
//
// Errors: those of `brim_work_sheet`.
brim_status brim_bay_card(const struct brim_pack *pack,
                          const char *journal,
                          size_t journal_length,
                          const char *particulars,
                          size_t particulars_length,
                          const struct brim_teller *teller,
                          brim_medium medium,
                          char *buffer,
                          size_t capacity,
                          size_t *length,
                          struct brim_error *error);

// A picture of a check as SVG that stands alone, light or dark as the reader's screen is; an empty
// text where there is nothing to draw. Of the particulars, as for `brim_work_sheet`, the tool
// counts.
//
// Errors: those of `brim_work_sheet`.
brim_status brim_picture(const struct brim_pack *pack,
                         const char *journal,
                         size_t journal_length,
                         brim_picture_of of,
                         const char *particulars,
                         size_t particulars_length,
                         const struct brim_teller *teller,
                         char *buffer,
                         size_t capacity,
                         size_t *length,
                         struct brim_error *error);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* BRIMLINE_H */
