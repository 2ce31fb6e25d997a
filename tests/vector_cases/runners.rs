//! What is exchanged with the runners of the other languages.

use super::Request;

/// Writes requests for the runners of the other languages: for each its op, the number of arguments, and each
/// argument's length in bytes with the argument after it, every item ending in a line feed.
pub fn write_requests(requests: &[Request]) -> Vec<u8> {
    let mut out = format!("{}\n", requests.len()).into_bytes();
    for request in requests {
        out.extend(format!("{}\n{}\n", request.op, request.args.len()).bytes());
        for arg in &request.args {
            out.extend(format!("{}\n{arg}\n", arg.len()).bytes());
        }
    }
    out
}

/// Reads the answers of a runner: each its length in bytes, then the answer, each ending in a line feed.
pub fn read_answers(mut bytes: &[u8]) -> Vec<String> {
    let mut answers = Vec::new();
    while let Some(end) = bytes.iter().position(|byte| *byte == b'\n') {
        let length: usize = std::str::from_utf8(&bytes[..end])
            .expect("a length")
            .parse()
            .expect("a length is a number");
        let start = end + 1;
        answers.push(
            String::from_utf8(bytes[start..start + length].to_vec()).expect("an answer is UTF-8"),
        );
        bytes = &bytes[start + length + 1..];
    }
    answers
}
