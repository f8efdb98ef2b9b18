//! The customer's copy: what was the matter, what was found and done, what was agreed and fitted, what is to come, in
//! plain words.

use super::estimate::estimates;
use super::first::{agreed_in_all, amount, answers, supplement};
use super::parts::billed;
use super::{Block, Left, Right, Section, Table, order, row};
use crate::account::Said;
use crate::document::Document;
use crate::messages;
use crate::speak::Say;

/// The customer's copy.
pub(crate) struct Customer {
    pub name: String,
    pub facts: Vec<Vec<String>>,
    pub sections: Vec<Section>,
    /// What stands at the end.
    pub closing: String,
}

/// The customer's copy of a record.
pub(crate) fn customer(document: &Document, say: &Say<'_>) -> Customer {
    let account = &document.account;
    let told = |heading, said: &[Said]| Section::new(&heading, say, vec![answers(said, say)]);
    let mut sections = vec![
        told(messages::heading_customer_concern(), &account.concern),
        told(messages::heading_customer_cause(), &account.cause),
        told(messages::heading_customer_correction(), &account.correction),
    ];
    sections.extend(agreed(document, say));
    sections.extend(estimates(document, say));
    sections.extend(parts(document, say));
    sections.push(next(document, say));
    Customer {
        name: say.says(&messages::customer_title(order(document, say))),
        facts: facts(document, say),
        sections,
        closing: say.says(&messages::customer_closing()),
    }
}

fn facts(document: &Document, say: &Say<'_>) -> Vec<Vec<String>> {
    let mut facts = super::first(document, say).facts;
    // When the record was made, and who was in the bay, is for the shop.
    facts.truncate(facts.len().saturating_sub(2));
    facts
}

fn agreed(document: &Document, say: &Say<'_>) -> Option<Section> {
    let rows = document.authorized.iter().map(|one| {
        let agreed = say.apart(one.agreed.iter().map(|said| said.text.trim_end_matches('.').to_owned()));
        vec![one.by.day_and_time(say), agreed]
    });
    let mut rows: Vec<_> = rows.collect();
    rows.extend(document.turned_up.supplements.iter().filter_map(|one| supplement(one, say)));
    rows.extend(agreed_in_all(document, say));
    let table = Block::Table(Table::new(&[Left, Left], rows));
    let is_some = !document.authorized.is_empty() || !document.turned_up.supplements.is_empty();
    is_some.then(|| Section::new(&messages::heading_customer_agreed(), say, vec![table]))
}

fn parts(document: &Document, say: &Say<'_>) -> Option<Section> {
    let fitted = billed(document).into_iter().filter(|part| part.fitted.is_some());
    let mut rows: Vec<_> = fitted.map(|part| vec![part.called(say), part.quantity(say)]).collect();
    let filled = document.fluid.filled_in_all.as_ref();
    rows.extend(filled.map(|filled| row(say, &messages::customer_fluid(), amount(filled, say))));
    let mut blocks = vec![Block::Table(Table::new(&[Left, Right], rows))];
    let labor = document.time.in_steps.labor();
    let hours = (labor > 0).then(|| say.says(&messages::customer_labor(say.labor(labor))));
    let old = document.account.old_parts.as_ref();
    let old = old.map(|said| say.within(&messages::labeled(&said.label, &said.text)));
    blocks.extend(hours.into_iter().chain(old).map(Block::Line));
    let is_some = !document.parts.fitted.is_empty() || filled.is_some() || labor > 0;
    is_some.then(|| Section::new(&messages::heading_customer_parts(), say, blocks))
}

/// What the customer should know from here on.
fn next(document: &Document, say: &Say<'_>) -> Section {
    let mut lines: Vec<String> =
        document.account.advice.iter().map(|said| say.says(&messages::advised(&said.text))).collect();
    lines.extend(super::turned_up::found_lines(document, false, say));
    lines.extend(super::turned_up::declined_lines(document, say));
    let codes = document.codes.last().filter(|codes| !codes.codes.is_empty());
    lines.extend(codes.map(|codes| super::first::codes_line(codes, say)));
    let skipped = document.skipped.iter();
    lines.extend(skipped.map(|step| say.says(&messages::customer_skipped(&step.title, &step.reason))));
    if !document.missing.is_empty() {
        lines.push(say.says(&messages::customer_unfinished()));
    }
    if lines.is_empty() {
        lines.push(say.says(&messages::customer_nothing_next()));
    }
    Section::new(&messages::heading_customer_next(), say, lines.into_iter().map(Block::Line).collect())
}
