//! The types that cross to the page, as TypeScript: written by `cargo xtask types` into `ui/src/core/`.

use std::any::TypeId;
use std::collections::{BTreeMap, HashSet};
use std::fmt::Write;

use ts_rs::{Config, TS, TypeVisitor};

use crate::commands::{RAW, declared};
use crate::trouble::Trouble;

/// One command with its types.
#[derive(Debug)]
pub struct Declared {
    name: &'static str,
    docs: Vec<&'static str>,
    takes: Vec<(&'static str, String)>,
    answer: String,
    types: Types,
}

impl Declared {
    /// A command that answers a type.
    pub fn new<Answer: TS + 'static + ?Sized>(name: &'static str, docs: &[&'static str]) -> Declared {
        let mut types = Types::default();
        types.visit::<Answer>();
        let answer = Answer::name(&config());
        Declared { name, docs: docs.to_vec(), takes: Vec::new(), answer, types }
    }

    /// It takes an argument.
    #[must_use]
    pub fn takes<Argument: TS + 'static + ?Sized>(mut self, name: &'static str) -> Declared {
        self.types.visit::<Argument>();
        self.takes.push((name, Argument::name(&config())));
        self
    }

    /// Its line in the table of commands. Tauri names arguments in camel case on the page's side.
    fn line(&self) -> String {
        let docs: String = self.docs.iter().map(|doc| format!("  /**{doc} */\n")).collect();
        let takes: Vec<String> =
            self.takes.iter().map(|(name, ty)| format!("{}: {ty}", camel(name))).collect();
        let takes = if takes.is_empty() {
            "Record<string, never>".to_owned()
        } else {
            format!("{{ {} }}", takes.join("; "))
        };
        format!("{docs}  {}: {{ takes: {takes}; answers: {} }};\n", self.name, self.answer)
    }
}

fn camel(name: &str) -> String {
    let mut parts = name.split('_');
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| {
        let mut letters = part.chars();
        let head = letters.next().map(|letter| letter.to_ascii_uppercase());
        text + &head.into_iter().chain(letters).collect::<String>()
    })
}

/// Numbers of the core stay below 2^53, so that a number of JavaScript holds them.
fn config() -> Config {
    Config::new().with_large_int("number")
}

/// Types by name, each with its declaration; with everything that they are made of.
#[derive(Debug, Default)]
struct Types {
    seen: HashSet<TypeId>,
    declared: BTreeMap<String, String>,
}

impl TypeVisitor for Types {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        if !self.seen.insert(TypeId::of::<T>()) {
            return;
        }
        // Only types of our own have a file; the others are TypeScript's.
        if T::output_path().is_some() {
            let docs = T::docs().unwrap_or_default();
            self.declared.insert(T::ident(&config()), format!("{docs}export {}\n", T::decl(&config())));
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// The files for the page, by name.
#[must_use]
pub fn files() -> [(&'static str, String); 2] {
    let commands = declared();
    let mut types = Types::default();
    types.visit::<Trouble>();
    let mut all = types.declared;
    for command in &commands {
        all.extend(command.types.declared.clone());
    }
    let mut text = format!("{MADE}\n");
    for declaration in all.values() {
        let _ = write!(text, "\n{declaration}");
    }
    let names: Vec<&str> = all.keys().map(String::as_str).collect();
    let lines: String = commands.iter().map(Declared::line).collect();
    let used: Vec<&str> = names.into_iter().filter(|name| contains_word(&lines, name)).collect();
    let raw: Vec<String> = RAW.iter().map(|name| format!("\"{name}\"")).collect();
    let commands = format!(
        "{MADE}\n\nimport type {{ {} }} from \"./types\";\n\n/** Every command with what it takes and answers. */\nexport interface Commands {{\n{lines}}}\n\n\
         /** Commands whose arguments or answers are bytes. */\nexport type RawCommand = {};\n",
        used.join(", "),
        raw.join(" | ")
    );
    [("types.ts", text), ("commands.ts", commands)]
}

const MADE: &str = "// Made by `cargo xtask types` from the Rust types. Change those, not this.";

fn contains_word(text: &str, word: &str) -> bool {
    text.split(|c: char| !c.is_alphanumeric() && c != '_').any(|found| found == word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_type_that_is_named_is_declared() {
        let [(_, types), (_, commands)] = files();
        for needed in ["JobPage", "JobView", "EntryValue", "Command", "Trouble"] {
            assert!(types.contains(&format!("export type {needed} = ")), "{needed}");
        }
        assert!(commands.contains("enter: { takes: { job: JobId; head: Head;"), "{commands}");
        assert!(commands.contains("repairOrder: string"), "arguments are in camel case: {commands}");
    }

    #[test]
    fn no_number_crosses_that_the_page_reads_as_something_else() {
        assert!(!files()[0].1.contains("bigint"));
    }
}
