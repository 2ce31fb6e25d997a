//! The one shape of a typed calculator: amounts in, then what else it is told, then answers out.

/// Does the work of one call. The amounts that must be there stand in the brackets, after a semicolon those that NULL
/// leaves out; then comes what is answered, and what of it goes to which output.
///
/// Outputs are looked at before the work, and written after it, all or none. To be used in the functions of the border
/// only: what it reads and writes are the caller's pointers.
macro_rules! reckon {
    ($error:ident, [$($given:ident),* $(; $($maybe:ident),+)?], $out:ident = $work:expr) => {
        reckon!($error, [$($given),* $(; $($maybe),+)?], answer = $work; $out = answer)
    };
    ($error:ident, [$($given:ident),* $(; $($maybe:ident),+)?], $answer:ident = $work:expr; $($out:ident = $told:expr),+) => {
        $crate::guard::answer($error, || {
            // SAFETY: pointers as the header asks.
            $(let $given = unsafe { $crate::amount::amount($given, stringify!($given))? };)*
            // SAFETY: the same.
            $($(let $maybe = unsafe { $crate::amount::amount_if($maybe, stringify!($maybe))? };)+)?
            // SAFETY: the same.
            $(let $out = unsafe { $crate::text::out($out, stringify!($out))? };)+
            let $answer = $work;
            $(let $out = ($out, $told);)+
            $($out.0.put($out.1.into());)+
            Ok(())
        })
    };
}

pub(crate) use reckon;
