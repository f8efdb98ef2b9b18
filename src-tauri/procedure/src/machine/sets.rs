//! Sets of steps and of dangers.

use super::{DangerIx, StepIx};

/// Words in a set.
const WORDS: usize = 4;

macro_rules! set {
    ($($(#[$doc:meta])* $name:ident of $index:ident),*) => {$(
        $(#[$doc])*
        ///
        /// Always four words: the proofs of the shipped checklists took as long with four as with one, so that nothing is
        /// gained by touching only as many as a checklist needs.
        #[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash)]
        pub struct $name(pub(super) [u64; WORDS]);

        impl $name {
            /// The most that a set can hold.
            pub const MOST: usize = WORDS * 64;

            /// Nothing.
            pub const NONE: Self = Self([0; WORDS]);

            /// All there can be.
            pub const ALL: Self = Self([u64::MAX; WORDS]);

            /// Puts one in. Loading refuses what there is no room for.
            #[inline]
            pub fn insert(&mut self, one: $index) {
                if let Some(word) = self.0.get_mut(one.at() / 64) {
                    *word |= 1 << (one.at() % 64);
                }
            }

            /// Whether it is in it.
            #[inline]
            #[must_use]
            pub fn contains(&self, one: $index) -> bool {
                self.0.get(one.at() / 64).is_some_and(|word| word >> (one.at() % 64) & 1 == 1)
            }

            /// What is in it, in file order.
            #[inline]
            pub fn iter(&self) -> impl Iterator<Item = $index> + use<> {
                let words = self.0.into_iter().enumerate();
                words.flat_map(|(word, mut bits)| {
                    std::iter::from_fn(move || {
                        let at = (bits != 0).then(|| word * 64 + bits.trailing_zeros() as usize)?;
                        bits &= bits - 1;
                        Some($index::of(at))
                    })
                })
            }

            /// Whether nothing is in it.
            #[inline]
            #[must_use]
            pub fn is_empty(&self) -> bool {
                self.0.iter().fold(0, |all, word| all | word) == 0
            }
        }

        impl std::ops::BitOrAssign for $name {
            #[inline]
            fn bitor_assign(&mut self, other: Self) {
                self.0.iter_mut().zip(other.0).for_each(|(word, other)| *word |= other);
            }
        }

        impl std::ops::BitOr for $name {
            type Output = Self;

            #[inline]
            fn bitor(mut self, other: Self) -> Self {
                self |= other;
                self
            }
        }

        impl std::ops::BitAnd for $name {
            type Output = Self;

            #[inline]
            fn bitand(mut self, other: Self) -> Self {
                self.0.iter_mut().zip(other.0).for_each(|(word, other)| *word &= other);
                self
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;

            #[inline]
            fn sub(mut self, other: Self) -> Self {
                self.0.iter_mut().zip(other.0).for_each(|(word, other)| *word &= !other);
                self
            }
        }

        impl FromIterator<$index> for $name {
            fn from_iter<I: IntoIterator<Item = $index>>(all: I) -> Self {
                let mut set = Self::NONE;
                all.into_iter().for_each(|one| set.insert(one));
                set
            }
        }
    )*};
}

set!(
    /// A set of steps.
    StepSet of StepIx,
    /// A set of dangers.
    DangerSet of DangerIx
);
