//! Documents that are cut off, shuffled, huge, deep or garbage: every fault with its place, bounded cost, no panic.

mod document_corpus;
mod vector_cases;

mod hostile {
    mod anything;
    mod cost;
    mod cut_off;
    mod deep;
    mod documents;
    mod limits;
    mod odd;
    mod order;
    mod places;
}
