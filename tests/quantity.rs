//! Quantities from the outside: published values, exact rational arithmetic, and properties of text.

mod quantity_definitions;

mod quantity {
    mod amounts;
    mod any;
    mod conversion;
    mod doubles;
    mod nearest;
    mod published;
    mod text;
    mod ties;
    mod units;
}
