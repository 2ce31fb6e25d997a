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
     no pointer to it.

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

// The detail of an error: every fault of what was handed in, in the order they stand there.
//
// A call that is given one empties it first, and fills it if it fails. Ownership: `brim_error_new`
// to `brim_error_free`. Threads: one at a time. Lifetime: its own; nothing in it points elsewhere.
typedef struct brim_error brim_error;

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

// The answer to "may I do this now": whether it is allowed, and every item that stands in the way.
// From `brim_evaluation_gate` or `brim_check_gate`.
//
// Ownership: the caller's, to `brim_gate_free`. Threads: one at a time. Lifetime: its own; it is a
// copy.
typedef struct brim_gate brim_gate;

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

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

// The version of the library's binary interface. Compare it with `BRIM_ABI_VERSION`, which the
// program was compiled with.
int32_t brim_abi_version(void);

// The versions of everything, as JSON:
// `{"library","rules","documents":{"pack","journal","result"},"abi"}`.
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

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* BRIMLINE_H */
