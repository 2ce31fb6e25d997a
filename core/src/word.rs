//! Closed lists of words: an enum, its words, and how it is written.

/// Declares an enum whose every case has a stable, language-free word.
macro_rules! words {
    ($(#[$about:meta])* $visible:vis enum $Name:ident { $($(#[$case_about:meta])* $Case:ident = $word:literal,)+ }) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[non_exhaustive]
        $visible enum $Name {
            $($(#[$case_about])* #[doc = concat!("\n\nThe word: `", $word, "`.")] $Case,)+
        }

        impl $Name {
            /// Every word with its value, in documented order.
            pub const WORDS: &'static [(&'static str, Self)] = &[$(($word, $Name::$Case),)+];

            /// Every word, in documented order.
            pub const SLUGS: &'static [&'static str] = &[$($word,)+];

            /// The stable, language-free word.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self {
                    $($Name::$Case => $word,)+
                }
            }

            /// The value of a word; `None` for any other text.
            #[must_use]
            pub fn from_slug(slug: &str) -> Option<Self> {
                Self::WORDS.iter().find(|(word, _)| *word == slug).map(|(_, value)| *value)
            }
        }

        impl serde::Serialize for $Name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.slug())
            }
        }
    };
}

pub(crate) use words;
