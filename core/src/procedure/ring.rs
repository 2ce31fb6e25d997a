//! Chains of references that return to their start.

use alloc::vec;
use alloc::vec::Vec;

/// One step of a trail: the place of what refers, and which of its references is followed.
pub(super) type Way = (usize, usize);

/// Walks every chain once, depth first and in order, and tells each ring where it closes: the trail from its
/// first member to the reference that leads back there. `ways` holds, for each place, the places it refers to;
/// a reference to nothing is `None`.
pub(super) fn rings(ways: &[Vec<Option<usize>>], mut tell: impl FnMut(&[Way])) {
    let mut state = vec![Walked::Not; ways.len()];
    for start in 0..ways.len() {
        let mut trail: Vec<Way> = Vec::new();
        let mut next = Some(start).filter(|start| state.get(*start) == Some(&Walked::Not));
        loop {
            if let Some(place) = next.take() {
                mark(&mut state, place, Walked::On(trail.len()));
                trail.push((place, 0));
            }
            let Some((place, way)) = trail.last_mut() else {
                break;
            };
            let Some(target) = ways.get(*place).and_then(|ways| ways.get(*way)) else {
                mark(&mut state, *place, Walked::Done);
                trail.pop();
                // The way that led here is followed.
                if let Some((_, way)) = trail.last_mut() {
                    *way = way.saturating_add(1);
                }
                continue;
            };
            match target.and_then(|target| Some((target, *state.get(target)?))) {
                Some((target, Walked::Not)) => {
                    next = Some(target);
                    continue;
                }
                Some((_, Walked::On(from))) => tell(trail.get(from..).unwrap_or_default()),
                Some((_, Walked::Done)) | None => {}
            }
            if let Some((_, way)) = trail.last_mut() {
                *way = way.saturating_add(1);
            }
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Walked {
    Not,
    /// On the trail, this far in.
    On(usize),
    Done,
}

fn mark(state: &mut [Walked], place: usize, walked: Walked) {
    if let Some(own) = state.get_mut(place) {
        *own = walked;
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::arithmetic_side_effects, clippy::indexing_slicing)]
    use super::*;

    fn told(ways: &[&[usize]]) -> Vec<Vec<usize>> {
        let ways: Vec<Vec<Option<usize>>> = ways
            .iter()
            .map(|ways| ways.iter().copied().map(Some).collect())
            .collect();
        let mut out = Vec::new();
        rings(&ways, |trail| {
            let mut ring: Vec<usize> = trail.iter().map(|(place, _)| *place).collect();
            let (last, way) = trail[trail.len() - 1];
            ring.extend(ways[last][way]);
            out.push(ring);
        });
        out
    }

    #[test]
    fn chains_and_shared_ends_are_no_rings() {
        assert_eq!(told(&[&[1], &[2], &[]]), Vec::<Vec<usize>>::new());
        assert_eq!(told(&[&[1, 2], &[3], &[3], &[]]), Vec::<Vec<usize>>::new());
    }

    #[test]
    fn every_ring_is_told_from_its_first_member() {
        assert_eq!(told(&[&[0]]), [[0, 0]]);
        assert_eq!(told(&[&[1], &[2], &[3], &[1]]), [[1, 2, 3, 1]]);
        assert_eq!(told(&[&[1], &[0], &[3], &[2]]), [[0, 1, 0], [2, 3, 2]]);
        assert_eq!(
            told(&[&[1], &[0, 2], &[0]]),
            [vec![0, 1, 0], vec![0, 1, 2, 0]]
        );
    }
}
