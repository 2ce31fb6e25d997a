//! The first-order response, and how it is fitted to readings.
//!
//! dT/dt = heating − loss·T, with T in kelvin over a first reading and t in seconds after it: the temperature nears
//! heating / loss with the time constant 1 / loss. Written so, a straight line is the plain case of a small loss, and a
//! pour in between is one step of the temperature that leaves heating and loss as they are.

use super::least_squares::Normal;

/// A reading, in seconds and kelvin after and over the first.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Point {
    pub(super) at: f64,
    pub(super) over: f64,
    /// The number of the reading among all that were given.
    pub(super) index: u32,
    /// Whether the sensor was not believed: such a reading is kept and not fitted.
    pub(super) doubted: bool,
}

/// A pour: the temperature T becomes kept·T + brought.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Stir {
    pub(super) at: f64,
    pub(super) kept: f64,
    pub(super) brought: f64,
}

/// What a curve is fitted to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Task<'a> {
    /// In order of time.
    pub(super) points: &'a [Point],
    /// In order of time.
    pub(super) stirs: &'a [Stir],
    /// 1 / scatter², in 1/K²; 0 for plain least squares.
    pub(super) narrowness: f64,
    /// The temperature that is neared, where it is held, in kelvin over the first reading.
    pub(super) asymptote: Option<f64>,
}

/// The three numbers of a response.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Curve {
    /// Temperature when the first believed reading was taken, in kelvin over the first reading.
    pub(super) start: f64,
    /// Kelvin a second at the temperature of the first reading.
    pub(super) heating: f64,
    /// Part lost a second.
    pub(super) loss: f64,
}

/// A number that follows from a curve, and how it moves with start, heating and loss.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Told {
    pub(super) value: f64,
    pub(super) by: [f64; 3],
}

/// How far along its curve a temperature has come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Walk {
    at: f64,
    pub(super) now: Told,
    /// The last step and its gains: readings are mostly taken at equal times.
    step: f64,
    gains: (f64, f64),
}

/// 1/2!, 1/3!, …: what the second of the two below is a series of.
const SERIES: [f64; 8] = [
    1.0 / 2.0,
    1.0 / 6.0,
    1.0 / 24.0,
    1.0 / 120.0,
    1.0 / 720.0,
    1.0 / 5_040.0,
    1.0 / 40_320.0,
    1.0 / 362_880.0,
];

/// (1 − e⁻ˣ)/x and (1 − that)/x, for x from 0; to 13 digits.
fn gains(x: f64) -> (f64, f64) {
    if x < 0.125 {
        let second = SERIES.iter().rev().fold(0.0, |sum, term| term - x * sum);
        (1.0 - x * second, second)
    } else {
        let first = -libm::expm1(-x) / x;
        (first, (1.0 - first) / x)
    }
}

impl Walk {
    fn new(curve: &Curve, at: f64) -> Self {
        let (value, by) = (curve.start, [1.0, 0.0, 0.0]);
        let now = Told { value, by };
        let (step, gains) = (0.0, (1.0, 0.5));
        Walk {
            at,
            now,
            step,
            gains,
        }
    }

    pub(super) fn to(&mut self, curve: &Curve, at: f64) {
        let step = at - self.at;
        if step <= 0.0 {
            return;
        }
        if step != self.step {
            (self.step, self.gains) = (step, gains(curve.loss * step));
        }
        let (first, second) = self.gains;
        let left = 1.0 - curve.loss * step * first;
        let gained = step * first;
        let Told {
            value,
            by: [by_start, by_heating, by_loss],
        } = self.now;
        let value = left * value;
        self.now = Told {
            value: value + curve.heating * gained,
            by: [
                left * by_start,
                left * by_heating + gained,
                left * by_loss - step * value + curve.heating * step * step * (second - first),
            ],
        };
        self.at = at;
    }

    fn stir(&mut self, stir: &Stir) {
        self.now.value = stir.kept * self.now.value + stir.brought;
        self.now.by = self.now.by.map(|by| stir.kept * by);
    }
}

/// A curve and how it lies among the readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fitted {
    pub(super) curve: Curve,
    pub(super) normal: Normal,
    /// To the last reading or pour that was taken in.
    pub(super) walk: Walk,
    pub(super) shape: Shape,
    damping: f64,
}

/// What the readings make of a response.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// A straight line: they do not tell yet where they are going.
    Straight,
    Curved,
    /// They are where they are going from the second on.
    Step,
}

impl Curve {
    /// The temperature that is neared, over the first reading.
    pub(super) fn asymptote(&self, task: &Task<'_>) -> Told {
        let value = self.heating / self.loss;
        let by = match task.asymptote {
            Some(_) => [0.0; 3],
            None => [0.0, 1.0 / self.loss, -value / self.loss],
        };
        Told { value, by }
    }

    /// Seconds from the temperature `now` to `over`, both on one side of the asymptote.
    pub(super) fn time_to(&self, over: f64, now: &Told, task: &Task<'_>) -> Told {
        let end = self.asymptote(task);
        let (ahead, left) = (end.value - now.value, end.value - over);
        let value = libm::log(ahead / left) / self.loss;
        let by_end = (1.0 / ahead - 1.0 / left) / self.loss;
        let by_now = -1.0 / (ahead * self.loss);
        let [start, heating, loss] = Told::sum(by_end, &end.by, by_now, &now.by);
        Told {
            value,
            by: [start, heating, loss - value / self.loss],
        }
    }

    /// Goes on to a reading and takes it in.
    ///
    /// With a scatter c a residual r counts as 2c²(√(1 + (r/c)²) − 1), known as soft L1: as r² where it is small, as its
    /// size where it is large.
    fn take(&self, normal: &mut Normal, walk: &mut Walk, point: &Point, task: &Task<'_>) {
        walk.to(self, point.at);
        let residual = point.over - walk.now.value;
        let root = libm::sqrt(1.0 + residual * residual * task.narrowness);
        let weight = 1.0 / root;
        let by = match task.asymptote {
            Some(end) => held(walk.now.by, end),
            None => walk.now.by,
        };
        normal.cost += 2.0 * residual * residual / (1.0 + root);
        normal.add(by, residual * weight, weight * weight * weight);
    }

    /// The normal equations of the readings at this curve, and where it has come to after the last reading and pour.
    fn normal(&self, task: &Task<'_>) -> (Normal, Walk) {
        let begins = task.believed().next().map_or(0.0, |point| point.at);
        let mut walk = Walk::new(self, begins);
        let mut stirs = task.stirs.iter().peekable();
        while stirs.next_if(|stir| stir.at < begins).is_some() {}
        let mut normal = Normal::default();
        for point in task.believed() {
            while let Some(stir) = stirs.next_if(|stir| stir.at < point.at) {
                walk.to(self, stir.at);
                walk.stir(stir);
            }
            self.take(&mut normal, &mut walk, point, task);
        }
        for stir in stirs {
            walk.to(self, stir.at);
            walk.stir(stir);
        }
        if task.asymptote.is_some() {
            normal.hold_heating();
        }
        (normal, walk)
    }

    /// The curve a step further.
    fn moved(&self, [start, heating, loss]: [f64; 3], task: &Task<'_>) -> Self {
        let loss = self.loss + loss;
        Curve {
            start: self.start + start,
            heating: task
                .asymptote
                .map_or(self.heating + heating, |end| end * loss),
            loss,
        }
    }
}

/// The same sensitivities where the heating follows from the loss.
fn held([start, heating, loss]: [f64; 3], asymptote: f64) -> [f64; 3] {
    [start, 0.0, loss + asymptote * heating]
}

impl Told {
    fn sum(a: f64, one: &[f64; 3], b: f64, other: &[f64; 3]) -> [f64; 3] {
        let [one_0, one_1, one_2] = one;
        let [other_0, other_1, other_2] = other;
        [
            a * one_0 + b * other_0,
            a * one_1 + b * other_1,
            a * one_2 + b * other_2,
        ]
    }
}

/// How far from a straight line and from a bare step a response may lie, as loss times the span of the readings.
const LOSS_OVER_SPAN: [f64; 2] = [1e-3, 1e2];
/// Within this factor of a bound a loss is at it.
const BOUND: f64 = 1.001;
/// The loss changes at most by this factor in one step.
const STRIDE: f64 = 4.0;
/// How much the first step is held back, as a part of the diagonal.
const DAMPING: f64 = 1e-3;
/// A gain in K² that is none.
const NOTHING: f64 = 1e-18;

impl Task<'_> {
    /// The readings that are fitted.
    pub(super) fn believed(&self) -> impl DoubleEndedIterator<Item = &Point> {
        self.points.iter().filter(|point| !point.doubted)
    }

    /// The first and the last of them.
    pub(super) fn ends(&self) -> (Point, Point) {
        let first = self.believed().next().copied().unwrap_or_default();
        (first, self.believed().next_back().copied().unwrap_or(first))
    }

    /// A curve to begin with: the readings' ends, bent as far as a time constant of their span.
    fn guess(&self) -> Curve {
        let (first, last) = self.ends();
        let loss = 1.0 / (last.at - first.at);
        // 1 / (1 − e⁻¹)
        let end = first.over + (last.over - first.over) * 1.582;
        Curve {
            start: first.over,
            heating: self.asymptote.unwrap_or(end) * loss,
            loss,
        }
    }

    /// The curve nearest to the readings, by Levenberg and Marquardt's steps, at most `steps` of them. `None` where the
    /// readings do not settle the three numbers.
    ///
    /// It begins where `before` ended; where only the last reading is new, that one is `added` to what is known. It ends
    /// once a step promises less than `enough`, a part of the variance.
    pub(super) fn fitted(
        &self,
        before: Option<&Fitted>,
        added: Option<&Point>,
        steps: u32,
        enough: f64,
    ) -> Option<Fitted> {
        let (first, last) = self.ends();
        let span = last.at - first.at;
        if span <= 0.0 {
            return None;
        }
        let [least, most] = LOSS_OVER_SPAN.map(|bound| bound / span);
        let mut curve = before.map_or_else(|| self.guess(), |before| before.curve);
        let mut damping = before.map_or(DAMPING, |before| before.damping);
        let (mut normal, mut walk) = match (before, added) {
            (Some(before), Some(added)) if curve.loss <= most => {
                let (mut normal, mut walk) = (before.normal, before.walk);
                curve.take(&mut normal, &mut walk, added, self);
                (normal, walk)
            }
            _ => {
                curve.loss = curve.loss.clamp(least, most);
                curve.normal(self)
            }
        };
        for _ in 0..steps {
            let lowest = least.max(curve.loss / STRIDE) - curve.loss;
            let highest = most.min(curve.loss * STRIDE) - curve.loss;
            let step = normal.step(damping, lowest, highest)?;
            if normal.gain(step) <= enough * normal.variance() + NOTHING {
                break;
            }
            let mut next = curve.moved(step, self);
            next.loss = next.loss.clamp(least, most);
            let (there, there_walk) = next.normal(self);
            // Not a number is no gain either.
            if there.cost <= normal.cost {
                (curve, normal, walk) = (next, there, there_walk);
                damping = (damping * 0.1).max(1e-12);
            } else {
                damping = (damping * 10.0).min(1e6);
            }
        }
        let shape = if curve.loss <= least * BOUND {
            Shape::Straight
        } else if curve.loss * BOUND >= most {
            Shape::Step
        } else {
            Shape::Curved
        };
        Some(Fitted {
            curve,
            normal,
            walk,
            shape,
            damping,
        })
    }
}
