//! `figure`: one number of the trade without a window, with its steps and its source.

mod cooling;
mod electric;
mod estimate;
mod fluid;
mod given;
mod identity;
mod tightening;
mod time;

use panside_messages::{Message, Speaker};
use panside_trade::Working;

use crate::args::FigureArgs;
use crate::exit::{Exit, Failure};
use crate::message::*;
use crate::out::{self, print};
use given::Given;

/// Whether and how often a key is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Times {
    Once,
    Perhaps,
    Often,
    PerhapsOften,
}

/// One key of a figure.
struct Key {
    name: &'static str,
    times: Times,
    /// What it is, with an example behind the last comma.
    is: fn() -> Message,
}

const fn once(name: &'static str, is: fn() -> Message) -> Key {
    Key { name, times: Times::Once, is }
}

const fn perhaps(name: &'static str, is: fn() -> Message) -> Key {
    Key { name, times: Times::Perhaps, is }
}

const fn often(name: &'static str, is: fn() -> Message) -> Key {
    Key { name, times: Times::Often, is }
}

const fn perhaps_often(name: &'static str, is: fn() -> Message) -> Key {
    Key { name, times: Times::PerhapsOften, is }
}

/// A figure that can be asked for.
struct Figure {
    name: &'static str,
    about: fn() -> Message,
    keys: &'static [Key],
    /// An example behind the name.
    example: &'static str,
    work: fn(&Given) -> Result<Working, Failure>,
}

/// Every figure.
fn all() -> impl Iterator<Item = &'static Figure> {
    [
        fluid::FIGURES,
        electric::FIGURES,
        identity::FIGURES,
        tightening::FIGURES,
        cooling::FIGURES,
        time::FIGURES,
        estimate::FIGURES,
    ]
    .into_iter()
    .flatten()
}

impl Figure {
    /// Its keys, a line each, and an example.
    fn usage(&self, speaker: &Speaker) -> String {
        let mut text = format!("{}: {}\n", self.name, speaker.within(&(self.about)()));
        for key in self.keys {
            let is = match key.times {
                Times::Once => (key.is)(),
                Times::Perhaps => cli_perhaps((key.is)()),
                Times::Often => cli_often((key.is)()),
                Times::PerhapsOften => cli_perhaps_often((key.is)()),
            };
            text.push_str(&format!("  {:<10} {}\n", key.name, speaker.within(&is)));
        }
        text.push_str(&format!("  panside-cli figure {} {}\n", self.name, self.example));
        text
    }
}

/// Every figure with its keys, for `figure` alone and for its help.
pub fn list(speaker: &Speaker) -> String {
    let figures: Vec<String> = all().map(|figure| figure.usage(speaker)).collect();
    format!("{}\n\n{}", speaker.say(&cli_values()), figures.join("\n"))
}

/// Works out a figure and prints it.
pub fn figure(args: &FigureArgs, speaker: &Speaker) -> Result<Exit, Failure> {
    let Some(name) = &args.name else {
        print(format_args!("{}", list(speaker)));
        return Ok(Exit::Done);
    };
    let figure = all().find(|figure| figure.name == name).ok_or_else(|| {
        let names: Vec<&str> = all().map(|figure| figure.name).collect();
        Failure::new(Exit::Usage, cli_no_figure(name, names.join(", ")))
    })?;
    let mut working = (figure.work)(&Given::read(figure, args, speaker)?)?;
    if args.json {
        working.fill(speaker);
        out::json(&working)?;
    } else {
        print(format_args!("{}", working.said(speaker)));
    }
    Ok(Exit::Done)
}
