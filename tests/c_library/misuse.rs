//! Programs that misuse the library.

use super::program::compiled;
use crate::compiler::run;

#[test]
fn a_hostile_host_is_answered() {
    for name in ["misuse", "amiss", "keeping", "outlive"] {
        for (_, program) in compiled(name, &[&format!("tests/c/{name}.c")]) {
            run(&program, &[]);
        }
    }
}
