//! A shop's first own vehicle: from nothing to a job that starts, with every number and text that is typed on the way
//! counted. Choices, counts and what is confirmed or taken over are taps.

use std::path::Path;

use panside_bay::BayError;
use panside_bay::sheets::{SheetFrom, SheetPage, Typed, TypedCoil, TypedPoint, TypedSheet, TypedValue};
use panside_bay::shelf::Shelf;
use panside_bay::values::{ShopValue, TypedShopValue};
use panside_procedure::format::Asked;
use panside_procedure::parts;

use crate::support::{ODE, PLAIN, SHEET, Shop, technician};

/// A checklist of the program, with its parts.
fn shipped(id: &str) -> Vec<u8> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../checklists");
    let part = |name: &str| std::fs::read(folder.join(parts::file_of(name))).ok();
    let own = std::fs::read(folder.join(format!("{id}.checklist.json"))).unwrap();
    parts::join(&own, &part).unwrap().text.into_bytes()
}

/// Somebody who fills in a sheet, with how much they typed and how often they tapped.
struct Hand<'a> {
    shop: &'a mut Shop,
    shelf: Shelf<'a>,
    page: SheetPage,
    typed: Vec<String>,
    taps: usize,
}

impl<'a> Hand<'a> {
    fn blank(shop: &'a mut Shop, shelf: Shelf<'a>, checklist: &str) -> Hand<'a> {
        let page = shop.bay.begin_sheet(shelf, &SheetFrom::Checklist(checklist.into())).unwrap();
        Hand { shop, shelf, page, typed: Vec::new(), taps: 1 }
    }

    fn put(&mut self, change: impl FnOnce(&mut TypedSheet)) {
        let mut typed = self.page.typed.clone();
        change(&mut typed);
        self.page = self.shop.bay.type_sheet(self.shelf, typed).unwrap();
    }

    fn type_text(&mut self, field: &str) -> String {
        self.typed.push(field.to_owned());
        format!("{field} of the invented van")
    }

    fn type_number(&mut self, field: &str, number: &str) -> String {
        self.typed.push(field.to_owned());
        number.to_owned()
    }

    /// Fills in one value that is needed, by taps where it can be.
    fn fill(&mut self, key: &str) {
        let view = self.page.view.values.iter().find(|value| value.key == key).unwrap().clone();
        let is = match self.page.typed.values[key].is.clone() {
            _ if view.offer.is_some() => {
                self.taps += 1;
                view.offer.unwrap()
            }
            Typed::Fact(_) => {
                self.taps += 1;
                Typed::Fact(view.choices[0].id.clone())
            }
            Typed::Count(_) => {
                self.taps += 2;
                Typed::Count("2".into())
            }
            Typed::Measure { unit, .. } => Typed::Measure { value: self.type_number(key, "7"), unit },
            Typed::Range { unit, .. } => {
                let (min, max) = (self.type_number(key, "40"), self.type_number(key, "70"));
                Typed::Range { min, max, unit }
            }
            Typed::Chart { temperature_unit, length_unit, agreement, .. } => {
                let number = |hand: &mut Hand<'_>, text: &str| hand.type_number(key, text);
                let first =
                    TypedPoint { at: number(self, "40"), low: number(self, "12"), high: number(self, "22") };
                // The second row has the same marks by a tap.
                let second = TypedPoint { at: number(self, "70"), ..first.clone() };
                self.taps += 1;
                Typed::Chart { temperature_unit, length_unit, points: vec![first, second], agreement }
            }
            Typed::Coils { unit, .. } => {
                let name = self.type_text(key);
                let (min, max) = (self.type_number(key, "5"), self.type_number(key, "6"));
                Typed::Coils { unit, coils: vec![TypedCoil { name, terminals: String::new(), min, max }] }
            }
            Typed::Torque { unit, positions, pattern, angle, .. } => {
                // The tolerance is tapped, and so is the number of fasteners where the sheet does not count them.
                self.taps += if view.fasteners.is_some() { 1 } else { 2 };
                let fasteners = if view.fasteners.is_some() { String::new() } else { "1".into() };
                let stages = vec![self.type_number(key, "9")];
                let tolerance_percent = "10".into();
                Typed::Torque { fasteners, stages, unit, tolerance_percent, positions, pattern, angle }
            }
            Typed::Text(_) => Typed::Text(self.type_text(key)),
        };
        self.put(|typed| typed.values.get_mut(key).unwrap().is = is);
    }

    /// Fills in all that is needed, in the order of the page, and keeps the sheet.
    fn fill_all(&mut self) -> String {
        let (title, source) = (self.type_text("title"), self.type_text("source"));
        self.put(|typed| (typed.title, typed.source) = (title, source));
        while let Some(key) = self.missing() {
            self.fill(&key);
        }
        let draft = self.page.typed.draft.clone();
        self.shop.bay.keep_sheet(self.shelf, &draft, &technician(), 0).unwrap()
    }

    fn missing(&self) -> Option<String> {
        let wrong = self.page.view.values.iter().find(|value| !value.problems.is_empty());
        wrong.map(|value| value.key.clone())
    }
}

fn shop_values(shop: &Shop, shelf: Shelf<'_>) -> Vec<ShopValue> {
    shop.bay.shop_values(shelf, 0).unwrap()
}

/// Confirms what is offered for all that the shop is asked for; answers how many taps that took.
fn confirm_all(shop: &mut Shop, shelf: Shelf<'_>) -> usize {
    let values = shop_values(shop, shelf);
    for ShopValue { value, view, seen, .. } in &values {
        let typed = TypedShopValue { key: view.key.clone(), seen: seen.clone(), value: value.clone() };
        shop.bay.put_shop_value(shelf, typed, Some(ODE), 0).unwrap();
    }
    values.len()
}

/// Makes the first sheet for a checklist and starts a job with it. Answers what was typed.
fn first_own_vehicle(id: &str) -> Vec<String> {
    let bytes = shipped(id);
    let checklists = [bytes.as_slice()];
    let shelf = Shelf { checklists: &checklists, sheets: &[], texts: &[], parts: &[] };
    let mut shop = Shop::new();
    let mut hand = Hand::blank(&mut shop, shelf, id);
    let sheet = hand.fill_all();
    let (typed, taps) = (hand.typed, hand.taps);
    let text = shop.bay.sheet_text(shelf, &sheet).unwrap();

    let offered = shop.bay.offers(shelf, PLAIN).unwrap();
    assert!(!offered[0].sheets[0].shop_lacks.is_empty(), "the start says what the shop has to say first");
    let Err(BayError::ShopLacks(names)) = shop.try_start(&bytes, &text) else {
        panic!("no job starts without the shop's values");
    };
    assert_eq!(names, offered[0].sheets[0].shop_lacks);

    let confirmed = confirm_all(&mut shop, shelf);
    let job = shop.try_start(&bytes, &text).unwrap();
    let open = shop.bay.job(job).unwrap();
    assert!(open.specs.measure("battery_rest_voltage").is_some(), "the job has the shop's values");
    println!("{id}: {} typed, {taps} taps, {confirmed} values of the shop by a tap each", typed.len());
    typed
}

#[test]
fn a_first_own_vehicle_for_the_level_check_takes_at_most_6_typed_values() {
    let typed = first_own_vehicle("level-check");
    assert!(typed.len() <= 6, "{typed:?}");
}

#[test]
fn a_first_own_vehicle_for_the_pan_job_takes_at_most_18_typed_values() {
    let typed = first_own_vehicle("pan-and-filter");
    assert!(typed.len() <= 18, "{typed:?}");
}

#[test]
fn a_page_asks_in_groups_for_what_is_needed_first() {
    let bytes = shipped("pan-and-filter");
    let checklists = [bytes.as_slice()];
    let shelf = Shelf { checklists: &checklists, sheets: &[], texts: &[], parts: &[] };
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(shelf, &SheetFrom::Checklist("pan-and-filter".into())).unwrap();
    let groups: Vec<_> = page.view.values.iter().map(|value| value.group).collect();
    assert!(groups.is_sorted(), "{groups:?}");
    for pair in page.view.values.windows(2).filter(|pair| pair[0].group == pair[1].group) {
        let needed = |at: usize| pair[at].asked == Asked::Needed;
        assert!(needed(0) || !needed(1), "{} stands before {}", pair[0].key, pair[1].key);
    }
    let of = |key: &str| page.view.values.iter().find(|value| value.key == key).unwrap();
    assert!(of("pan_bolt_torque").to_check && !of("pan_bolt_count").to_check && !of("drain_plug").to_check);
    assert!(of("fluid_gain").problems.is_empty() && of("fluid_gain").without.is_some());
    assert!(of("touch_limit_bare_metal").problems.is_empty());
}

#[test]
fn a_job_pins_the_shops_values_and_keeps_them_when_the_shop_has_others() {
    let bytes = shipped("level-check");
    let checklists = [bytes.as_slice()];
    let shelf = Shelf { checklists: &checklists, sheets: &[], texts: &[], parts: &[] };
    let mut shop = Shop::new();
    let sheet = Hand::blank(&mut shop, shelf, "level-check").fill_all();
    let text = shop.bay.sheet_text(shelf, &sheet).unwrap();
    confirm_all(&mut shop, shelf);
    let job = shop.try_start(&bytes, &text).unwrap();

    let battery = |shop: &Shop| {
        let values = shop_values(shop, shelf);
        values.into_iter().find(|one| one.view.key == "battery_rest_voltage").unwrap()
    };
    let ShopValue { value, seen, kept, .. } = battery(&shop);
    let kept = kept.unwrap();
    assert_eq!((kept.by.as_str(), kept.on.as_deref()), ("R. Ode", Some("2026-03-02")));
    let mut typed = TypedShopValue { key: "battery_rest_voltage".into(), seen, value };
    typed.value.is = Typed::Measure { value: "12,6".into(), unit: "V".into() };
    shop.bay.put_shop_value(shelf, typed.clone(), Some(ODE), 0).unwrap();
    let late = shop.bay.put_shop_value(shelf, typed, Some(ODE), 0).unwrap_err().to_string();
    assert!(late.contains("This shop value was changed meanwhile"), "{late}");

    let mut shop = shop.restarted();
    let open = shop.bay.job(job).unwrap();
    assert_eq!(open.specs.measure("battery_rest_voltage").unwrap().value(), 12.4);
    let pinned = &open.specs.sheet.values["battery_rest_voltage"];
    assert_eq!((pinned.source.as_str(), pinned.entered_by.as_str()), ("Common practice", "R. Ode"));
    let next = shop.try_start(&bytes, &text).unwrap();
    assert_eq!(shop.bay.job(next).unwrap().specs.measure("battery_rest_voltage").unwrap().value(), 12.6);
}

#[test]
fn a_shop_value_that_makes_no_sense_is_told_and_not_kept() {
    let bytes = shipped("level-check");
    let checklists = [bytes.as_slice()];
    let shelf = Shelf { checklists: &checklists, sheets: &[], texts: &[], parts: &[] };
    let mut shop = Shop::new();
    let ShopValue { value, view, seen, .. } = shop_values(&shop, shelf).remove(0);
    let with = |value: &str, unit: &str, source: &str| {
        let is = Typed::Measure { value: value.into(), unit: unit.into() };
        let value = TypedValue { is, source: source.into(), taken: None };
        TypedShopValue { key: view.key.clone(), seen: seen.clone(), value }
    };
    assert_eq!(value.source, "Common practice");
    for (typed, says) in [
        (with("", "V", "common practice"), "A number is missing"),
        (with("12,4", "mm", "common practice"), "Battery voltage"),
        (with("12,4", "V", " "), "Say where the value comes from"),
    ] {
        let told = shop.bay.put_shop_value(shelf, typed, Some(ODE), 0).unwrap_err().to_string();
        assert!(told.contains(says), "{told}");
    }
    let other = TypedShopValue { key: "no_such_key".into(), ..with("12,4", "V", "common practice") };
    assert!(matches!(
        shop.bay.put_shop_value(shelf, other, Some(ODE), 0),
        Err(BayError::NotOnShelf(key)) if key == "no_such_key"
    ));
    assert_eq!(shop_values(&shop, shelf)[0].kept, None);
}

#[test]
fn values_taken_over_from_another_sheet_are_unchecked_and_marked_until_they_are_changed() {
    let checklist = crate::support::CHECKLIST;
    let shelf = Shelf { checklists: &[checklist], sheets: &[SHEET], texts: &[], parts: &[] };
    let mut shop = Shop::new();
    let page = shop.bay.begin_sheet(shelf, &SheetFrom::Copy("invented-van".into())).unwrap();
    let from = |page: &SheetPage, key: &str| {
        page.view.values.iter().find(|value| value.key == key).unwrap().taken_from.clone()
    };
    assert!(from(&page, "coil").unwrap().ends_with(", revision 1"), "{:?}", from(&page, "coil"));
    let mut typed = TypedSheet { title: "Our van".into(), source: "our manual".into(), ..page.typed };
    let range = Typed::Range { min: "6,1".into(), max: "6,9".into(), unit: "Ω".into() };
    typed.values.get_mut("coil").unwrap().is = range;
    let page = shop.bay.type_sheet(shelf, typed).unwrap();
    assert_eq!(from(&page, "coil"), None);
    let id = shop.bay.keep_sheet(shelf, &page.typed.draft, &technician(), 0).unwrap();
    let kept = panside_procedure::load::sheet(&shop.bay.sheet_text(shelf, &id).unwrap()).unwrap();
    assert_eq!(kept.values["coil"].source, "our manual", "what was changed no longer comes from there");
    assert_eq!(kept.values["coil"].taken_from, None);
    let cure = &kept.values["cure"];
    assert_ne!(cure.source, "our manual", "what was taken over keeps its source");
    assert!(cure.taken_from.is_some() && cure.checked.is_none());
    assert!(from(&shop.bay.sheet(shelf, &id).unwrap(), "cure").is_some());
}
