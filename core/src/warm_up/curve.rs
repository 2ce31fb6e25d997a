//! The first-order response, and how it is fitted to readings.
//!
//! dT/dt = heating − loss·T, with T in kelvin over a first reading and t in seconds after it: the temperature nears
//! heating / loss with the time constant 1 / loss. Written so, a straight line is the plain case of a small loss, and a
//! pour in between is one step of the temperature that leaves heating and loss as they are.

use super::normal::Normal;

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
#[derive(Debug, Clone, Copy)]
pub(super) struct Curve {
    /// Temperature when the first believed reading was taken, in kelvin over the first reading.
    pub(super) start: f64,
    /// Kelvin a second at the temperature of the first reading.
    pub(super) heating: f64,
    /// Part lost a second.
    pub(super) loss: f64,
}

/// A number that follows from a curve, and how it moves with start, heating and loss.
#[derive(Debug, Clone, Copy)]
pub(super) struct Told {
    pub(super) value: f64,
    pub(super) by: [f64; 3],
}

/// How far along its curve a temperature has come.
#[derive(Debug, Clone, Copy)]
struct Walk {
    at: f64,
    now: Told,
    /// The last step and what followed from it: readings are mostly taken at equal times.
    step: f64,
    left: f64,
    gained: f64,
    gained_by_loss: f64,
}

impl Walk {
    fn new(curve: &Curve, at: f64) -> Self {
        let (value, by) = (curve.start, [1.0, 0.0, 0.0]);
        Walk {
            at,
            now: Told { value, by },
            step: 0.0,
            left: 1.0,
            gained: 0.0,
            gained_by_loss: 0.0,
        }
    }

    fn to(&mut self, curve: &Curve, at: f64) {
        let step = at - self.at;
        if step <= 0.0 {
            return;
        }
        if step != self.step {
            let lost = -libm::expm1(-curve.loss * step);
            self.step = step;
            self.left = 1.0 - lost;
            self.gained = lost / curve.loss;
            self.gained_by_loss = (step * self.left - self.gained) / curve.loss;
        }
        let Told {
            value,
            by: [by_start, by_heating, by_loss],
        } = self.now;
        let value = self.left * value;
        self.now = Told {
            value: value + curve.heating * self.gained,
            by: [
                self.left * by_start,
                self.left * by_heating + self.gained,
                self.left * by_loss - step * value + curve.heating * self.gained_by_loss,
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
#[derive(Debug, Clone, Copy)]
pub(super) struct Fitted {
    pub(super) curve: Curve,
    pub(super) normal: Normal,
    /// The temperature at the last reading or pour.
    pub(super) last: Told,
    pub(super) shape: Shape,
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

    /// The normal equations of the readings at this curve.
    ///
    /// With a scatter c a residual r counts as 2c²(√(1 + (r/c)²) − 1), known as soft L1: as r² where it is small, as its
    /// size where it is large.
    fn normal(&self, task: &Task<'_>) -> (Normal, Told) {
        let begins = task.believed().next().map_or(0.0, |point| point.at);
        let mut walk = Walk::new(self, begins);
        let mut stirs = task.stirs.iter().peekable();
        while stirs.next_if(|stir| stir.at < begins).is_some() {}
        let mut normal = Normal::default();
        for point in task.believed() {
            while let Some(stir) = stirs.next_if(|stir| stir.at <= point.at) {
                walk.to(self, stir.at);
                walk.stir(stir);
            }
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
        for stir in stirs {
            walk.to(self, stir.at);
            walk.stir(stir);
        }
        if let Some(end) = task.asymptote {
            walk.now.by = held(walk.now.by, end);
            normal.pin(1);
        }
        (normal, walk.now)
    }

    /// The curve a step further, its loss within bounds.
    fn moved(&self, [start, heating, loss]: [f64; 3], task: &Task<'_>, bounds: [f64; 2]) -> Self {
        let [least, most] = bounds;
        let loss = (self.loss + loss).clamp(least, most);
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

    /// The curve nearest to the readings, by Levenberg and Marquardt's steps from `from` on, at most `steps` of them.
    ///
    /// It ends early once a step gains less than `enough`, a part of the variance. `None` where the readings do not
    /// settle the three numbers.
    pub(super) fn fitted(&self, from: Option<Curve>, steps: u32, enough: f64) -> Option<Fitted> {
        let (first, last) = self.ends();
        if last.at <= first.at {
            return None;
        }
        let bounds = LOSS_OVER_SPAN.map(|bound| bound / (last.at - first.at));
        let [least, most] = bounds;
        let mut curve = from
            .unwrap_or_else(|| self.guess())
            .moved([0.0; 3], self, bounds);
        let (mut normal, mut last) = curve.normal(self);
        let mut damping = if from.is_some() { 1e-6 } else { 1e-3 };
        for _ in 0..steps {
            let mut step = normal.step(damping)?;
            let [_, _, outward] = step;
            if (curve.loss <= least && outward < 0.0) || (curve.loss >= most && outward > 0.0) {
                let mut bound = normal;
                bound.pin(2);
                step = bound.step(damping)?;
            }
            let gain = normal.gain(step);
            let next = curve.moved(step, self, bounds);
            let (there, there_last) = next.normal(self);
            // Not a number is no gain either.
            if there.cost <= normal.cost {
                (curve, normal, last) = (next, there, there_last);
                damping *= 0.1;
                if gain <= enough * normal.variance() + 1e-18 {
                    break;
                }
            } else {
                if gain <= enough * normal.variance() + 1e-18 || damping > 1e12 {
                    break;
                }
                damping *= 10.0;
            }
        }
        let shape = if curve.loss <= least {
            Shape::Straight
        } else if curve.loss >= most {
            Shape::Step
        } else {
            Shape::Curved
        };
        Some(Fitted {
            curve,
            normal,
            last,
            shape,
        })
    }
}
