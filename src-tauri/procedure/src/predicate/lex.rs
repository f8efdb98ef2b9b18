//! Text into tokens.

use super::PredicateError;
use crate::message::*;

/// A token.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Token {
    /// A name, a value, a number or a keyword.
    Word(String),
    /// `=`
    Equal,
    /// `!=`
    NotEqual,
    /// One of `( ) { } ,`
    Mark(char),
}

impl Token {
    /// As it is written.
    pub fn text(&self) -> String {
        match self {
            Token::Word(word) => word.clone(),
            Token::Equal => "=".to_owned(),
            Token::NotEqual => "!=".to_owned(),
            Token::Mark(mark) => mark.to_string(),
        }
    }
}

/// Cuts a text into tokens, each with its place in characters.
pub fn tokens(text: &str) -> Result<Vec<(Token, usize)>, PredicateError> {
    let chars: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(&char) = chars.get(at) {
        let begin = at;
        at += 1;
        let token = match char {
            ' ' | '\t' | '\n' | '\r' => continue,
            '=' => Token::Equal,
            '!' if chars.get(at) == Some(&'=') => {
                at += 1;
                Token::NotEqual
            }
            '(' | ')' | '{' | '}' | ',' => Token::Mark(char),
            _ if is_word(char) => {
                while chars.get(at).is_some_and(|&next| is_word(next)) {
                    at += 1;
                }
                Token::Word(chars[begin..at].iter().collect())
            }
            _ => return Err(PredicateError { at: begin, what: predicate_character(char.to_string()) }),
        };
        found.push((token, begin));
    }
    Ok(found)
}

fn is_word(char: char) -> bool {
    char.is_ascii_lowercase() || char.is_ascii_digit() || char == '_' || char == '.'
}
