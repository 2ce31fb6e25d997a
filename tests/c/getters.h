/* Results and errors put together from the getters alone, as a host without JSON reads them. */
#ifndef GETTERS_H
#define GETTERS_H

#include "writer.h"

void put_evaluation(grown *out, const brim_evaluation *evaluation);
void put_error(grown *out, const brim_error *error);

#endif
