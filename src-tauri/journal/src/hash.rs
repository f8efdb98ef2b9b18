//! SHA-256 (FIPS 180-4) as a value: 32 bytes in memory and on disk, 64 lower-case hex digits in text.

use std::fmt;
use std::str::FromStr;

use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Error as _, Serialize, Serializer};
use sha2::{Digest, Sha256};

use ts_rs::TS;

use crate::JournalError;

/// A SHA-256 hash of an event's header, a body, a document or a photo.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, TS)]
#[ts(as = "String")]
pub struct Hash(pub [u8; 32]);

const DIGITS: &[u8; 16] = b"0123456789abcdef";

impl Hash {
    /// Stands where there is no event before. No event is known that hashes to it.
    pub const NONE: Hash = Hash([0; 32]);

    /// The hash of these bytes as they are.
    pub fn of(bytes: &[u8]) -> Hash {
        Hash(Sha256::digest(bytes).into())
    }

    /// The hash of these bytes under a domain: a text that says what kind of thing is hashed, then a zero byte.
    /// So bytes of one kind can't be passed for bytes of another.
    pub fn of_domain(domain: &str, bytes: &[u8]) -> Hash {
        Hash(Sha256::new().chain_update(domain).chain_update([0]).chain_update(bytes).finalize().into())
    }

    /// The 64 digits.
    pub(crate) fn hex(&self) -> [u8; 64] {
        std::array::from_fn(|place| {
            let byte = self.0[place / 2];
            DIGITS[usize::from(if place % 2 == 0 { byte >> 4 } else { byte & 15 })]
        })
    }
}

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Hash {
    type Err = JournalError;

    /// Reads 64 lower-case hex digits. Capitals are refused: one hash has one spelling.
    fn from_str(text: &str) -> Result<Hash, JournalError> {
        let refused = || JournalError::HashText { text: text.to_owned() };
        let digit = |c: u8| DIGITS.iter().position(|d| *d == c).ok_or_else(refused);
        if text.len() != 64 {
            return Err(refused());
        }
        let mut bytes = [0; 32];
        for (byte, pair) in bytes.iter_mut().zip(text.as_bytes().chunks_exact(2)) {
            *byte = (digit(pair[0])? << 4 | digit(pair[1])?) as u8;
        }
        Ok(Hash(bytes))
    }
}

impl Serialize for Hash {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(std::str::from_utf8(&self.hex()).map_err(S::Error::custom)?)
    }
}

impl<'de> Deserialize<'de> for Hash {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Hash, D::Error> {
        struct Hex;
        impl Visitor<'_> for Hex {
            type Value = Hash;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("64 lower-case hex digits")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Hash, E> {
                text.parse().map_err(E::custom)
            }
        }
        deserializer.deserialize_str(Hex)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The example messages of FIPS 180 (as NIST publishes them with FIPS 180-4), recomputed with Python hashlib.
    #[test]
    fn sha256_gives_the_published_values() {
        let million = vec![b'a'; 1_000_000];
        let vectors: [(&[u8], &str); 4] = [
            (b"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
            (b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
            (
                b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
            (&million, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"),
        ];
        for (message, expected) in vectors {
            assert_eq!(Hash::of(message).to_string(), expected);
        }
    }

    #[test]
    fn a_hash_reads_back_from_its_text_and_from_json() {
        let hash = Hash::of(b"abc");
        assert_eq!(hash.to_string().parse::<Hash>().unwrap(), hash);
        let json = serde_json::to_string(&hash).unwrap();
        assert_eq!(json, "\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\"");
        assert_eq!(serde_json::from_str::<Hash>(&json).unwrap(), hash);
    }

    #[test]
    fn other_spellings_of_a_hash_are_refused() {
        let good = Hash::of(b"abc").to_string();
        for bad in [good.to_uppercase(), good[1..].to_owned(), format!("{good}0"), good.replace('b', "g")] {
            assert!(bad.parse::<Hash>().is_err(), "{bad}");
        }
    }

    #[test]
    fn the_domain_separates() {
        assert_eq!(Hash::of_domain("a", b"b"), Hash::of(b"a\0b"));
        assert_ne!(Hash::of_domain("a", b"b"), Hash::of_domain("c", b"b"));
    }
}
