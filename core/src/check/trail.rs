//! A list that grows at its end and is cheap to copy: copies share all but the last few items.

use alloc::sync::Arc;
use alloc::vec::Vec;

const CHUNK: usize = 64;

#[derive(Debug, Clone)]
pub(super) struct Trail<T>(Vec<Arc<Vec<T>>>);

impl<T> Default for Trail<T> {
    fn default() -> Self {
        Trail(Vec::new())
    }
}

impl<T: Clone> Trail<T> {
    pub(super) fn push(&mut self, item: T) {
        match self.0.last_mut() {
            Some(last) if last.len() < CHUNK => Arc::make_mut(last).push(item),
            _ => self.0.push(Arc::new(alloc::vec![item])),
        }
    }

    pub(super) fn iter(&self) -> impl DoubleEndedIterator<Item = &T> + Clone {
        self.0.iter().flat_map(|chunk| chunk.iter())
    }

    pub(super) fn last(&self) -> Option<&T> {
        self.0.last()?.last()
    }

    pub(super) fn len(&self) -> usize {
        let full = self.0.len().saturating_sub(1).saturating_mul(CHUNK);
        full.saturating_add(self.0.last().map_or(0, |last| last.len()))
    }
}

impl<T: Clone> FromIterator<T> for Trail<T> {
    fn from_iter<I: IntoIterator<Item = T>>(items: I) -> Self {
        let mut trail = Trail::default();
        for item in items {
            trail.push(item);
        }
        trail
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_copy_is_not_changed_by_what_comes_after() {
        let mut trail: Trail<usize> = (0..100).collect();
        let before = trail.clone();
        trail.push(100);
        assert_eq!((before.len(), trail.len()), (100, 101));
        assert_eq!(before.iter().next_back(), Some(&99));
        assert!(trail.iter().copied().eq(0..101));
        let chunk = |trail: &Trail<usize>| trail.0.first().map(Arc::as_ptr);
        assert_eq!(chunk(&before), chunk(&trail));
    }
}
