//! The languages, and the files of their sentences.

use std::borrow::Cow;

/// The English sentences, one file a crate.
pub(crate) const ENGLISH: &[(&str, &str)] = &[
    ("messages", include_str!("../en/messages.ftl")),
    ("trade", include_str!("../en/trade.ftl")),
    ("procedure", include_str!("../en/procedure.ftl")),
    ("journal", include_str!("../en/journal.ftl")),
    ("photo", include_str!("../en/photo.ftl")),
    ("job", include_str!("../en/job.ftl")),
    ("shop", include_str!("../en/shop.ftl")),
    ("store", include_str!("../en/store.ftl")),
    ("record", include_str!("../en/record.ftl")),
    ("bay", include_str!("../en/bay.ftl")),
    ("cli", include_str!("../en/cli.ftl")),
    ("panside", include_str!("../en/panside.ftl")),
];

/// A language that sentences are said in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Language {
    /// American English.
    English,
    /// English with every letter of a sentence accented, but not what is put into it: text that comes out plain was made
    /// past the message files. For tests.
    Accented,
}

impl Language {
    /// Every language.
    pub const ALL: [Language; 2] = [Language::English, Language::Accented];

    /// The language of a tag.
    #[must_use]
    pub fn of(tag: &str) -> Option<Language> {
        Language::ALL.into_iter().find(|language| language.tag() == tag)
    }

    /// Its tag (BCP 47). `qps-ploc` is the tag in use for a pseudo-language; Unicode's language subtags `qaa` to `qtz` are
    /// free for private use.
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Accented => "qps-ploc",
        }
    }

    /// Its files: which crate, and the text of the file.
    pub(crate) fn files(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Language::English | Language::Accented => ENGLISH,
        }
    }

    /// What is done to each piece of a sentence that is no argument.
    pub(crate) fn transform(self) -> fn(&str) -> Cow<'_, str> {
        match self {
            Language::English => one_line,
            Language::Accented => |text| Cow::Owned(accented(&one_line(text))),
        }
    }
}

/// A sentence that its file has on several lines is one line.
fn one_line(text: &str) -> Cow<'_, str> {
    if text.contains('\n') { Cow::Owned(text.replace('\n', " ")) } else { Cow::Borrowed(text) }
}

/// The text with its letters accented, so that it can still be read.
#[must_use]
pub fn accented(text: &str) -> String {
    let accent = |c| match c {
        'a' => 'á',
        'c' => 'ç',
        'e' => 'é',
        'g' => 'ğ',
        'i' => 'í',
        'n' => 'ñ',
        'o' => 'ó',
        's' => 'š',
        'u' => 'ú',
        'y' => 'ý',
        'z' => 'ž',
        'A' => 'Á',
        'C' => 'Ç',
        'E' => 'É',
        'G' => 'Ğ',
        'I' => 'Í',
        'N' => 'Ñ',
        'O' => 'Ó',
        'S' => 'Š',
        'U' => 'Ú',
        'Y' => 'Ý',
        'Z' => 'Ž',
        other => other,
    };
    text.chars().map(accent).collect()
}
