//! Where two documents differ, member by member.

use super::canonical::Ext;
use super::path::{Step, spell};
use super::place::children;
use alloc::collections::BTreeMap;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;
use serde_json::value::RawValue;

/// One place in which two documents differ.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Difference {
    path: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    was: Option<Ext>,
    #[serde(skip_serializing_if = "Option::is_none")]
    now: Option<Ext>,
}

impl Difference {
    /// Where, as `leak.by_sheet`. Of a list of objects it is the list, and one of them is told.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }

    /// What stood there, as JSON; `None` if nothing did.
    #[must_use]
    pub fn was(&self) -> Option<&str> {
        self.was.as_ref().map(Ext::get)
    }

    /// What stands there now, as JSON; `None` if nothing does.
    #[must_use]
    pub fn now(&self) -> Option<&str> {
        self.now.as_ref().map(Ext::get)
    }
}

/// Where two canonical documents differ, in the order of the first, what the second adds after it. Objects are
/// compared by their members, lists of objects by what one has and the other lacks, all else as a whole; a list as well of
/// which only the order differs.
pub(crate) fn differences(was: &str, now: &str) -> Vec<Difference> {
    let mut found = Vec::new();
    compare(&mut Vec::new(), Some(was), Some(now), &mut found);
    found
}

fn compare(
    path: &mut Vec<Step>,
    was: Option<&str>,
    now: Option<&str>,
    found: &mut Vec<Difference>,
) {
    if was == now {
        return;
    }
    if let (Some(was), Some(now)) = (was, now) {
        if was.starts_with('{') && now.starts_with('{') {
            return members(path, was, now, found);
        }
        if is_list_of_objects(was) && is_list_of_objects(now) {
            return items(path, was, now, found);
        }
    }
    found.push(difference(path, was, now));
}

fn difference(path: &[Step], was: Option<&str>, now: Option<&str>) -> Difference {
    Difference {
        path: spell(path),
        was: was.and_then(Ext::new),
        now: now.and_then(Ext::new),
    }
}

fn members(path: &mut Vec<Step>, was: &str, now: &str, found: &mut Vec<Difference>) {
    let (was, now) = (children(was), children(now));
    let added = now.iter().filter(|(step, _)| value(&was, step).is_none());
    for (step, _) in was.iter().chain(added) {
        path.push(step.clone());
        compare(path, value(&was, step), value(&now, step), found);
        path.pop();
    }
}

fn value<'v>(members: &[(Step, &'v RawValue)], step: &Step) -> Option<&'v str> {
    let own = members.iter().find(|(own, _)| own == step);
    own.map(|(_, value)| value.get())
}

fn items(path: &mut Vec<Step>, was: &str, now: &str, found: &mut Vec<Difference>) {
    let values = |list| -> Vec<&str> {
        let items = children(list).into_iter();
        items.map(|(_, item)| item.get()).collect()
    };
    let (had, has) = (values(was), values(now));
    let (gone, added) = (beyond(&had, &has), beyond(&has, &had));
    if gone.is_empty() && added.is_empty() {
        return found.push(difference(path, Some(was), Some(now)));
    }
    for item in gone {
        compare(path, Some(item), None, found);
    }
    for item in added {
        compare(path, None, Some(item), found);
    }
}

/// The items that others do not have, or not as often, in order.
fn beyond<'v>(items: &[&'v str], others: &[&str]) -> Vec<&'v str> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for other in others {
        let count = counts.entry(other).or_default();
        *count = count.saturating_add(1);
    }
    let is_beyond = |item: &&&str| match counts.get_mut(**item) {
        Some(count) if *count > 0 => {
            *count = count.saturating_sub(1);
            false
        }
        _ => true,
    };
    items.iter().filter(is_beyond).copied().collect()
}

/// An empty list is one as well.
fn is_list_of_objects(json: &str) -> bool {
    json.starts_with('[')
        && children(json)
            .iter()
            .all(|(_, item)| item.get().starts_with('{'))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::canonical;

    #[test]
    fn a_list_in_another_order_is_told_whole() {
        let was = r#"{"list":[{"id":"x"},{"id":"y"}]}"#;
        let now = r#"{"list":[{"id":"y"},{"id":"x"}]}"#;
        let told =
            r#"[{"path":"list","was":[{"id":"x"},{"id":"y"}],"now":[{"id":"y"},{"id":"x"}]}]"#;
        assert_eq!(canonical(&differences(was, now)), told);
    }

    #[test]
    fn members_items_and_wholes_are_told_where_they_stand() {
        let was = r#"{"same":{"a":1},"gone":true,"ends":[null,"0 L"],"list":[{"id":"x"},{"id":"y"},{"id":"x"}],"in":{"b":[],"c":1}}"#;
        let now = r#"{"same":{"a":1},"ends":["-1 L","0 L"],"list":[{"id":"x"},{"id":"z"}],"in":{"b":[{"id":"w"}],"c":2},"new":"n"}"#;
        let told = [
            r#"{"path":"gone","was":true}"#,
            r#"{"path":"ends","was":[null,"0 L"],"now":["-1 L","0 L"]}"#,
            r#"{"path":"list","was":{"id":"y"}}"#,
            r#"{"path":"list","was":{"id":"x"}}"#,
            r#"{"path":"list","now":{"id":"z"}}"#,
            r#"{"path":"in.b","now":{"id":"w"}}"#,
            r#"{"path":"in.c","was":1,"now":2}"#,
            r#"{"path":"new","now":"n"}"#,
        ];
        let found = differences(was, now);
        assert_eq!(canonical(&found), alloc::format!("[{}]", told.join(",")));
        assert!(differences(was, was).is_empty());
    }
}
