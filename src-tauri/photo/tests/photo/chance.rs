//! Random damage: never a panic, always a photo or a sentence.

use std::sync::LazyLock;

use panside_photo::{Limits, take_in};
use proptest::collection::vec;
use proptest::prelude::*;

use crate::camera::{self, Style, picture, talkative_jpeg, talkative_png};

static PHOTOS: LazyLock<Result<Vec<Vec<u8>>, String>> = LazyLock::new(|| {
    let picture = picture(56, 40);
    let styles = [Style::Sequential, Style::Restarting, Style::Progressive];
    let jpegs = styles.iter().map(|style| talkative_jpeg(&picture, *style));
    jpegs.chain([talkative_png(&picture)]).collect::<camera::Result<_>>().map_err(|error| error.to_string())
});

/// One of four whole photos.
fn photo(which: usize) -> Result<&'static [u8], TestCaseError> {
    match &*PHOTOS {
        Ok(photos) => Ok(&photos[which]),
        Err(error) => Err(TestCaseError::fail(error.clone())),
    }
}

/// Small, so that a flipped size can't make a case slow.
const LIMITS: Limits = Limits { bytes: 100_000, memory: 60_000_000, side: 4_000 };

/// Takes in a damaged file: a sentence, or a photo that holds together.
fn holds_together(file: &[u8]) -> Result<(), TestCaseError> {
    match take_in(file, &LIMITS) {
        Ok(photo) => {
            let again = take_in(&photo.kept, &LIMITS);
            prop_assert_eq!(again.ok(), Some(photo));
        }
        Err(error) => {
            let text = error.to_string();
            prop_assert!(text.contains("Take the photo again") && text.starts_with("The "), "{}", text);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, ..ProptestConfig::default() })]

    #[test]
    fn flipped_bits(which in 0..4_usize, flips in vec((any::<prop::sample::Index>(), 0..8_u8), 1..6)) {
        let mut file = photo(which)?.to_vec();
        for (at, bit) in flips {
            let at = at.index(file.len());
            file[at] ^= 1 << bit;
        }
        holds_together(&file)?;
    }

    #[test]
    fn flipped_bits_in_the_headers(which in 0..4_usize, flips in vec((2..700_usize, 0..8_u8), 1..4)) {
        let mut file = photo(which)?.to_vec();
        for (at, bit) in flips {
            file[at] ^= 1 << bit;
        }
        holds_together(&file)?;
    }

    #[test]
    fn cut_anywhere(which in 0..4_usize, at in any::<prop::sample::Index>()) {
        let file = photo(which)?;
        holds_together(&file[..at.index(file.len())])?;
    }

    #[test]
    fn a_piece_missing_or_doubled(
        which in 0..4_usize, a in any::<prop::sample::Index>(), b in any::<prop::sample::Index>(), double in any::<bool>()
    ) {
        let file = photo(which)?;
        let (a, b) = (a.index(file.len()), b.index(file.len()));
        let (first, second) = if double { (a.max(b), a.min(b)) } else { (a.min(b), a.max(b)) };
        holds_together(&[&file[..first], &file[second..]].concat())?;
    }

    #[test]
    fn noise_behind_a_magic_number(png in any::<bool>(), noise in vec(any::<u8>(), 0..300)) {
        let magic: &[u8] = if png { b"\x89PNG\r\n\x1a\n" } else { b"\xFF\xD8\xFF" };
        holds_together(&[magic, &noise].concat())?;
        holds_together(&noise)?;
    }
}
