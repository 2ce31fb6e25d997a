//! temporary
fn main() {
    let mut args = std::env::args().skip(1);
    let journal = std::fs::read_to_string(args.next().unwrap()).unwrap();
    let pack = match args.next() {
        Some(p) => brimline::Pack::from_json(&std::fs::read_to_string(p).unwrap()),
        None => brimline::Pack::embedded(),
    };
    match pack.and_then(|pack| {
        let mut o = brimline::Options::default();
        o.flip = true;
        brimline::evaluate_with(&pack, journal.as_str(), &o)
    }) {
        Ok(e) => println!("{}", e.to_json()),
        Err(e) => println!("{e}"),
    }
}
