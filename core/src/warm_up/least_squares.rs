//! The normal equations of three unknowns, and what follows from their inverse.

/// Weighted sums over the readings: H = Σ w·g·gᵀ, its right-hand side, and what is to become small.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Normal {
    /// Twice the cost, in K².
    pub(super) cost: f64,
    /// Readings and unknowns that are held.
    count: f64,
    /// 00, 01, 02, 11, 12, 22.
    sums: [f64; 6],
    right: [f64; 3],
}

/// The smallest determinant, as a part of the product of its diagonal, that is told from nothing.
const SINGULAR: f64 = 1e-13;

impl Normal {
    /// Takes one reading in: how the curve moves with the unknowns there, its weighted residual, its weight.
    pub(super) fn add(&mut self, by: [f64; 3], residual: f64, weight: f64) {
        let [a, b, c] = by;
        let (wa, wb) = (weight * a, weight * b);
        let [aa, ab, ac, bb, bc, cc] = &mut self.sums;
        *aa += wa * a;
        *ab += wa * b;
        *ac += wa * c;
        *bb += wb * b;
        *bc += wb * c;
        *cc += weight * c * c;
        let [ra, rb, rc] = &mut self.right;
        *ra += a * residual;
        *rb += b * residual;
        *rc += c * residual;
        self.count += 1.0;
    }

    /// Leaves the heating as it is: it follows from the loss.
    pub(super) fn hold_heating(&mut self) {
        let [_, ab, _, bb, bc, _] = &mut self.sums;
        (*ab, *bb, *bc) = (0.0, 1.0, 0.0);
        let [_, right, _] = &mut self.right;
        *right = 0.0;
        self.count += 1.0;
    }

    /// The inverse by cofactors, the diagonal raised by a part of itself; `None` where there is none.
    fn inverse(&self, damping: f64) -> Option<[f64; 6]> {
        let [aa, ab, ac, bb, bc, cc] = self.sums;
        let raise = 1.0 + damping;
        let (aa, bb, cc) = (aa * raise, bb * raise, cc * raise);
        let minors = [
            bb * cc - bc * bc,
            ac * bc - ab * cc,
            ab * bc - ac * bb,
            aa * cc - ac * ac,
            ab * ac - aa * bc,
            aa * bb - ab * ab,
        ];
        let [first, second, third, ..] = minors;
        let determinant = aa * first + ab * second + ac * third;
        let is_regular = determinant > SINGULAR * aa * bb * cc;
        is_regular.then(|| minors.map(|minor| minor / determinant))
    }

    /// The step towards the smallest cost, that of the last unknown kept within `least` and `most`.
    pub(super) fn step(&self, damping: f64, least: f64, most: f64) -> Option<[f64; 3]> {
        let [aa, ab, ac, bb, bc, cc] = self.inverse(damping)?;
        let [a, b, c] = self.right;
        let last = ac * a + bc * b + cc * c;
        let kept = last.clamp(least, most);
        let off = kept - last;
        // Along this direction the others follow the last at the least cost.
        Some([
            aa * a + ab * b + ac * c + ac / cc * off,
            ab * a + bb * b + bc * c + bc / cc * off,
            kept,
        ])
    }

    /// What a step promises to take off the cost.
    pub(super) fn gain(&self, [a, b, c]: [f64; 3]) -> f64 {
        let [right_a, right_b, right_c] = self.right;
        let [aa, ab, ac, bb, bc, cc] = self.sums;
        let cross = ab * a * b + ac * a * c + bc * b * c;
        let square = aa * a * a + bb * b * b + cc * c * c + 2.0 * cross;
        2.0 * (a * right_a + b * right_b + c * right_c) - square
    }

    /// Readings more than there are unknowns to find.
    pub(super) fn freedom(&self) -> f64 {
        self.count - 3.0
    }

    /// What the readings scatter by themselves, squared; 0 where there are none to spare.
    pub(super) fn variance(&self) -> f64 {
        if self.freedom() > 0.0 {
            self.cost / self.freedom()
        } else {
            0.0
        }
    }

    /// The standard uncertainty of a number that moves with the unknowns like this.
    pub(super) fn uncertainty(&self, by: [f64; 3], variance: f64) -> Option<f64> {
        let [aa, ab, ac, bb, bc, cc] = self.inverse(0.0)?;
        let [a, b, c] = by;
        let cross = ab * a * b + ac * a * c + bc * b * c;
        let square = aa * a * a + bb * b * b + cc * c * c + 2.0 * cross;
        Some(libm::sqrt(square.max(0.0) * variance))
    }
}
