//! The units: one row each, with the exact factor from its definition, its symbol, codes and spellings.

use super::definition::{
    CELSIUS_ZERO, CUBIC_INCH, FAHRENHEIT_ZERO, IMPERIAL_GALLON, INCH, KILOGRAM_FORCE_METRE,
    MILLILITRE, NEWTON, NEWTON_METRE, PASCAL, POUND, POUND_FORCE_E_13, POUND_FORCE_FOOT,
    POUND_PER_SQUARE_INCH, SQUARE_INCH, US_GALLON,
};
use super::divisor::Divisor;
use super::kind::Kind;

/// What is fixed for a unit.
pub(super) struct Row {
    kind: Kind,
    symbol: &'static str,
    ucum: &'static str,
    rec20: &'static str,
    quanta: u64,
    offset: i64,
    divisor: Divisor,
    /// Spellings in normal form, read in capital and small letters alike.
    pub(super) any_case: &'static [&'static str],
    /// Spellings whose capitals count.
    pub(super) exact_case: &'static [&'static str],
}

/// Steps of a quantum in which conversion works: hundredths where zeros differ, so that they are whole.
pub(super) const fn steps_in_quantum(kind: Kind) -> u64 {
    if matches!(kind, Kind::Temperature) {
        100
    } else {
        1
    }
}

macro_rules! units {
    ($(
        #[doc = $doc:literal]
        $name:ident = $code:literal: $kind:ident $symbol:literal, $ucum:literal, $rec20:literal,
        $quanta:expr, $offset:expr, [$($any:literal)*] [$($exact:literal)*];
    )*) => {
        /// A unit of measure, with a number that never changes and is never reused.
        ///
        /// Definitions: 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s²,
        /// 1 US gal = 231 in³ (NIST SP 811, appendix B.8), 1 imp gal = 4.546 09 L (same place).
        ///
        /// ```
        /// use brimline::Unit;
        /// let unit = Unit::parse("ft-lb")?;
        /// assert_eq!(unit, Unit::PoundForceFoot);
        /// assert_eq!(unit.symbol(), "lbf·ft");
        /// assert_eq!(unit.ucum(), "[lbf_av].[ft_i]");
        /// assert_eq!(unit.rec20(), Some("M92"));
        /// # Ok::<(), brimline::Error>(())
        /// ```
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[repr(u16)]
        #[non_exhaustive]
        pub enum Unit { $( #[doc = $doc] $name = $code, )* }

        impl Unit {
            /// Every unit, in order of number.
            pub const ALL: &'static [Unit] = &[$( Unit::$name, )*];

            #[inline]
            pub(super) const fn row(self) -> &'static Row {
                match self { $( Unit::$name => const { &Row {
                    kind: Kind::$kind,
                    symbol: $symbol,
                    ucum: $ucum,
                    rec20: $rec20,
                    quanta: $quanta,
                    offset: $offset,
                    divisor: Divisor::of($quanta * steps_in_quantum(Kind::$kind)),
                    any_case: &[$($any),*],
                    exact_case: &[$($exact),*],
                } }, )* }
            }
        }
    };
}

// number: kind, symbol, UCUM, UN/ECE Recommendation 20 ("" where it has none), quanta, zero from absolute
// zero, spellings in any case, spellings in this case only. The codes were compared with published copies of
// the two lists.
units! {
    /// Litre.
    Litre = 1: Volume "L", "L", "LTR", 1_000 * MILLILITRE, 0,
        ["l" "ltr" "ltrs" "lit" "litre" "litres" "liter" "liters"] [];
    /// Millilitre.
    Millilitre = 2: Volume "mL", "mL", "MLT", MILLILITRE, 0,
        ["millilitre" "millilitres" "milliliter" "milliliters"] ["mL" "ml"];
    /// Cubic centimetre, the size of a millilitre.
    CubicCentimetre = 3: Volume "cm³", "cm3", "CMQ", MILLILITRE, 0,
        ["cm3" "cc" "ccs" "ccm" "cu.cm" "cubic.centimetre" "cubic.centimetres" "cubic.centimeter" "cubic.centimeters"] [];
    /// Cubic metre.
    CubicMetre = 4: Volume "m³", "m3", "MTQ", 1_000_000 * MILLILITRE, 0,
        ["cu.m" "cubic.metre" "cubic.metres" "cubic.meter" "cubic.meters"] ["m3"];
    /// Cubic inch.
    CubicInch = 5: Volume "in³", "[cin_i]", "INQ", CUBIC_INCH, 0,
        ["in3" "cu.in" "cuin" "cu.ins" "cu.inch" "cu.inches" "cubic.in" "cubic.inch" "cubic.inches"] [];
    /// United States gallon, 231 in³.
    UsGallon = 6: Volume "US gal", "[gal_us]", "GLL", US_GALLON, 0, ["us.gal" "usgal"] [];
    /// United States liquid quart, a quarter of a gallon.
    UsQuart = 7: Volume "US qt", "[qt_us]", "QTL", US_GALLON / 4, 0, ["us.qt" "usqt"] [];
    /// United States liquid pint, an eighth of a gallon.
    UsPint = 8: Volume "US pt", "[pt_us]", "PTL", US_GALLON / 8, 0, ["us.pt" "uspt"] [];
    /// United States fluid ounce, 1/128 of a gallon.
    UsFluidOunce = 9: Volume "US fl oz", "[foz_us]", "OZA", US_GALLON / 128, 0, ["us.fl.oz" "usfloz"] [];
    /// Imperial gallon, 4.54609 L.
    ImperialGallon = 10: Volume "imp gal", "[gal_br]", "GLI", IMPERIAL_GALLON, 0, ["imp.gal" "impgal"] [];
    /// Imperial quart, a quarter of a gallon.
    ImperialQuart = 11: Volume "imp qt", "[qt_br]", "QTI", IMPERIAL_GALLON / 4, 0, ["imp.qt" "impqt"] [];
    /// Imperial pint, an eighth of a gallon.
    ImperialPint = 12: Volume "imp pt", "[pt_br]", "PTI", IMPERIAL_GALLON / 8, 0, ["imp.pt" "imppt"] [];
    /// Imperial fluid ounce, 1/160 of a gallon.
    ImperialFluidOunce = 13: Volume "imp fl oz", "[foz_br]", "OZI", IMPERIAL_GALLON / 160, 0, ["imp.fl.oz" "impfloz"] [];

    /// Newton metre.
    NewtonMetre = 14: Torque "N·m", "N.m", "NU", NEWTON_METRE, 0,
        ["n.m" "newton.metre" "newton.metres" "newton.meter" "newton.meters"
         "newtonmetre" "newtonmetres" "newtonmeter" "newtonmeters"] ["Nm"];
    /// Newton centimetre.
    NewtonCentimetre = 15: Torque "N·cm", "N.cm", "F88", NEWTON_METRE / 100, 0,
        ["n.cm" "ncm" "newton.centimetre" "newton.centimetres" "newton.centimeter" "newton.centimeters"] [];
    /// Pound-force foot.
    PoundForceFoot = 16: Torque "lbf·ft", "[lbf_av].[ft_i]", "M92", POUND_FORCE_FOOT, 0,
        ["lbf.ft" "ft.lbf" "lb.ft" "lbs.ft" "ft.lb" "ft.lbs" "lbft" "ftlb" "ftlbs" "ftlbf" "lbfft"
         "foot.pound" "foot.pounds" "pound.foot" "pound.feet" "pounds.foot" "pounds.feet" "foot.lb" "foot.lbs"
         "ft.pound" "ft.pounds" "lb.feet" "lbf.feet" "foot.pound.force" "pound.force.foot" "pound.force.feet"] [];
    /// Pound-force inch, a twelfth of a pound-force foot.
    PoundForceInch = 17: Torque "lbf·in", "[lbf_av].[in_i]", "F21", POUND_FORCE_FOOT / 12, 0,
        ["lbf.in" "in.lbf" "lb.in" "lbs.in" "in.lb" "in.lbs" "lbin" "inlb" "inlbs" "inlbf" "lbfin"
         "inch.pound" "inch.pounds" "pound.inch" "pound.inches" "pounds.inch" "inch.lb" "inch.lbs"
         "in.pound" "in.pounds" "lb.inch" "lbf.inch" "inch.pound.force" "pound.force.inch" "pound.force.inches"] [];
    /// Ounce-force inch, a sixteenth of a pound-force inch.
    OunceForceInch = 18: Torque "ozf·in", "[oz_av].[g].[in_i]", "L41", POUND_FORCE_FOOT / 192, 0,
        ["ozf.in" "in.ozf" "oz.in" "in.oz" "ozin" "inoz" "ounce.inch" "ounce.inches" "inch.ounce" "inch.ounces"
         "ounce.force.inch" "ounce.force.inches"] [];
    /// Kilogram-force metre.
    KilogramForceMetre = 19: Torque "kgf·m", "kgf.m", "B38", KILOGRAM_FORCE_METRE, 0,
        ["kgf.m" "m.kgf" "kgfm" "kp.m" "kpm" "kilogram.force.metre" "kilogram.force.metres"
         "kilogram.force.meter" "kilogram.force.meters"] [];
    /// Kilogram-force centimetre.
    KilogramForceCentimetre = 20: Torque "kgf·cm", "kgf.cm", "", KILOGRAM_FORCE_METRE / 100, 0,
        ["kgf.cm" "cm.kgf" "kgfcm" "kp.cm" "kilogram.force.centimetre" "kilogram.force.centimetres"
         "kilogram.force.centimeter" "kilogram.force.centimeters"] [];

    /// Kilogram.
    Kilogram = 21: Mass "kg", "kg", "KGM", 100_000_000, 0,
        ["kg" "kgs" "kilo" "kilos" "kilogram" "kilograms" "kilogramme" "kilogrammes"] [];
    /// Gram.
    Gram = 22: Mass "g", "g", "GRM", 100_000, 0, ["gram" "grams" "gramme" "grammes"] ["g"];
    /// Avoirdupois pound, 0.45359237 kg.
    Pound = 23: Mass "lb", "[lb_av]", "LBR", POUND, 0, ["lb" "lbs" "lbm" "pound" "pounds"] [];

    /// Kilometre.
    Kilometre = 24: Length "km", "km", "KMT", 10_000_000_000, 0,
        ["km" "kms" "kilometre" "kilometres" "kilometer" "kilometers"] [];
    /// International mile, 1609.344 m.
    Mile = 25: Length "mi", "[mi_i]", "SMI", 63_360 * INCH, 0, ["mi" "mile" "miles"] [];
    /// Metre.
    Metre = 26: Length "m", "m", "MTR", 10_000_000, 0, ["metre" "metres" "meter" "meters"] ["m"];
    /// Millimetre.
    Millimetre = 27: Length "mm", "mm", "MMT", 10_000, 0,
        ["millimetre" "millimetres" "millimeter" "millimeters"] ["mm"];
    /// Inch, 25.4 mm.
    Inch = 28: Length "in", "[in_i]", "INH", INCH, 0, ["in" "ins" "inch" "inches"] [];

    /// Square metre.
    SquareMetre = 29: Area "m²", "m2", "MTK", 100_000_000, 0,
        ["sq.m" "sqm" "square.metre" "square.metres" "square.meter" "square.meters"] ["m2"];
    /// Square centimetre.
    SquareCentimetre = 30: Area "cm²", "cm2", "CMK", 10_000, 0,
        ["cm2" "sq.cm" "sqcm" "square.centimetre" "square.centimetres" "square.centimeter" "square.centimeters"] [];
    /// Square inch.
    SquareInch = 31: Area "in²", "[sin_i]", "INK", SQUARE_INCH, 0,
        ["in2" "sq.in" "sqin" "square.in" "square.inch" "square.inches"] [];

    /// Kelvin.
    Kelvin = 32: Temperature "K", "K", "KEL", 9, 0, ["kelvin" "kelvins" "degk" "deg.k"] ["K"];
    /// Degree Celsius as a point on the scale.
    DegreeCelsius = 33: Temperature "°C", "Cel", "CEL", 9, CELSIUS_ZERO,
        ["degc" "deg.c" "celsius" "centigrade" "degcelsius" "deg.celsius" "degree.celsius" "degrees.celsius"
         "degree.c" "degrees.c"] ["C"];
    /// Degree Fahrenheit as a point on the scale.
    DegreeFahrenheit = 34: Temperature "°F", "[degF]", "FAH", 5, FAHRENHEIT_ZERO,
        ["degf" "deg.f" "fahrenheit" "degfahrenheit" "deg.fahrenheit" "degree.fahrenheit" "degrees.fahrenheit"
         "degree.f" "degrees.f"] ["F"];
    /// Difference of one degree Celsius, or of one kelvin.
    CelsiusDifference = 35: TemperatureDifference "Δ°C", "K", "KEL", 9, 0,
        ["deltadegc" "delta.degc" "deltadeg.c" "delta.deg.c" "deltac" "delta.c" "deltak" "delta.k"] [];
    /// Difference of one degree Fahrenheit, 5/9 K.
    FahrenheitDifference = 36: TemperatureDifference "Δ°F", "5.K/9", "", 5, 0,
        ["deltadegf" "delta.degf" "deltadeg.f" "delta.deg.f" "deltaf" "delta.f"] [];

    /// Kilopascal above the surrounding air.
    Kilopascal = 37: Pressure "kPa", "kPa", "KPA", 1_000 * PASCAL, 0,
        ["kpa" "kpag" "kpa.g" "kpa.gauge" "kilopascal" "kilopascals"] [];
    /// Bar above the surrounding air.
    Bar = 38: Pressure "bar", "bar", "BAR", 100_000 * PASCAL, 0, ["bar" "bars" "barg" "bar.g" "bar.gauge"] [];
    /// Pound-force per square inch above the surrounding air.
    PoundPerSquareInch = 39: Pressure "psi", "[psi]", "PS", POUND_PER_SQUARE_INCH, 0,
        ["psi" "psig" "psi.g" "psi.gauge" "lbf/in2" "lb/in2" "lbs/in2" "lb/sq.in" "pounds.per.square.inch"] [];
    /// Kilopascal above vacuum.
    KilopascalAbsolute = 40: AbsolutePressure "kPa abs", "kPa{absolute}", "", 1_000 * PASCAL, 0,
        ["kpa.abs" "kpaa" "kpa.a" "kpaabs" "kpa.absolute" "kilopascals.absolute"] [];
    /// Pound-force per square inch above vacuum.
    PoundPerSquareInchAbsolute = 41: AbsolutePressure "psi abs", "[psi]{absolute}", "80", POUND_PER_SQUARE_INCH, 0,
        ["psi.abs" "psia" "psi.a" "psiabs" "psi.absolute" "pounds.per.square.inch.absolute"] [];

    /// Degree of plane angle.
    Degree = 42: Angle "deg", "deg", "DD", 1, 0, ["deg" "degs" "degree" "degrees"] [];

    /// Second.
    Second = 43: Time "s", "s", "SEC", 1, 0, ["sec" "secs" "second" "seconds"] ["s"];
    /// Minute.
    Minute = 44: Time "min", "min", "MIN", 60, 0, ["min" "mins" "minute" "minutes"] [];
    /// Hour.
    Hour = 45: Time "h", "h", "HUR", 3_600, 0, ["hr" "hrs" "hour" "hours"] ["h"];

    /// Kilogram per cubic metre, the size of a gram per litre.
    KilogramPerCubicMetre = 46: Density "kg/m³", "kg/m3", "KMQ", 1, 0,
        ["kg/m3" "kg.per.m3" "kilogram.per.cubic.metre" "kilograms.per.cubic.metre"
         "kilogram.per.cubic.meter" "kilograms.per.cubic.meter"] ["g/L" "g/l"];
    /// Gram per millilitre, the size of a kilogram per litre.
    GramPerMillilitre = 47: Density "g/mL", "g/mL", "GJ", 1_000, 0,
        ["g/cm3" "g/cc" "g/ccm" "kg/l" "kg/dm3" "gram.per.millilitre" "grams.per.millilitre"
         "gram.per.milliliter" "grams.per.milliliter"] ["g/mL" "g/ml"];

    /// Square millimetre per second, the size of a centistokes.
    SquareMillimetrePerSecond = 48: KinematicViscosity "mm²/s", "mm2/s", "C17", 1, 0,
        ["cst" "csts" "centistoke" "centistokes" "square.millimetre.per.second" "square.millimetres.per.second"
         "square.millimeter.per.second" "square.millimeters.per.second"] ["mm2/s" "mm2/sec"];

    /// Millilitre per second.
    MillilitrePerSecond = 49: VolumeFlow "mL/s", "mL/s", "40", 3, 0,
        ["cm3/s" "cc/s" "cc/sec" "cm3/sec" "millilitre.per.second" "millilitres.per.second"
         "milliliter.per.second" "milliliters.per.second"] ["mL/s" "ml/s" "mL/sec" "ml/sec"];
    /// Litre per minute.
    LitrePerMinute = 50: VolumeFlow "L/min", "L/min", "L2", 50, 0,
        ["l/min" "lpm" "l.per.min" "litre.per.minute" "litres.per.minute" "liter.per.minute" "liters.per.minute"] [];

    /// Decinewton metre, on older prints.
    DecinewtonMetre = 51: Torque "dN·m", "dN.m", "DN", NEWTON_METRE / 10, 0,
        ["dn.m" "decinewton.metre" "decinewton.metres" "decinewton.meter" "decinewton.meters"] ["dNm"];

    /// The number itself. Where a ratio is meant, a number alone is read as one.
    One = 52: Ratio "ratio", "1", "C62", 100, 0, ["ratio" "one"] [];
    /// A hundredth.
    Percent = 53: Ratio "%", "%", "P1", 1, 0, ["%" "percent" "per.cent" "pct"] [];

    /// Newton.
    Newton = 54: Force "N", "N", "NEW", NEWTON, 0, ["newton" "newtons"] ["N"];
    /// Kilonewton.
    Kilonewton = 55: Force "kN", "kN", "B47", 1_000 * NEWTON, 0, ["kilonewton" "kilonewtons"] ["kN"];
    /// Pound-force.
    PoundForce = 56: Force "lbf", "[lbf_av]", "C78", POUND_FORCE_E_13, 0, ["lbf" "pound.force" "pounds.force"] [];

    /// Per kelvin, or per degree Celsius.
    PerKelvin = 57: Expansion "per K", "/K", "C91", 5, 0, ["/k" "/degc" "per.k" "per.kelvin" "per.degc" "per.deg.c"] [];
    /// Per degree Fahrenheit.
    PerFahrenheit = 58: Expansion "per °F", "/[degF]", "J26", 9, 0, ["/degf" "per.degf" "per.deg.f" "per.fahrenheit"] [];

    /// Square millimetre.
    SquareMillimetre = 59: Area "mm²", "mm2", "MMK", 100, 0,
        ["mm2" "sq.mm" "sqmm" "square.millimetre" "square.millimetres" "square.millimeter" "square.millimeters"] [];
}

impl Unit {
    /// The number that crosses the C border.
    ///
    /// ```
    /// # use brimline::Unit;
    /// assert_eq!(Unit::from_code(Unit::Litre.code()), Some(Unit::Litre));
    /// ```
    #[must_use]
    pub const fn code(self) -> u16 {
        self as u16
    }

    /// The unit of this number; `None` where no unit has it.
    ///
    /// ```
    /// # use brimline::Unit;
    /// assert_eq!(Unit::from_code(7), Some(Unit::UsQuart));
    /// assert_eq!(Unit::from_code(0), None);
    /// ```
    #[must_use]
    pub fn from_code(code: u16) -> Option<Self> {
        Unit::ALL.get(usize::from(code).checked_sub(1)?).copied()
    }

    /// The kind of quantity it measures.
    ///
    /// ```
    /// # use brimline::{Kind, Unit};
    /// assert_eq!(Unit::Bar.kind(), Kind::Pressure);
    /// ```
    #[must_use]
    #[inline]
    pub const fn kind(self) -> Kind {
        self.row().kind
    }

    /// The canonical symbol, the one that is printed.
    ///
    /// ```
    /// # use brimline::Unit;
    /// assert_eq!(Unit::SquareMillimetrePerSecond.symbol(), "mm²/s");
    /// ```
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// The code of the Unified Code for Units of Measure, case-sensitive form.
    ///
    /// Where that code has no unit for a kind of ours the nearest expression stands: a difference of
    /// temperatures in kelvin, an absolute pressure with an annotation.
    ///
    /// ```
    /// # use brimline::Unit;
    /// assert_eq!(Unit::ImperialQuart.ucum(), "[qt_br]");
    /// ```
    #[must_use]
    pub const fn ucum(self) -> &'static str {
        self.row().ucum
    }

    /// The common code of UN/ECE Recommendation 20; `None` where it has none.
    ///
    /// ```
    /// # use brimline::Unit;
    /// assert_eq!(Unit::UsQuart.rec20(), Some("QTL"));
    /// assert_eq!(Unit::KilogramForceCentimetre.rec20(), None);
    /// ```
    #[must_use]
    pub const fn rec20(self) -> Option<&'static str> {
        let code = self.row().rec20;
        if code.is_empty() { None } else { Some(code) }
    }

    /// Quanta of the kind in one of the unit.
    #[inline]
    pub(super) const fn quanta(self) -> u64 {
        self.row().quanta
    }

    /// The zero of a temperature scale in billionths of a quantum above absolute zero; 0 elsewhere.
    #[inline]
    pub(super) const fn offset(self) -> i64 {
        self.row().offset
    }

    /// The same in whole quanta and billionths of one.
    #[inline]
    pub(super) const fn zero(self) -> (i64, u32) {
        (
            self.row().offset / 1_000_000_000,
            (self.row().offset % 1_000_000_000) as u32,
        )
    }

    /// Its quanta as a divisor, for temperatures in hundredths of a quantum.
    #[inline]
    pub(super) const fn divisor(self) -> Divisor {
        self.row().divisor
    }

    /// The unit of a difference of two values in this unit.
    pub(super) const fn of_difference(self) -> Unit {
        match self {
            Unit::Kelvin | Unit::DegreeCelsius => Unit::CelsiusDifference,
            Unit::DegreeFahrenheit => Unit::FahrenheitDifference,
            other => other,
        }
    }
}
