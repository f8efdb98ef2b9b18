//! `figure`: one number of the trade without a window, with its steps and its source.

mod cooling;
mod electric;
mod fluid;
mod given;
mod identity;
mod tightening;
mod time;

use panside_messages::Speaker;
use panside_trade::Working;

use crate::args::FigureArgs;
use crate::exit::{Exit, Failure};
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
    is: &'static str,
}

const fn once(name: &'static str, is: &'static str) -> Key {
    Key { name, times: Times::Once, is }
}

const fn perhaps(name: &'static str, is: &'static str) -> Key {
    Key { name, times: Times::Perhaps, is }
}

const fn often(name: &'static str, is: &'static str) -> Key {
    Key { name, times: Times::Often, is }
}

const fn perhaps_often(name: &'static str, is: &'static str) -> Key {
    Key { name, times: Times::PerhapsOften, is }
}

/// A figure that can be asked for.
struct Figure {
    name: &'static str,
    about: &'static str,
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
    ]
    .into_iter()
    .flatten()
}

impl Figure {
    /// Its keys, a line each, and an example.
    fn usage(&self) -> String {
        let mut text = format!("{}: {}\n", self.name, self.about);
        for key in self.keys {
            let times = match key.times {
                Times::Once => "",
                Times::Perhaps => " (may be left out)",
                Times::Often => " (once or more)",
                Times::PerhapsOften => " (as often as there are)",
            };
            text.push_str(&format!("  {:<10} {}{times}\n", key.name, key.is));
        }
        text.push_str(&format!("  panside-cli figure {} {}\n", self.name, self.example));
        text
    }
}

/// Every figure with its keys, for `figure` alone and for its help.
pub fn list() -> String {
    let figures: Vec<String> = all().map(Figure::usage).collect();
    format!(
        "A value is written with its unit and no space: temp=46C reading=31mm torque=9lbf.ft. A comma or a point is the \
         decimal sign. Parts of one value are joined by a colon.\n\n{}",
        figures.join("\n")
    )
}

/// Works out a figure and prints it.
pub fn figure(args: &FigureArgs) -> Result<Exit, Failure> {
    let Some(name) = &args.name else {
        print(format_args!("{}", list()));
        return Ok(Exit::Done);
    };
    let figure = all().find(|figure| figure.name == name).ok_or_else(|| {
        let names: Vec<&str> = all().map(|figure| figure.name).collect();
        let message = format!("There is no figure \"{name}\". Choose one of: {}.", names.join(", "));
        Failure::new(Exit::Usage, message)
    })?;
    let mut working = (figure.work)(&Given::read(figure, args)?)?;
    let speaker = Speaker::english();
    if args.json {
        working.fill(speaker);
        out::json(&working)?;
    } else {
        print(format_args!("{}", working.said(speaker)));
    }
    Ok(Exit::Done)
}
