//! The JSON Schemas of `core/schemas`, held to the library by a general-purpose validator.

mod document_corpus;
mod vector_cases;

mod schemas {
    mod agreement;
    mod answers;
    mod counter;
    mod formats;
    mod kept;
    mod members;
    mod mutant;
    mod questions;
    mod records;
    mod tellings;
    mod validator;
    mod words;
}
