//! Values that the shop has for all its vehicles: asked once, and put into the text that a job pins where the vehicle's
//! sheet has none of its own.

use std::collections::BTreeMap;

use panside_procedure::Procedure;
use panside_procedure::format::sheet::{SheetValue, Value};
use panside_procedure::format::{Asked, Sheet, SheetKey};

use super::fields::{blank, typed};
use super::judge::read;
use super::needs::{Need, is_asked, needs};
use super::page::{SheetValueView, value_view};
use super::typed::{TypedSheet, TypedValue};
use crate::field::FieldProblem;

/// A key of which the shop has one value for all vehicles.
#[derive(Debug, Clone, PartialEq)]
pub struct ShopKey {
    /// What must stand there.
    pub need: Need,
    /// What the checklist says of it.
    pub said: SheetKey,
}

/// The keys that checklists ask of the shop. Where two differ, the first counts.
#[must_use]
pub fn shop_keys<'a>(procedures: impl IntoIterator<Item = &'a Procedure>) -> BTreeMap<String, ShopKey> {
    let mut keys = BTreeMap::new();
    for procedure in procedures {
        for (key, need) in needs(procedure, &|_| None) {
            let Some(said) = procedure.checklist.sheet_keys.get(&key) else { continue };
            if need.asked == Asked::Shop {
                // Of the shop it is needed.
                let need = Need { asked: Asked::Needed, ..need };
                keys.entry(key).or_insert_with(|| ShopKey { need, said: said.clone() });
            }
        }
    }
    keys
}

/// The keys that a checklist asks of the shop for the vehicle of a sheet, which has no values of its own for them.
#[must_use]
pub fn asked_of_shop(procedure: &Procedure, sheet: &Sheet) -> Vec<String> {
    let word = |key: &str| match &sheet.values.get(key)?.is {
        Value::Fact(word) => Some(word.as_str()),
        _ => None,
    };
    let needs = needs(procedure, &word);
    let asked = needs.iter().filter(|(key, need)| {
        need.asked == Asked::Shop && is_asked(&needs, key) && !sheet.values.contains_key(*key)
    });
    asked.map(|(key, _)| key.clone()).collect()
}

/// A sheet with values of the shop for what it has none of its own.
#[must_use]
pub fn with_shop(sheet: &Sheet, of_shop: BTreeMap<String, SheetValue>) -> Sheet {
    let mut sheet = sheet.clone();
    for (key, value) in of_shop {
        sheet.values.entry(key).or_insert(value);
    }
    sheet
}

impl ShopKey {
    /// What is common practice, as if it were typed; blank where the checklist does not say. `source` names it so.
    #[must_use]
    pub fn usual(&self, source: &str) -> TypedValue {
        let (is, source) = match &self.said.usual {
            Some(usual) => (typed(usual), source.to_owned()),
            None => (blank(&self.need), String::new()),
        };
        TypedValue { is, source, taken: None }
    }
}

/// Reads a value that is typed for the shop.
///
/// # Errors
/// All that is wrong with it, field by field.
pub fn judge_shop_value(key: &ShopKey, typed: &TypedValue) -> Result<Value, Vec<FieldProblem>> {
    read(typed, Some(&key.need))
}

/// A value that is typed for the shop, as a screen shows it.
#[must_use]
pub fn shop_value_view(name: &str, key: &ShopKey, typed: &TypedValue) -> SheetValueView {
    let alone = TypedSheet::blank();
    let view = value_view(&alone, (name, typed), (Some(&key.need), Some(&key.said)), None);
    SheetValueView { name: key.said.label.clone(), to_check: false, ..view }
}
