//! Tokens into a tree.

use panside_messages::Message;

use super::lex::{Token, tokens};
use super::{Doing, Expr, Node, PredicateError};
use crate::message::*;

/// Deeper nesting than this is refused, so that no text can exhaust the stack.
const DEEPEST: usize = 64;

/// A longer text is refused before it is read; a predicate of a few hundred characters is hard to read already.
const LONGEST: usize = 20_000;

/// Reads a predicate.
///
/// # Errors
/// The first place where the text does not fit the grammar, with what would fit.
pub fn parse(text: &str) -> Result<Expr, PredicateError> {
    if text.len() > LONGEST {
        return Err(PredicateError { at: 0, what: predicate_long(LONGEST) });
    }
    let tokens = tokens(text)?;
    let end = text.chars().count();
    let mut parser = Parser { tokens, next: 0, end };
    let expr = parser.any(0)?;
    match parser.peek() {
        None => Ok(expr),
        Some(token) => Err(parser.error(predicate_joint(token.text()))),
    }
}

/// What a word must be, as it is said where it is none.
type Wanted = fn() -> Message;

struct Parser {
    tokens: Vec<(Token, usize)>,
    next: usize,
    end: usize,
}

impl Parser {
    fn peek(&self) -> Option<&Token> {
        self.tokens.get(self.next).map(|(token, _)| token)
    }

    fn at(&self) -> usize {
        self.tokens.get(self.next).map_or(self.end, |&(_, at)| at)
    }

    fn error(&self, what: Message) -> PredicateError {
        PredicateError { at: self.at(), what }
    }

    fn takes(&mut self, token: &Token) -> bool {
        let there = self.peek() == Some(token);
        self.next += usize::from(there);
        there
    }

    fn takes_word(&mut self, word: &str) -> bool {
        let there = matches!(self.peek(), Some(Token::Word(found)) if found == word);
        self.next += usize::from(there);
        there
    }

    fn expect(&mut self, mark: char) -> Result<(), PredicateError> {
        if self.takes(&Token::Mark(mark)) {
            return Ok(());
        }
        let found = self.peek().map_or_else(predicate_end, |token| predicate_token(token.text()));
        Err(self.error(predicate_mark(mark.to_string(), found)))
    }

    fn word(&mut self, wanted: Wanted) -> Result<(String, usize), PredicateError> {
        let at = self.at();
        match self.peek() {
            Some(Token::Word(word)) if !is_keyword(word) => {
                let word = word.clone();
                self.next += 1;
                Ok((word, at))
            }
            Some(token) => Err(self.error(predicate_not_wanted(wanted(), token.text()))),
            None => Err(self.error(predicate_wanted_at_end(wanted()))),
        }
    }

    /// A value, which after `=` or in braces can be any word: the level class `in` is one.
    fn value(&mut self) -> Result<(String, usize), PredicateError> {
        let at = self.at();
        match self.peek() {
            Some(Token::Word(word)) => {
                let word = word.clone();
                self.next += 1;
                Ok((word, at))
            }
            _ => self.word(predicate_value),
        }
    }

    fn any(&mut self, depth: usize) -> Result<Expr, PredicateError> {
        self.list(depth, "or", Self::all, Node::Any)
    }

    fn all(&mut self, depth: usize) -> Result<Expr, PredicateError> {
        self.list(depth, "and", Self::one, Node::All)
    }

    fn list(
        &mut self,
        depth: usize,
        joint: &str,
        part: fn(&mut Self, usize) -> Result<Expr, PredicateError>,
        node: fn(Vec<Expr>) -> Node,
    ) -> Result<Expr, PredicateError> {
        let at = self.at();
        let first = part(self, depth)?;
        if !self.takes_word(joint) {
            return Ok(first);
        }
        let mut parts = vec![first, part(self, depth)?];
        while self.takes_word(joint) {
            parts.push(part(self, depth)?);
        }
        Ok(Expr { is: node(parts), at })
    }

    fn one(&mut self, depth: usize) -> Result<Expr, PredicateError> {
        if depth > DEEPEST {
            return Err(self.error(predicate_deep(DEEPEST)));
        }
        let at = self.at();
        if self.takes_word("not") {
            let inner = self.one(depth + 1)?;
            return Ok(Expr { is: Node::Not(Box::new(inner)), at });
        }
        if self.takes(&Token::Mark('(')) {
            let inner = self.any(depth + 1)?;
            self.expect(')')?;
            return Ok(inner);
        }
        self.atom()
    }

    fn atom(&mut self) -> Result<Expr, PredicateError> {
        let (word, at) = self.word(predicate_name)?;
        let is = match word.as_str() {
            "true" => Node::Const(true),
            "false" => Node::Const(false),
            "tray_clear" => Node::TrayClear,
            "leaving" => Node::Leaving,
            "worked" => Node::Worked(self.in_parentheses(predicate_step)?),
            "signed" => Node::Signed(self.in_parentheses(predicate_sign_off)?),
            "known" => Node::Known(self.in_parentheses(predicate_gate)?),
            "empty" => self.empty()?,
            "moving" => self.doing(Doing::Moving, predicate_vehicle_action)?,
            "moved" => self.doing(Doing::Moved, predicate_vehicle_action)?,
            "doing.zone" => self.doing(Doing::Zone, predicate_zone)?,
            "doing.touches" => self.doing(Doing::Touches, predicate_part)?,
            "doing.tag" => self.doing(Doing::Tag, predicate_tag)?,
            _ if word.contains('.') => {
                return Err(PredicateError { at, what: predicate_full_stop(word) });
            }
            _ => self.variable(word)?,
        };
        Ok(Expr { is, at })
    }

    fn variable(&mut self, name: String) -> Result<Node, PredicateError> {
        if self.takes_word("in") {
            self.expect('{')?;
            let mut values = vec![self.value()?];
            while self.takes(&Token::Mark(',')) {
                values.push(self.value()?);
            }
            self.expect('}')?;
            return Ok(Node::Is { name, values, negated: false });
        }
        let negated = match self.peek() {
            Some(Token::Equal) => false,
            Some(Token::NotEqual) => true,
            _ => return Ok(Node::Term(name)),
        };
        self.next += 1;
        Ok(Node::Is { name, values: vec![self.value()?], negated })
    }

    fn in_parentheses(&mut self, wanted: Wanted) -> Result<String, PredicateError> {
        self.expect('(')?;
        let (name, _) = self.word(wanted)?;
        self.expect(')')?;
        Ok(name)
    }

    fn empty(&mut self) -> Result<Node, PredicateError> {
        let item = self.in_parentheses(predicate_item)?;
        let negated = self.takes(&Token::NotEqual);
        if !negated && !self.takes(&Token::Equal) {
            return Err(self.error(predicate_empty()));
        }
        let (number, at) = self.word(predicate_number)?;
        let count = number.parse().map_err(|_| PredicateError { at, what: predicate_no_number(&number) })?;
        Ok(Node::Empty { item, count, negated })
    }

    fn doing(&mut self, doing: Doing, wanted: Wanted) -> Result<Node, PredicateError> {
        if !self.takes(&Token::Equal) {
            return Err(self.error(predicate_equal(wanted())));
        }
        Ok(Node::Doing(doing, self.word(wanted)?.0))
    }
}

fn is_keyword(word: &str) -> bool {
    matches!(word, "and" | "or" | "not" | "in")
}

/// Whether the language has taken a word, so that it cannot be the name of anything.
#[must_use]
pub fn is_reserved(word: &str) -> bool {
    let has_meaning = matches!(
        word,
        "true"
            | "false"
            | "tray_clear"
            | "leaving"
            | "worked"
            | "signed"
            | "known"
            | "empty"
            | "moving"
            | "moved"
    );
    is_keyword(word) || has_meaning
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn and_binds_tighter_than_or() {
        let expr = parse("a = x or b = y and c = z").unwrap();
        let Node::Any(parts) = expr.is else { panic!("or is outermost") };
        assert_eq!(parts.len(), 2);
        assert!(matches!(&parts[1].is, Node::All(parts) if parts.len() == 2));
    }

    #[test]
    fn an_error_names_the_character_it_stands_at() {
        let error = parse("lift = on_locks and and engine = off").unwrap_err();
        assert_eq!(error.at, 20);
        assert_eq!(error.to_string(), "A name is expected here, not \"and\" (character 21)");
        assert_eq!(parse("lift = ").unwrap_err().at, 7);
        assert_eq!(parse("lift = on_locks)").unwrap_err().at, 15);
        assert_eq!(parse("lift > floor").unwrap_err().at, 5);
        assert_eq!(parse("Lift = floor").unwrap_err().at, 0);
        assert_eq!(parse("doing.zome = under").unwrap_err().at, 0);
        assert_eq!(parse("empty(bolts) = many").unwrap_err().at, 15);
        assert_eq!(parse("").unwrap_err().what, predicate_wanted_at_end(predicate_name()));
    }

    #[test]
    fn nesting_is_bounded() {
        let deep = format!("{}true{}", "(".repeat(9_000), ")".repeat(9_000));
        assert!(parse(&deep).unwrap_err().what == predicate_deep(DEEPEST));
        let nots = format!("{}true", "not ".repeat(4_000));
        assert!(parse(&nots).unwrap_err().what == predicate_deep(DEEPEST));
    }

    #[test]
    fn a_text_that_nobody_could_read_is_refused_before_it_is_read() {
        let long = format!("lift = {}", "x".repeat(20_000));
        assert!(parse(&long).unwrap_err().what == predicate_long(LONGEST));
    }

    #[test]
    fn every_atom_is_read() {
        for text in [
            "true",
            "tray_clear",
            "safe_under",
            "lift != floor",
            "level in {below, in_band}",
            "worked(drain)",
            "not signed(on_locks)",
            "known(level)",
            "empty(bolts) != 0",
            "doing.zone = under",
            "doing.touches = exhaust",
            "doing.tag = road",
            "moving = lower",
            "moved = lower",
            "leaving",
        ] {
            parse(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        }
    }
}
