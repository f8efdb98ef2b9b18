//! What is typed on a spec sheet becomes a revision of it: who entered what, and whose check still stands.

use panside_journal::PersonId;
use panside_procedure::format::sheet::{Check, SheetValue, Value};
use panside_procedure::format::{SHEET_FORMAT, Sheet};

use super::judge::{is_left_out, read};
use super::needs::{Keys, Needs, is_asked, label};
use super::typed::{TypedSheet, TypedValue};
use crate::message::{
    Message, sheet_check_none, sheet_check_own, sheet_check_there, sheet_no_title, sheet_unchanged,
};

/// Who enters or checks values, and on which day of the shop's calendar (`YYYY-MM-DD`).
#[derive(Debug, Clone, Copy)]
pub struct By<'a> {
    /// The person.
    pub id: PersonId,
    /// What they are called; the sheet says it, so that it can be read in another shop.
    pub name: &'a str,
    /// The day.
    pub day: &'a str,
}

impl TypedSheet {
    /// The revision that is typed here, as the sheet `id`. A value that is the same as `before`, with the same source,
    /// keeps who entered it and who checked it; every other is entered by `by` and checked by nobody.
    ///
    /// # Errors
    /// All that is wrong, by what people read for the key; or that nothing was changed.
    pub fn keep(
        &self,
        before: Option<&Sheet>,
        (needs, keys): (&Needs, &Keys),
        id: &str,
        by: By<'_>,
    ) -> Result<Sheet, Vec<(String, Message)>> {
        let mut problems: Vec<(String, Message)> = Vec::new();
        let title = self.title.trim().to_owned();
        if title.is_empty() {
            problems.push((String::new(), sheet_no_title()));
        }
        let mut sheet = Sheet {
            format: SHEET_FORMAT.to_owned(),
            id: id.to_owned(),
            title,
            revision: self.revision.saturating_add(1),
            demo: self.demo,
            values: std::collections::BTreeMap::new(),
        };
        let asked = self.values.iter().filter(|(key, _)| is_asked(needs, key));
        for (key, typed) in asked.filter(|(key, typed)| !is_left_out(typed, needs.get(*key))) {
            let typed = self.counting(typed, needs.get(key));
            match read(&typed, needs.get(key)) {
                Ok(is) => {
                    let old = before.and_then(|before| before.values.get(key));
                    sheet.values.insert(key.clone(), entered(is, &typed, old, by));
                }
                Err(wrong) => {
                    problems.extend(
                        wrong.into_iter().map(|problem| (label(keys, key).to_owned(), problem.message)),
                    );
                }
            }
        }
        let same_as_before =
            before.is_some_and(|before| before.title == sheet.title && before.values == sheet.values);
        if problems.is_empty() && same_as_before {
            problems.push((String::new(), sheet_unchanged()));
        }
        if problems.is_empty() { Ok(sheet) } else { Err(problems) }
    }
}

fn entered(is: Value, typed: &TypedValue, old: Option<&SheetValue>, by: By<'_>) -> SheetValue {
    let source = typed.source.trim();
    match old {
        Some(old) if old.is == is && old.source == source => old.clone(),
        _ => SheetValue {
            is,
            source: source.to_owned(),
            entered_by: by.name.to_owned(),
            entered_by_id: Some(by.id.to_string()),
            entered_on: Some(by.day.to_owned()),
            taken_from: typed.taken_from(),
            checked: None,
        },
    }
}

/// The next revision of a sheet, in which a second person has checked the values of some keys; `pin`: they gave their
/// PIN for it.
///
/// # Errors
/// When nothing is checked, a key is not there or checked already, or the person entered the value.
pub fn checked(sheet: &Sheet, keys: &[String], said: &Keys, by: By<'_>, pin: bool) -> Result<Sheet, Message> {
    if keys.is_empty() {
        return Err(sheet_check_none());
    }
    let mut sheet = Sheet { revision: sheet.revision.saturating_add(1), ..sheet.clone() };
    for key in keys {
        let value = sheet.values.get_mut(key).ok_or_else(sheet_check_none)?;
        if let Some(check) = &value.checked {
            return Err(sheet_check_there(label(said, key), &check.by));
        }
        let id = Some(by.id.to_string());
        if value.entered_by_id == id {
            return Err(sheet_check_own(label(said, key), by.name));
        }
        value.checked = Some(Check { by: by.name.to_owned(), by_id: id, on: by.day.to_owned(), pin });
    }
    Ok(sheet)
}

/// An id for a new sheet from its title: small letters, digits and hyphens; with a number where it is taken.
#[must_use]
pub fn id_of(title: &str, taken: &dyn Fn(&str) -> bool) -> String {
    // It becomes a file's name.
    let signs = title
        .chars()
        .take(80)
        .map(|sign| if sign.is_ascii_alphanumeric() { sign.to_ascii_lowercase() } else { '-' });
    let text: String = signs.collect();
    let parts: Vec<&str> = text.split('-').filter(|part| !part.is_empty()).collect();
    let id = if parts.is_empty() { "sheet".to_owned() } else { parts.join("-") };
    if !taken(&id) {
        return id;
    }
    let mut number = 2;
    while taken(&format!("{id}-{number}")) {
        number += 1;
    }
    format!("{id}-{number}")
}
