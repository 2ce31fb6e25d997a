//! The C library as C and C++ programs use it: every vector, every getter, misuse, and the examples.

#[path = "c/compiler.rs"]
mod compiler;
mod vector_cases;

mod c_library {
    mod calculators;
    mod checks;
    mod examples;
    mod forecasts;
    mod getters;
    mod misuse;
    mod nulls;
    mod packs;
    mod program;
    mod vectors;
    mod words;
}
