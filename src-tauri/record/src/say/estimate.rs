//! Estimates, line by line with their sums.

use super::{Block, Left, Right, Section, Table, row};
use crate::document::Document;
use crate::messages;
use crate::money::{Estimate, Line};
use crate::speak::Say;

/// A section of all estimates; none where there are none.
pub(super) fn estimates(document: &Document, say: &Say<'_>) -> Option<Section> {
    let estimates = &document.money.estimates;
    let blocks = estimates.iter().flat_map(|estimate| {
        let title = (estimates.len() > 1).then(|| Block::Title(estimate.label.clone()));
        title.into_iter().chain([lines(estimate, say), sums(estimate, say)]).chain(unpriced(estimate, say))
    });
    let blocks: Vec<_> = blocks.collect();
    (!estimates.is_empty()).then(|| Section::new(&messages::heading_estimate(), say, blocks))
}

/// What it comes to, in one line: before tax, and at most.
pub(super) fn comes_to(estimate: &Estimate, say: &Say<'_>) -> String {
    let sum = say.measure(&estimate.sum, &estimate.currency);
    if estimate.limit == estimate.sum {
        return say.within(&messages::before_tax(sum));
    }
    say.within(&messages::before_tax_at_most(sum, say.measure(&estimate.limit, &estimate.currency)))
}

fn lines(estimate: &Estimate, say: &Say<'_>) -> Block {
    let parts = estimate.parts.iter().map(|line| cells(line, line.quantity_said(say), estimate, say));
    let labor = estimate.labor.iter().map(|line| {
        let hours = say.within(&messages::hours_labor(line.quantity_said(say)));
        cells(line, hours, estimate, say)
    });
    let may = estimate.may_turn_up.iter().map(|line| {
        let mut cells = cells(line, String::new(), estimate, say);
        cells[0] = say.within(&messages::may_turn_up(&line.what));
        cells
    });
    let rows = parts.chain(labor).chain(may).collect();
    let head = [
        None,
        Some(messages::column_number()),
        Some(messages::column_quantity()),
        Some(messages::column_price()),
        Some(messages::column_amount()),
    ];
    Block::Table(Table::new(&[Left, Left, Right, Right, Right], rows).with_head(say, &head))
}

fn cells(line: &Line, quantity: String, estimate: &Estimate, say: &Say<'_>) -> Vec<String> {
    let money = |text: &Option<String>| text.as_ref().map(|text| say.measure(text, &estimate.currency));
    let price = line.price.as_ref().map(|price| say.number(price)).unwrap_or_default();
    let number = line.number.clone().unwrap_or_default();
    vec![line.what.clone(), number, quantity, price, money(&line.comes_to).unwrap_or_default()]
}

fn sums(estimate: &Estimate, say: &Say<'_>) -> Block {
    let money = |text: &String| say.measure(text, &estimate.currency);
    let mut rows = vec![
        row(say, &messages::estimate_parts(), money(&estimate.parts_sum)),
        row(say, &messages::estimate_labor(say.number(&estimate.hours)), money(&estimate.labor_sum)),
        row(say, &messages::estimate_sum(), money(&estimate.sum)),
    ];
    if estimate.limit != estimate.sum {
        rows.push(row(say, &messages::estimate_limit(), money(&estimate.limit)));
    }
    Block::Table(Table::new(&[Left, Right], rows))
}

fn unpriced(estimate: &Estimate, say: &Say<'_>) -> Option<Block> {
    (estimate.unpriced > 0).then(|| Block::Line(say.says(&messages::estimate_unpriced(estimate.unpriced))))
}

impl Line {
    fn quantity_said(&self, say: &Say<'_>) -> String {
        say.number(&self.quantity)
    }
}
