//! The words of messages are those of the trade, and promise nothing.

use brimline::report;

#[test]
fn the_words_are_those_of_the_trade() {
    for message in report::messages() {
        let text = message.text.to_lowercase();
        let words: Vec<&str> = text.split(|letter: char| !letter.is_alphabetic()).collect();
        for never in [
            "ok",
            "okay",
            "fail",
            "failed",
            "fails",
            "guaranteed",
            "lifetime",
        ] {
            assert!(
                !words.contains(&never),
                "{} {}: {never}",
                message.part,
                message.id
            );
        }
        assert!(
            !text.contains("no leak ") || text.contains("no leak limit"),
            "{text}"
        );
        for (index, word) in words.iter().enumerate() {
            let promised = *word == "full" && words.get(index + 1) != Some(&"exchange");
            assert!(!promised, "{} {}: full", message.part, message.id);
        }
    }
}
