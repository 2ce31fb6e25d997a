//! Which containers together hold at least a volume: every sum below it, each reached at the least cost.

use crate::error::{Error, ErrorKind, Fault};
use alloc::vec;
use alloc::vec::Vec;
use core::mem;

/// Sums that are looked at before the search gives up: some 20 ms.
const MOST_SUMS: usize = 1_000_000;

/// One size, its volume in exact counts, above zero.
#[derive(Debug, Clone, Copy)]
pub(super) struct Size {
    pub(super) volume: u128,
    pub(super) price: u64,
    /// How many there are at most.
    pub(super) stock: u64,
    /// Its place in the list of the caller, below `places`.
    pub(super) place: usize,
}

/// What is compared first, and what decides between equals.
type Cost = [u64; 2];

/// A sum below what is needed.
#[derive(Debug, Clone, Copy)]
struct Sum {
    volume: u128,
    cost: Cost,
    link: Option<usize>,
}

/// How a sum was reached.
#[derive(Debug, Clone, Copy)]
struct Link {
    before: Option<usize>,
    place: usize,
    times: u64,
}

/// Containers that are enough.
#[derive(Debug, Clone, Copy)]
struct Enough<Rank> {
    rank: Rank,
    last: Link,
}

impl<Rank: PartialOrd> Enough<Rank> {
    /// Keeps what ranks lower; of equals what was found first.
    fn keep(best: &mut Option<Self>, rank: Rank, last: Link) {
        if best.as_ref().is_none_or(|best| rank < best.rank) {
            *best = Some(Enough { rank, last });
        }
    }
}

/// A search over sizes, of which the larger come first.
#[derive(Debug)]
struct Search {
    need: u128,
    /// What more than `need` is no waste, since bulk makes up for less.
    spare: u128,
    sums: Vec<Sum>,
    next: Vec<Sum>,
    links: Vec<Link>,
    looked_at: usize,
    least_cost: Option<Enough<(u64, u128, u64)>>,
    least_waste: Option<Enough<(u128, Cost)>>,
}

/// How many are taken of the size at each place.
pub(super) struct Found {
    /// At the least cost; of those with the least waste.
    pub(super) least_cost: Vec<u64>,
    /// With the least waste; of those at the least cost.
    pub(super) least_waste: Vec<u64>,
}

/// Looks for the containers that hold at least `need`, which is above zero, out of enough in stock.
///
/// `by_price` puts the price before the number of containers; then only the least cost is true, for what is dearer is given
/// up on the way.
pub(super) fn search(
    sizes: &[Size],
    places: usize,
    need: u128,
    spare: u128,
    by_price: bool,
) -> Result<Found, Error> {
    let mut search = Search {
        need,
        spare,
        sums: vec![Sum {
            volume: 0,
            cost: [0, 0],
            link: None,
        }],
        next: Vec::new(),
        links: Vec::new(),
        looked_at: 0,
        least_cost: None,
        least_waste: None,
    };
    for size in sizes {
        search.take_in(size, by_price)?;
        if by_price {
            search.forget_the_dearer();
        }
    }
    let counts = |last: Option<Link>| {
        let mut counts = vec![0_u64; places];
        let mut at = last;
        while let Some(link) = at {
            if let Some(count) = counts.get_mut(link.place) {
                *count = count.saturating_add(link.times);
            }
            at = link.before.and_then(|link| search.links.get(link)).copied();
        }
        counts
    };
    Ok(Found {
        least_cost: counts(search.least_cost.map(|best| best.last)),
        least_waste: counts(search.least_waste.map(|best| best.last)),
    })
}

impl Search {
    fn take_in(&mut self, size: &Size, by_price: bool) -> Result<(), Error> {
        let cost = if by_price {
            [size.price, 1]
        } else {
            [1, size.price]
        };
        // So many are enough by themselves.
        let enough = self.need.div_ceil(size.volume);
        if enough <= u128::from(size.stock) {
            return self.add(size, 1, cost, true);
        }
        // 1, 2, 4 … and the rest make up every number there is.
        let (mut left, mut part) = (size.stock, 1_u64);
        while left > 0 {
            let times = part.min(left);
            self.add(size, times, cost, false)?;
            left = left.saturating_sub(times);
            part = part.saturating_mul(2);
        }
        Ok(())
    }

    /// Adds a number of containers to every sum, once or again and again.
    fn add(&mut self, size: &Size, times: u64, cost: Cost, again: bool) -> Result<(), Error> {
        let step = size.volume.saturating_mul(times.into());
        let cost = cost.map(|cost| cost.saturating_mul(times));
        let sums = mem::take(&mut self.sums);
        let mut grown = mem::take(&mut self.next);
        grown.clear();
        let (mut kept, mut from) = (0_usize, 0_usize);
        loop {
            let old = sums.get(kept);
            // The sums are in order of volume, and so is what grows from them.
            let base = if again {
                grown.get(from)
            } else {
                sums.get(from)
            }
            .copied();
            let new = base.map(|base| Sum {
                volume: base.volume.saturating_add(step),
                cost: [
                    base.cost[0].saturating_add(cost[0]),
                    base.cost[1].saturating_add(cost[1]),
                ],
                link: base.link,
            });
            let sum = match (old, new) {
                (None, None) => break,
                (Some(old), Some(new)) if old.volume < new.volume => {
                    kept = kept.saturating_add(1);
                    *old
                }
                (Some(old), None) => {
                    kept = kept.saturating_add(1);
                    *old
                }
                (old, Some(mut new)) => {
                    from = from.saturating_add(1);
                    let link = Link {
                        before: new.link,
                        place: size.place,
                        times,
                    };
                    if new.volume >= self.need {
                        self.offer(&new, link);
                        continue;
                    }
                    let met = old.filter(|old| old.volume == new.volume);
                    kept = kept.saturating_add(met.map_or(0, |_| 1));
                    match met {
                        Some(old) if old.cost <= new.cost => *old,
                        _ => {
                            new.link = Some(self.links.len());
                            self.links.push(link);
                            new
                        }
                    }
                }
            };
            grown.push(sum);
            self.looked_at = self.looked_at.saturating_add(1);
            if self.looked_at > MOST_SUMS {
                let hint =
                    "too many different sums: round the volumes to 10 mL, or leave sizes out";
                return Err(Fault::new(ErrorKind::OutOfRange)
                    .at("sizes")
                    .hint(hint)
                    .into());
            }
        }
        self.next = sums;
        self.sums = grown;
        Ok(())
    }

    fn offer(&mut self, sum: &Sum, last: Link) {
        let [first, second] = sum.cost;
        let waste = sum
            .volume
            .saturating_sub(self.need)
            .saturating_sub(self.spare);
        Enough::keep(&mut self.least_cost, (first, waste, second), last);
        Enough::keep(&mut self.least_waste, (waste, sum.cost), last);
    }

    /// Leaves out the sums that hold no more than another and cost more.
    fn forget_the_dearer(&mut self) {
        let mut least = u64::MAX;
        self.next.clear();
        for sum in self.sums.iter().rev() {
            if sum.cost[0] <= least {
                least = sum.cost[0];
                self.next.push(*sum);
            }
        }
        self.next.reverse();
        mem::swap(&mut self.sums, &mut self.next);
    }
}
