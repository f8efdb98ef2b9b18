//! An estimate's totals.

use std::str::FromStr;

use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::money::{Currency, Money};
use panside_trade::{TradeError, Worked, Working};

use super::given::{Given, parts, wrong};
use super::{Figure, once, perhaps_often};
use crate::exit::{Exit, Failure};
use crate::message::*;

pub const FIGURES: &[Figure] = &[Figure {
    name: "estimate",
    about: cli_estimate,
    keys: &[
        once("currency", cli_estimate_currency),
        perhaps_often("part", cli_estimate_part),
        perhaps_often("labor", cli_estimate_labor),
        perhaps_often("mayturnup", cli_estimate_may_turn_up),
    ],
    example: "currency=USD part=filter:1:48.90 part=fluid:5.5:12.35 labor=pan:1.25:95 mayturnup=nut:60",
    work,
}];

fn read<T: FromStr<Err = TradeError>>(key: &str, text: &str) -> Result<T, Failure> {
    text.parse().map_err(|error: TradeError| wrong(key, text, error.message()))
}

fn sums(error: TradeError) -> Failure {
    Failure::new(Exit::Refused, error.message())
}

fn line(key: &str, text: &str) -> Result<Line, Failure> {
    let [what, quantity, price] = parts(key, text, cli_estimate_line_form())?;
    Line::new(what, read(key, quantity)?, Some(read::<Money>(key, price)?)).map_err(sums)
}

fn may_turn_up(text: &str) -> Result<MayTurnUp, Failure> {
    let [what, up_to] = parts("mayturnup", text, cli_estimate_up_to_form())?;
    Ok(MayTurnUp { what: what.to_owned(), up_to: read("mayturnup", up_to)? })
}

fn work(given: &Given) -> Result<Working, Failure> {
    let currency: Currency = read("currency", given.or("currency", ""))?;
    let lines = |key: &'static str| given.all(key).map(|text| line(key, text)).collect::<Result<Vec<_>, _>>();
    let may_turn_up = given.all("mayturnup").map(may_turn_up).collect::<Result<Vec<_>, _>>()?;
    Ok(Estimate::of(currency, lines("part")?, lines("labor")?, may_turn_up).map_err(sums)?.working())
}
