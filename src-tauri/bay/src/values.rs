//! Values that the shop has for all its vehicles: common practice is offered where a checklist says what that is, a person
//! keeps it, and a job pins it with its spec sheet where the sheet has none of its own.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::clock::civil_date;
use panside_job::sheet::{
    SheetEntered, SheetValueView, ShopKey, TypedValue, asked_of_shop, judge_shop_value, shop_keys,
    shop_value_view, with_shop,
};
use panside_job::size;
use panside_journal::{Hash, PersonId};
use panside_messages::{Arg, Message};
use panside_procedure::Procedure;
use panside_procedure::format::Sheet;
use panside_procedure::format::sheet::SheetValue;
use panside_shop::{OfShop, Shop, ShopCommand, Thing};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::{bay_common_practice, bay_sheet_field};
use crate::setup::one_of_the_shop;
use crate::shelf::Shelf;
use crate::shop::hashes;
use crate::{Bay, BayError};

/// A value that checklists ask of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ShopValue {
    /// What it is, or what is common practice; blank where no checklist says that.
    pub value: TypedValue,
    /// What stands beside it.
    pub view: SheetValueView,
    /// Who kept it; nothing: the shop has none yet.
    pub kept: Option<SheetEntered>,
    /// The newest events about it that this shows. A change names them, so that one that came meanwhile is noticed.
    pub seen: BTreeSet<Hash>,
}

/// A value as typed for the shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedShopValue {
    /// Its key on spec sheets.
    pub key: String,
    /// What [`ShopValue::seen`] has of it.
    pub seen: BTreeSet<Hash>,
    /// What it is, with where it comes from.
    pub value: TypedValue,
}

impl Bay {
    /// The values that checklists ask of the shop.
    ///
    /// # Errors
    /// [`BayError::Checklist`] for a checklist that does not load; [`BayError::Store`] with what the disk said.
    pub fn shop_values(&self, shelf: Shelf<'_>, utc_offset_min: i32) -> Result<Vec<ShopValue>, BayError> {
        let keys = shop_keys(&self.procedures(shelf)?);
        let shop = self.shop()?;
        let usual_source = self.speaker.say(&bay_common_practice());
        let values = keys.iter().map(|(name, key)| {
            let kept = shop.values().get(name.as_str()).copied();
            let value = kept.map_or_else(|| key.usual(&usual_source), typed);
            ShopValue {
                view: self.value_view(name, key, &value),
                value,
                kept: kept.map(|kept| entered(&shop, kept, utc_offset_min)),
                seen: hashes(&shop, &Thing::Value(name.clone())),
            }
        });
        let mut values: Vec<_> = values.collect();
        values.sort_by_key(|one| one.view.group);
        Ok(values)
    }

    /// What is to be said of a value while it is typed.
    ///
    /// # Errors
    /// [`BayError::NotOnShelf`] for a key that no checklist asks of the shop; else as [`Bay::shop_values`].
    pub fn judge_shop_value(
        &self,
        shelf: Shelf<'_>,
        typed: &TypedShopValue,
    ) -> Result<SheetValueView, BayError> {
        Ok(self.value_view(&typed.key, &self.shop_key(shelf, &typed.key)?, &typed.value))
    }

    /// Keeps a value that `who` typed or confirmed for all vehicles, and answers all of them.
    ///
    /// # Errors
    /// [`BayError::SheetNotKept`] with everything that is wrong with it; [`BayError::Shop`] when it was changed meanwhile
    /// or for somebody who is not of the shop; [`BayError::Refused`] for more than is taken; else as
    /// [`Bay::judge_shop_value`].
    pub fn put_shop_value(
        &mut self,
        shelf: Shelf<'_>,
        typed: TypedShopValue,
        who: Option<PersonId>,
        utc_offset_min: i32,
    ) -> Result<Vec<ShopValue>, BayError> {
        size::check(&typed)?;
        let key = self.shop_key(shelf, &typed.key)?;
        let name = key.said.label.clone();
        judge_shop_value(&key, &typed.value).map_err(|problems| {
            let named = |message: Message| bay_sheet_field(name.as_str(), Arg::Sentences(vec![message]));
            BayError::SheetNotKept(problems.into_iter().map(|problem| named(problem.message)).collect())
        })?;
        let TypedShopValue { key, seen, value: TypedValue { is, source, .. } } = typed;
        let command = ShopCommand::KeepValue { key, seen, name, is, source };
        self.change_shop(one_of_the_shop(who)?, &command, &[])?;
        self.shop_values(shelf, utc_offset_min)
    }

    /// What people read for the values that the shop has to have before a job can be started on the vehicle of a sheet.
    pub(crate) fn shop_lacks(&self, procedure: &Procedure, sheet: &Sheet) -> Result<Vec<String>, BayError> {
        let of_shop = self.of_shop(procedure, sheet, 0)?;
        let lacking = of_shop.into_iter().filter(|(_, value)| value.is_none());
        Ok(lacking.map(|(key, _)| procedure.checklist.sheet_label(&key).to_owned()).collect())
    }

    /// The sheet that a job on its vehicle pins: with the shop's values for what it has none of its own. Nothing where it
    /// has all of them.
    ///
    /// # Errors
    /// [`BayError::ShopLacks`] with what the shop has to say first.
    pub(crate) fn with_shop_values(
        &self,
        procedure: &Procedure,
        sheet: &Sheet,
        utc_offset_min: i32,
    ) -> Result<Option<Sheet>, BayError> {
        let lacks = self.shop_lacks(procedure, sheet)?;
        if !lacks.is_empty() {
            return Err(BayError::ShopLacks(lacks));
        }
        let of_shop = self.of_shop(procedure, sheet, utc_offset_min)?;
        let values: BTreeMap<_, _> =
            of_shop.into_iter().filter_map(|(key, value)| Some((key, value?))).collect();
        Ok((!values.is_empty()).then(|| with_shop(sheet, values)))
    }

    /// What the shop says for the keys that the sheet leaves to it; nothing for one of which it says nothing that fits.
    fn of_shop(
        &self,
        procedure: &Procedure,
        sheet: &Sheet,
        utc_offset_min: i32,
    ) -> Result<BTreeMap<String, Option<SheetValue>>, BayError> {
        let keys = shop_keys([procedure]);
        let shop = self.shop()?;
        let values = shop.values();
        let said = asked_of_shop(procedure, sheet).into_iter().map(|name| {
            let value = keys.get(&name).zip(values.get(name.as_str())).and_then(|(key, kept)| {
                let is = judge_shop_value(key, &typed(*kept)).ok()?;
                let SheetEntered { by, on } = entered(&shop, *kept, utc_offset_min);
                Some(SheetValue {
                    is,
                    source: kept.body.source.clone(),
                    entered_by: by,
                    entered_by_id: Some(kept.who.to_string()),
                    entered_on: on,
                    taken_from: None,
                    checked: None,
                })
            });
            (name, value)
        });
        Ok(said.collect())
    }

    fn shop_key(&self, shelf: Shelf<'_>, name: &str) -> Result<ShopKey, BayError> {
        shop_keys(&self.procedures(shelf)?).remove(name).ok_or_else(|| BayError::NotOnShelf(name.to_owned()))
    }

    fn value_view(&self, name: &str, key: &ShopKey, value: &TypedValue) -> SheetValueView {
        let mut view = shop_value_view(name, key, value);
        view.each_message(&mut |message| self.speaker.fill(message));
        view
    }
}

fn typed(kept: OfShop<'_>) -> TypedValue {
    TypedValue { is: kept.body.is.clone(), source: kept.body.source.clone(), taken: None }
}

/// Who kept a value, and on which day.
fn entered(shop: &Shop, kept: OfShop<'_>, utc_offset_min: i32) -> SheetEntered {
    let name = |people: BTreeMap<PersonId, _>| {
        people.get(&kept.who).map(|one: &panside_shop::Person| one.name.clone())
    };
    let by = name(shop.people()).or_else(|| name(shop.left())).unwrap_or_else(|| kept.who.to_string());
    SheetEntered { by, on: Some(civil_date(kept.wall_ms, utc_offset_min).to_string()) }
}
