//! Pieces counted against the number that is expected in the hand.

use std::collections::BTreeMap;

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Count;

use super::kind::{self, Kind};
use super::{Classified, Context, named};
use crate::command::Refusal;
use crate::message::{
    Message, count_accounted, count_all, count_item_missing, count_item_unknown, count_more, count_short,
    limit_count,
};
use crate::sheet::Specs;
use crate::value::{Accounted, EntryValue};

pub(super) fn classify(
    asked: &Count,
    counted: &BTreeMap<String, u32>,
    accounted: Option<&Accounted>,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let name = |id| context.checklist.item_name(id);
    if let Some(other) = counted.keys().find(|id| !asked.of.contains_key(*id)) {
        return Err(count_item_unknown(name(other)).into());
    }
    let mut all = Vec::new();
    let mut short = Vec::new();
    for (id, &expected) in &asked.of {
        let Some(&pieces) = counted.get(id) else { return Err(count_item_missing(name(id)).into()) };
        if pieces > u32::from(expected) {
            return Err(count_more(name(id), i64::from(pieces), i64::from(expected)).into());
        }
        let said = format!("{} {pieces}/{expected}", name(id));
        if pieces < u32::from(expected) { short.push(said) } else { all.push(said) }
    }
    let value = |accounted: Option<Accounted>| EntryValue::Count { of: counted.clone(), accounted };
    if short.is_empty() {
        return Ok(Classified::new("all", value(None), count_all(all)));
    }
    let Some(accounted) = accounted else {
        return Ok(Classified::new("short", value(None), count_short(short)));
    };
    let (kept, name) = named(accounted, context.names)?;
    let said = count_accounted(short, &kept.reason, name);
    Ok(Classified::new("accounted", value(Some(kept)), said))
}

impl Kind for Count {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Count { of, accounted } => classify(self, of, accounted.as_ref(), context),
            _ => Err(kind::other("count", value)),
        }
    }

    fn limits(&self, _specs: &Specs, checklist: &Checklist) -> Vec<Message> {
        let pieces = self.of.iter().map(|(id, pieces)| format!("{pieces} {}", checklist.item_name(id)));
        let pieces: Vec<_> = pieces.collect();
        // A step that the vehicle does not have has nothing to count.
        if pieces.is_empty() { Vec::new() } else { vec![limit_count(pieces)] }
    }

    fn units(&self) -> Vec<String> {
        Vec::new()
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, _value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        None
    }

    fn in_short(&self, value: &EntryValue, checklist: &Checklist) -> Option<String> {
        let EntryValue::Count { of, .. } = value else { return None };
        let counted = of.iter().map(|(item, pieces)| format!("{} {pieces}", checklist.item_name(item)));
        Some(counted.collect::<Vec<_>>().join(", "))
    }

    fn is_measured(&self) -> bool {
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::message::{refused_no_person, refused_no_reason};
    use crate::testing::{person, try_entry};

    fn count(
        bolts: u32,
        gaskets: Option<u32>,
        accounted: Option<(&str, &str)>,
    ) -> Result<Classified, Refusal> {
        let mut of = BTreeMap::from([("pan_bolts".to_owned(), bolts)]);
        of.extend(gaskets.map(|gaskets| ("gasket".to_owned(), gaskets)));
        let accounted = accounted.map(|(reason, by)| Accounted { reason: reason.into(), by: person(by) });
        try_entry("pan_down", "bolts", EntryValue::Count { of, accounted })
    }

    #[test]
    fn all_pieces_in_the_hand_are_all() {
        assert_eq!(count(16, Some(1), None).unwrap().class, "all");
    }

    #[test]
    fn a_missing_bolt_makes_the_count_short_until_it_is_accounted_for_by_name() {
        let short = count(15, Some(1), None).unwrap();
        assert_eq!(
            (short.class.as_str(), short.said[0].clone()),
            ("short", count_short(vec!["pan bolts 15/16".into()]))
        );
        assert_eq!(
            count(15, Some(1), Some(("snapped, stays in the case", "Ada"))).unwrap().class,
            "accounted"
        );
    }

    #[test]
    fn accounting_needs_a_reason_and_a_person_of_the_shop() {
        assert_eq!(count(15, Some(1), Some(("  ", "Ada"))).unwrap_err().message, refused_no_reason());
        assert_eq!(count(15, Some(1), Some(("snapped", "Nobody"))).unwrap_err().message, refused_no_person());
    }

    #[test]
    fn more_than_there_are_is_refused_and_every_item_must_be_counted() {
        assert_eq!(count(17, Some(1), None).unwrap_err().message, count_more("pan bolts", 17_i64, 16_i64));
        assert_eq!(count(16, None, None).unwrap_err().message, count_item_missing("pan gasket"));
    }
}
