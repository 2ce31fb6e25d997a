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

/// What a size costs for what it holds.
#[derive(Debug, Clone, Copy)]
struct Value {
    cost: u128,
    volume: u128,
}

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

impl Sum {
    fn and(&self, volume: u128, cost: Cost) -> Self {
        Sum {
            volume: self.volume.saturating_add(volume),
            cost: [
                self.cost[0].saturating_add(cost[0]),
                self.cost[1].saturating_add(cost[1]),
            ],
            link: self.link,
        }
    }
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
struct Search<'s> {
    sizes: &'s [Size],
    need: u128,
    /// What more than `need` is no waste, since bulk makes up for less.
    spare: u128,
    /// Whether the price comes before the number of containers.
    by_price: bool,
    /// Less waste than this is not possible with these sizes.
    least: u128,
    /// What costs more than this is not looked at.
    most: u64,
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
/// Cost is the number of containers and then the price. With the price of a plan that is known, it is the price and then the
/// number; then only the least cost is true, for what is dearer is given up on the way.
pub(super) fn search(
    sizes: &[Size],
    places: usize,
    need: u128,
    spare: u128,
    known_price: Option<u64>,
) -> Result<Found, Error> {
    let mut search = Search {
        sizes,
        need,
        spare,
        by_price: known_price.is_some(),
        least: 0,
        most: known_price.unwrap_or(u64::MAX),
        sums: Vec::new(),
        next: Vec::new(),
        links: Vec::new(),
        looked_at: 0,
        least_cost: None,
        least_waste: None,
    };
    if search.by_price {
        search.run()?;
    } else {
        search.run_from_few()?;
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

impl Search<'_> {
    /// Looks among few containers first: where they waste as little as can be, more of them would do no better.
    fn run_from_few(&mut self) -> Result<(), Error> {
        let step = self
            .sizes
            .iter()
            .fold(0, |step, size| common(size.volume, step));
        let over = self.need.checked_rem(step).filter(|over| *over > 0);
        let least = over.map_or(0, |over| step.saturating_sub(over));
        self.least = least.saturating_sub(self.spare);
        let fewest = self.fewest();
        for more in [4, 12] {
            self.most = fewest.saturating_add(more);
            self.run()?;
            if self
                .least_waste
                .is_some_and(|best| best.rank.0 == self.least)
            {
                return Ok(());
            }
        }
        self.most = u64::MAX;
        self.run()
    }

    /// How many it takes, the largest first.
    fn fewest(&self) -> u64 {
        let (mut left, mut count) = (self.need, 0_u64);
        for size in self.sizes {
            let enough = u64::try_from(left.div_ceil(size.volume)).unwrap_or(u64::MAX);
            let taken = enough.min(size.stock);
            count = count.saturating_add(taken);
            left = left.saturating_sub(size.volume.saturating_mul(taken.into()));
        }
        count
    }

    fn run(&mut self) -> Result<(), Error> {
        self.sums.clear();
        self.links.clear();
        (self.least_cost, self.least_waste) = (None, None);
        self.sums.push(Sum {
            volume: 0,
            cost: [0, 0],
            link: None,
        });
        for (size, best) in self.sizes.iter().zip(self.best_values()) {
            self.take_in(size, best)?;
            if self.by_price {
                self.forget_the_dearer();
            }
        }
        Ok(())
    }

    fn cost(&self, size: &Size) -> Cost {
        if self.by_price {
            [size.price, 1]
        } else {
            [1, size.price]
        }
    }

    /// For each size the best value of it and those that follow.
    fn best_values(&self) -> Vec<Value> {
        let mut best = Value { cost: 1, volume: 0 };
        let values = self.sizes.iter().rev().map(|size| {
            let [cost, _] = self.cost(size);
            let (cost, volume) = (cost.into(), size.volume);
            if best.volume.saturating_mul(cost) < volume.saturating_mul(best.cost) {
                best = Value { cost, volume };
            }
            best
        });
        let mut values: Vec<Value> = values.collect();
        values.reverse();
        values
    }

    fn take_in(&mut self, size: &Size, best: Value) -> Result<(), Error> {
        let cost = self.cost(size);
        // So many are enough by themselves.
        let enough = self.need.div_ceil(size.volume);
        if enough <= u128::from(size.stock) {
            return self.add(size, 1, cost, best, true);
        }
        // 1, 2, 4 … and the rest make up every number there is.
        let (mut left, mut part) = (size.stock, 1_u64);
        while left > 0 {
            let times = part.min(left);
            self.add(size, times, cost, best, false)?;
            left = left.saturating_sub(times);
            part = part.saturating_mul(2);
        }
        Ok(())
    }

    /// Adds a number of containers to every sum, once or again and again.
    fn add(
        &mut self,
        size: &Size,
        times: u64,
        cost: Cost,
        best: Value,
        again: bool,
    ) -> Result<(), Error> {
        let step = size.volume.saturating_mul(times.into());
        let cost = cost.map(|cost| cost.saturating_mul(times));
        let sums = mem::take(&mut self.sums);
        let mut grown = mem::take(&mut self.next);
        grown.clear();
        let (mut kept, mut from) = (0_usize, 0_usize);
        loop {
            // The sums are in order of volume, and so is what grows from them.
            let old = sums.get(kept);
            let base = if again {
                grown.get(from)
            } else {
                sums.get(from)
            };
            let new = base.map(|base| base.and(step, cost));
            let sum = match (old, new) {
                (Some(old), new) if new.is_none_or(|new| old.volume < new.volume) => {
                    kept = kept.saturating_add(1);
                    *old
                }
                (_, None) => break,
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
            if self.is_hopeless(&sum, best) {
                continue;
            }
            grown.push(sum);
            self.looked_at = self.looked_at.saturating_add(1);
            if self.looked_at > MOST_SUMS {
                let hint =
                    "too many different sums: round the volumes to 10 mL, or leave sizes out";
                let fault = Fault::new(ErrorKind::OutOfRange).at("sizes");
                return Err(fault.hint(hint).into());
            }
        }
        self.next = sums;
        self.sums = grown;
        Ok(())
    }

    /// Whether it would cost too much, even if all that follows were of the best value. What overflows is looked at.
    fn is_hopeless(&self, sum: &Sum, best: Value) -> bool {
        let left = self.need.saturating_sub(sum.volume);
        let more = u128::from(self.most.saturating_sub(sum.cost[0]));
        best.cost.saturating_mul(left) > best.volume.saturating_mul(more)
    }

    fn offer(&mut self, sum: &Sum, last: Link) {
        let [first, second] = sum.cost;
        let waste = sum
            .volume
            .saturating_sub(self.need)
            .saturating_sub(self.spare);
        Enough::keep(&mut self.least_cost, (first, waste, second), last);
        Enough::keep(&mut self.least_waste, (waste, sum.cost), last);
        if self.by_price || waste == self.least {
            self.most = self.most.min(first);
        }
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

/// The largest volume of which both are multiples.
const fn common(mut one: u128, mut other: u128) -> u128 {
    while let Some(rest) = one.checked_rem(other) {
        (one, other) = (other, rest);
    }
    one
}
