/* Pages and pictures of a job. */

#include "request.h"

/* What the room holds, as the pieces that end in a line feed or a tag. */
static void put_pieces(void) {
    size_t from = 0, index;
    put(&out, "{");
    put_member(&out, "pieces");
    put(&out, "[");
    for (index = 0; index < room.length; index++) {
        if (room.bytes[index] == '\n' || room.bytes[index] == '>') {
            put_comma(&out);
            put_string(&out, room.bytes + from, index - from);
            from = index + 1;
        }
    }
    put(&out, "]}");
}

/* Which page or picture, pack, journal, particulars and medium. */
brim_status answer_page(const request *of) {
    brim_pack *pack = NULL;
    brim_medium medium = of->args[4].length == 0 ? BRIM_MEDIUM_HTML : number_of(BRIM_LIST_MEDIUM, of->args[4]);
    brim_status status;
    TRY(pack_of(of->args[1], NULL, &pack));
    if (is(of->args[0], "work_sheet")) {
        FILL(brim_work_sheet(pack, ARG(2), given(of, 3), of->args[3].length, NULL, medium, ROOM, detail));
    } else if (is(of->args[0], "bay_card")) {
        brim_teller *english = NULL;
        must(brim_teller_new(NULL, 0, NULL, 0, NULL, &english, NULL), "brim_teller_new");
        FILL(brim_bay_card(pack, ARG(2), given(of, 3), of->args[3].length, english, medium, ROOM, detail));
        brim_teller_free(english);
    } else {
        brim_picture_of which = number_of(BRIM_LIST_PICTURE_OF, of->args[0]);
        FILL(brim_picture(pack, ARG(2), which, given(of, 3), of->args[3].length, NULL, ROOM, detail));
    }
    brim_pack_free(pack);
    TRY(status);
    put_pieces();
    return BRIM_OK;
}
