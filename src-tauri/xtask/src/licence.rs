//! Licence expressions as packages state them (SPDX, and the older `A/B` for a choice), and whether one of the licences
//! that are taken here meets them.

/// Licences that ask for no more than that they and the authors are named. Ours is MIT or Apache-2.0.
const TAKEN: [&str; 9] =
    ["MIT", "MIT-0", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "ISC", "Zlib", "Unicode-3.0"];

/// Whether an expression can be met by the licences taken and one more; nothing where it can't be read.
pub fn is_met(expression: &str, more: Option<&str>) -> Option<bool> {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut read = Read { words: &words, more };
    let met = read.any()?;
    read.words.is_empty().then_some(met)
}

/// What is still to be read.
struct Read<'a> {
    words: &'a [&'a str],
    more: Option<&'a str>,
}

impl<'a> Read<'a> {
    /// `A OR B`: one of them is enough.
    fn any(&mut self) -> Option<bool> {
        let mut met = self.all()?;
        while self.take("OR") {
            met |= self.all()?;
        }
        Some(met)
    }

    /// `A AND B`: both hold. It binds closer than `OR` (SPDX specification 2.3, annex D.4).
    fn all(&mut self) -> Option<bool> {
        let mut met = self.one()?;
        while self.take("AND") {
            met &= self.one()?;
        }
        Some(met)
    }

    fn one(&mut self) -> Option<bool> {
        if self.take("(") {
            let met = self.any()?;
            return self.take(")").then_some(met);
        }
        let licence = self.next()?;
        // An exception allows more than the licence alone does.
        if self.take("WITH") {
            self.next()?;
        }
        Some(TAKEN.contains(&licence) || self.more == Some(licence))
    }

    fn take(&mut self, word: &str) -> bool {
        let found = self.words.first() == Some(&word);
        if found {
            self.words = &self.words[1..];
        }
        found
    }

    /// The next word, where it is a name.
    fn next(&mut self) -> Option<&'a str> {
        let (first, rest) = self.words.split_first()?;
        let is_name = !["(", ")", "OR", "AND", "WITH"].contains(first);
        self.words = rest;
        is_name.then_some(*first)
    }
}

#[cfg(test)]
mod tests {
    use super::is_met;

    #[test]
    fn one_licence_of_a_choice_is_enough_and_of_a_sum_all_are_needed() {
        for (expression, met) in [
            ("MIT", true),
            ("GPL-3.0-only", false),
            ("Apache-2.0 OR GPL-2.0-only", true),
            ("MIT/Apache-2.0", true),
            ("Apache-2.0 / MIT", true),
            ("BSD-3-Clause AND MIT", true),
            ("MIT AND GPL-2.0-only", false),
            ("(MIT OR Apache-2.0) AND IJG", false),
            ("GPL-2.0-only OR MIT AND ISC", true),
            ("GPL-2.0-only AND MIT OR ISC", true),
            ("Apache-2.0 WITH LLVM-exception", true),
        ] {
            assert_eq!(is_met(expression, None), Some(met), "{expression}");
        }
    }

    #[test]
    fn an_exception_is_for_its_own_licence() {
        assert_eq!(is_met("(MIT OR Apache-2.0) AND IJG", Some("IJG")), Some(true));
        assert_eq!(is_met("MPL-2.0", Some("IJG")), Some(false));
    }

    #[test]
    fn what_is_no_expression_is_told_and_not_taken() {
        for expression in ["", "MIT OR", "(MIT", "MIT Apache-2.0", "AND", "SEE LICENSE IN file", "MIT WITH"] {
            assert_eq!(is_met(expression, None), None, "{expression}");
        }
    }
}
