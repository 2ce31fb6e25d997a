//! How people type units: one table of every spelling, and the search in it.

use super::ambiguity::{BARE, Listed, REFUSED, WITHIN};
use super::key::{Key, hash};
use super::kind::{Kind, Measures};
use super::unit::Unit;

/// What a spelling stands for.
#[derive(Clone, Copy)]
pub(super) enum Meaning {
    Unit(Unit),
    /// Two sizes, told apart by the measures.
    Bare {
        us: Unit,
        imperial: Unit,
    },
    /// This unit, but only where its kind is known from elsewhere.
    Within(Unit),
    /// A name that is answered with its candidates.
    Refused(&'static Listed),
}

/// Why a text is not a unit here.
pub(super) enum Refused {
    Missing,
    Unknown,
    Letters(Meaning),
    Bare { us: Unit, imperial: Unit },
    Within(Unit),
    Listed(&'static Listed),
    WrongKind(Unit),
}

#[derive(Clone, Copy)]
struct Spelling {
    text: &'static str,
    exact: bool,
    meaning: Meaning,
}

const EMPTY: Spelling = Spelling {
    text: "",
    exact: true,
    meaning: Meaning::Unit(Unit::Litre),
};
const COUNT: usize = collect::<1>().1;
static SPELLINGS: [Spelling; COUNT] = collect::<COUNT>().0;
const SLOTS: usize = 2048;
static INDEX: [u16; SLOTS] = index();
const _: () = assert!(COUNT < SLOTS / 2, "the table of spellings needs free slots");

/// Every spelling in one array, as far as it reaches, and how many there are.
#[expect(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "evaluated by the compiler only"
)]
const fn collect<const N: usize>() -> ([Spelling; N], usize) {
    let mut all = [EMPTY; N];
    let mut count = 0;
    let mut unit = 0;
    while unit < Unit::ALL.len() {
        let row = Unit::ALL[unit].row();
        let meaning = Meaning::Unit(Unit::ALL[unit]);
        count = append(&mut all, count, row.any_case, false, meaning);
        count = append(&mut all, count, row.exact_case, true, meaning);
        unit += 1;
    }
    let mut bare = 0;
    while bare < BARE.len() {
        let meaning = Meaning::Bare {
            us: BARE[bare].us,
            imperial: BARE[bare].imperial,
        };
        count = append(&mut all, count, BARE[bare].names, false, meaning);
        bare += 1;
    }
    let mut within = 0;
    while within < WITHIN.len() {
        count = append(
            &mut all,
            count,
            WITHIN[within].1,
            true,
            Meaning::Within(WITHIN[within].0),
        );
        within += 1;
    }
    let mut refused = 0;
    while refused < REFUSED.len() {
        count = append(
            &mut all,
            count,
            REFUSED[refused].names,
            REFUSED[refused].exact,
            Meaning::Refused(&REFUSED[refused]),
        );
        refused += 1;
    }
    (all, count)
}

#[expect(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    reason = "evaluated by the compiler only"
)]
const fn append(
    all: &mut [Spelling],
    from: usize,
    names: &[&'static str],
    exact: bool,
    meaning: Meaning,
) -> usize {
    let mut name = 0;
    while name < names.len() {
        if from + name < all.len() {
            all[from + name] = Spelling {
                text: names[name],
                exact,
                meaning,
            };
        }
        name += 1;
    }
    from + name
}

/// An open-addressed table of positions in [`SPELLINGS`], counted from 1; 0 is free.
#[expect(
    clippy::indexing_slicing,
    clippy::arithmetic_side_effects,
    clippy::cast_possible_truncation,
    reason = "evaluated by the compiler only"
)]
const fn index() -> [u16; SLOTS] {
    let mut slots = [0; SLOTS];
    let mut position = 0;
    while position < COUNT {
        let mut slot = hash(SPELLINGS[position].text.as_bytes()) % SLOTS;
        while slots[slot] != 0 {
            slot = (slot + 1) % SLOTS;
        }
        position += 1;
        slots[slot] = position as u16;
    }
    slots
}

/// The normal form as text, for the search of near names.
pub(super) fn normal_form(text: &str) -> Option<alloc::string::String> {
    let mut key = Key::EMPTY;
    key.fill(text)?;
    core::str::from_utf8(key.as_bytes())
        .ok()
        .map(str::to_ascii_lowercase)
}

/// Every spelling in normal form with what it stands for.
pub(super) fn all() -> impl Iterator<Item = (&'static str, Meaning)> {
    SPELLINGS
        .iter()
        .map(|spelling| (spelling.text, spelling.meaning))
}

/// Words that tell the measures apart, before or after the name of the size.
const MEASURES: &[(&str, Measures)] = &[
    ("us", Measures::Us),
    ("u.s", Measures::Us),
    ("usa", Measures::Us),
    ("imp", Measures::Imperial),
    ("imperial", Measures::Imperial),
    ("uk", Measures::Imperial),
    ("u.k", Measures::Imperial),
    ("british", Measures::Imperial),
];

/// Whether two names are the same but for capitals, and if so, whether their capitals are the same too.
#[inline]
fn alike(one: &[u8], other: &[u8]) -> Option<bool> {
    let mut capitals = true;
    if one.len() != other.len() {
        return None;
    }
    // Short names go byte by byte: the name was written so a moment ago, and wider reads would wait for that.
    if one.len() > 8 && one == other {
        return Some(true);
    }
    for (one, other) in one.iter().zip(other) {
        if !one.eq_ignore_ascii_case(other) {
            return None;
        }
        capitals &= one == other;
    }
    Some(capitals)
}

/// The meaning of a normal form; the error says whether only capitals and small letters differ.
#[inline]
fn find(name: &[u8], hash: usize) -> Result<Meaning, Option<Meaning>> {
    let mut slot = hash % SLOTS;
    let mut letters = None;
    // The table is less than half full, so a free slot ends every search.
    while let Some(spelling) = INDEX
        .get(slot)
        .and_then(|position| usize::from(*position).checked_sub(1))
        .and_then(|position| SPELLINGS.get(position))
    {
        if let Some(capitals) = alike(spelling.text.as_bytes(), name) {
            if capitals || !spelling.exact {
                return Ok(spelling.meaning);
            }
            letters = Some(spelling.meaning);
        }
        slot = slot.wrapping_add(1) % SLOTS;
    }
    Err(letters)
}

/// The size a name with the word of its measures stands for, as `qt.us` or `imperial.quarts`.
fn find_measured(name: &[u8]) -> Option<Meaning> {
    MEASURES.iter().find_map(|(word, measures)| {
        let word = word.as_bytes();
        let before = name
            .split_at_checked(word.len())
            .filter(|(first, _)| first.eq_ignore_ascii_case(word))
            .and_then(|(_, rest)| rest.strip_prefix(b"."));
        let after = name
            .len()
            .checked_sub(word.len())
            .and_then(|start| name.split_at_checked(start))
            .filter(|(_, last)| last.eq_ignore_ascii_case(word))
            .and_then(|(rest, _)| rest.strip_suffix(b"."));
        let size = before.or(after)?;
        match find(size, hash(size)).ok()? {
            Meaning::Bare { us, imperial } => Some(Meaning::Unit(match measures {
                Measures::Us => us,
                Measures::Imperial => imperial,
            })),
            refused @ Meaning::Refused(_) => Some(refused),
            _ => None,
        }
    })
}

/// Reads a unit.
pub(super) fn read(
    text: &str,
    kind: Option<Kind>,
    measures: Option<Measures>,
) -> Result<Unit, Refused> {
    let mut key = Key::EMPTY;
    key.fill(text).ok_or(Refused::Unknown)?;
    let name = key.as_bytes();
    if name.is_empty() {
        return Err(if text.trim().is_empty() {
            Refused::Missing
        } else {
            Refused::Unknown
        });
    }
    let meaning = match find(name, key.hash()) {
        Ok(meaning) => meaning,
        Err(letters) => match find_measured(name) {
            Some(meaning) => meaning,
            None => return Err(letters.map_or(Refused::Unknown, Refused::Letters)),
        },
    };
    let unit = match (meaning, measures) {
        (Meaning::Unit(unit), _) => unit,
        (Meaning::Bare { us, .. }, Some(Measures::Us)) => us,
        (Meaning::Bare { imperial, .. }, Some(Measures::Imperial)) => imperial,
        (Meaning::Bare { us, imperial }, None) => {
            let fits = kind.is_none_or(|kind| kind == us.kind());
            return Err(if fits {
                Refused::Bare { us, imperial }
            } else {
                Refused::WrongKind(us)
            });
        }
        (Meaning::Within(unit), _) if kind == Some(unit.kind()) => unit,
        (Meaning::Within(unit), _) => return Err(Refused::Within(unit)),
        (Meaning::Refused(listed), _) => return Err(Refused::Listed(listed)),
    };
    match kind {
        None => Ok(unit),
        Some(kind) if unit.kind() == kind => Ok(unit),
        Some(Kind::TemperatureDifference) if unit.kind() == Kind::Temperature => {
            Ok(unit.of_difference())
        }
        Some(_) => Err(Refused::WrongKind(unit)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::collections::BTreeSet;
    use alloc::string::String;

    #[test]
    fn every_spelling_is_in_normal_form_and_stands_once() {
        let mut seen: BTreeSet<(bool, String)> = BTreeSet::new();
        for spelling in &SPELLINGS {
            assert_eq!(
                normal_form(spelling.text).as_deref(),
                Some(spelling.text.to_ascii_lowercase().as_str())
            );
            let small = spelling.text.to_ascii_lowercase();
            let known = if spelling.exact {
                String::from(spelling.text)
            } else {
                small.clone()
            };
            assert!(
                seen.insert((spelling.exact, known)),
                "{} stands twice",
                spelling.text
            );
            assert!(
                !spelling.exact || !seen.contains(&(false, small)),
                "{} stands in any case too",
                spelling.text
            );
        }
    }

    #[test]
    fn what_is_refused_names_units() {
        for listed in REFUSED {
            for symbol in listed.allowed {
                let unit = read(symbol, None, None).ok().map(Unit::symbol);
                assert_eq!(unit, Some(*symbol), "{:?}", listed.names);
            }
        }
    }
}
