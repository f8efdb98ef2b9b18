//! What holds for two or three tablets whatever they do, and however they hear of each other.

use std::collections::BTreeSet;

use panside_journal::{Hash, PersonId};
use panside_procedure::format::Role;
use panside_shop::{PinSetBy, Shop, ShopCommand, ShopEvent, ShopHappened, Thing};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use crate::support::*;

const NAMES: &[&str] = &["Bo Lind", "Bo Lund", "bo lund", "Cy Marsh", "Ada Pike", "Ada Pyke"];
const TOOLS: &[&str] = &["quarter-inch", "half-inch", "Half Inch", "beam"];

/// What happens at one tablet.
#[derive(Debug, Clone)]
enum Turn {
    /// Somebody asks for something.
    Ask(Asked, Index),
    /// It hears of some events of another tablet: those at which the mask has a bit.
    Hear(Index, u64),
    /// Its wall clock is set.
    Clock(i64),
}

#[derive(Debug, Clone)]
enum Asked {
    Add(u128, &'static str, bool),
    Change(Index, &'static str, BTreeSet<Role>, bool),
    Leave(Index),
    Pin(Index),
    Tool(u128, &'static str, u8),
    RemoveTool(u128),
    Sheet(u8),
    ChooseSheet(Index),
    Checklist(u8),
    Device(&'static str),
    Value(&'static str),
}

fn asked() -> impl Strategy<Value = Asked> {
    let roles = select(vec![
        technician(),
        [Role::ServiceWriter].into(),
        [Role::Technician, Role::SecondPerson].into(),
    ]);
    prop_oneof![
        2 => (3..6_u128, select(NAMES), any::<bool>()).prop_map(|(id, name, lead)| Asked::Add(id, name, lead)),
        6 => (any::<Index>(), select(NAMES), roles, any::<bool>())
            .prop_map(|(who, name, roles, lead)| Asked::Change(who, name, roles, lead)),
        1 => any::<Index>().prop_map(Asked::Leave),
        1 => any::<Index>().prop_map(Asked::Pin),
        4 => (1..3_u128, select(TOOLS), 10..14_u8).prop_map(|(id, name, max)| Asked::Tool(id, name, max)),
        2 => (1..3_u128).prop_map(Asked::RemoveTool),
        3 => (0..4_u8).prop_map(Asked::Sheet),
        1 => any::<Index>().prop_map(Asked::ChooseSheet),
        1 => (0..3_u8).prop_map(Asked::Checklist),
        1 => select(["Bay 1", "Bay 2"].as_slice()).prop_map(Asked::Device),
        1 => select(["48", "50"].as_slice()).prop_map(Asked::Value),
    ]
}

fn turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        6 => (asked(), any::<Index>()).prop_map(|(asked, who)| Turn::Ask(asked, who)),
        3 => (any::<Index>(), any::<u64>()).prop_map(|(from, mask)| Turn::Hear(from, mask)),
        2 => any::<Index>().prop_map(|from| Turn::Hear(from, u64::MAX)),
        1 => (-20..20_i64).prop_map(Turn::Clock),
    ]
}

fn command(tablet: &Tablet, asked: &Asked) -> ShopCommand {
    let shop = tablet.shop();
    let people: Vec<PersonId> = shop.people().into_keys().collect();
    let sheet = "invented-van";
    match asked {
        Asked::Add(id, name, lead) => ShopCommand::AddPerson {
            id: person_id(*id),
            name: (*name).into(),
            roles: technician(),
            lead: *lead,
        },
        Asked::Change(who, name, roles, lead) => {
            let id = who.get(&people).to_owned();
            let seen = tablet.seen(&Thing::Person(id.to_owned()));
            ShopCommand::ChangePerson { id, seen, name: (*name).into(), roles: roles.clone(), lead: *lead }
        }
        Asked::Leave(who) => {
            let id = *who.get(&people);
            ShopCommand::RemovePerson { id, seen: tablet.seen(&Thing::Person(id)) }
        }
        Asked::Pin(who) => {
            let person = who.get(&people).to_owned();
            let seen = tablet.seen(&Thing::Pin(person.to_owned()));
            ShopCommand::SetPin { person, seen, how: PinSetBy::OwnByOld }
        }
        Asked::Tool(id, name, max) => {
            let id = tool_id(*id);
            let seen = tablet.seen(&Thing::Tool(id));
            ShopCommand::KeepTool { id, seen, tool: Box::new(tool(name, &max.to_string())) }
        }
        Asked::RemoveTool(id) => {
            let id = tool_id(*id);
            ShopCommand::RemoveTool { id, seen: tablet.seen(&Thing::Tool(id)) }
        }
        Asked::Sheet(content) => {
            let next = shop.next_revision(sheet);
            let seen = tablet.seen(&Thing::Sheet(sheet.into()));
            let sheet = revision(sheet, next, &format!("{next} {content}"));
            ShopCommand::KeepSheet { sheet, made_from: None, seen }
        }
        Asked::ChooseSheet(which) => {
            let thing = Thing::Sheet(sheet.into());
            let heads = shop.heads(&thing);
            let ShopEvent::SheetKept(chosen) = &which.get(&heads).event else { unreachable!() };
            let (sheet, made_from) = (chosen.sheet.clone(), chosen.made_from);
            ShopCommand::KeepSheet { sheet, made_from, seen: tablet.seen(&thing) }
        }
        Asked::Checklist(content) => {
            let seen = tablet.seen(&Thing::Checklist("pan-short".into()));
            ShopCommand::AdoptChecklist {
                checklist: revision("pan-short", u32::from(*content) + 1, &content.to_string()),
                seen,
            }
        }
        Asked::Value(degrees) => touch_limit(tablet.seen(&Thing::Value("touch_limit".into())), degrees),
        Asked::Device(name) => {
            let device = tablet.device;
            ShopCommand::NameDevice {
                device,
                seen: tablet.seen(&Thing::Device(device)),
                name: (*name).into(),
            }
        }
    }
}

/// Lets the turns happen and answers every event that was written.
fn run(tablets: usize, turns: &[(Index, Turn)]) -> (Vec<Tablet>, Vec<ShopHappened>) {
    let (first, second) = two_tablets();
    let mut written = first.known.clone();
    let mut third = Tablet::new(0xC);
    third.receive(&first);
    let mut all = vec![first, second, third];
    all.truncate(tablets);
    for (at, turn) in turns {
        let at = at.index(tablets);
        match turn {
            Turn::Ask(asked, who) => {
                let people: Vec<PersonId> = all[at].shop().people().into_keys().collect();
                // The last two may have left, each on one tablet.
                if people.is_empty() {
                    continue;
                }
                let command = command(&all[at], asked);
                let who = match &command {
                    ShopCommand::SetPin { person, .. } => person.to_owned(),
                    _ => who.get(&people).to_owned(),
                };
                written.extend(all[at].ask(&command, &who));
            }
            Turn::Hear(from, mask) => {
                let other = all[from.index(tablets)].known.clone();
                let heard = other.into_iter().enumerate().filter(|(bit, _)| mask >> (bit % 64) & 1 == 1);
                heard.for_each(|(_, happened)| all[at].take(happened));
            }
            Turn::Clock(by) => all[at].wall_ms += by,
        }
    }
    (all, written)
}

/// Whether the state that the event says is what the shop shows.
fn is_shown(shop: &Shop, happened: &ShopHappened) -> bool {
    match &happened.event {
        ShopEvent::PersonAdded(_) | ShopEvent::PersonChanged(_) => {
            let said = happened.event.person().unwrap();
            let mut shown = shop.people()[&said.id].clone();
            if shop.stand_in_lead() == Some(&said.id) {
                shown.lead = false;
            }
            shown == *said
        }
        ShopEvent::PersonLeft(body) => !shop.people().contains_key(&body.id),
        ShopEvent::PinSet(_) => shop.newest(&happened.event.thing()) == Some(happened),
        ShopEvent::ToolKept(body) => shop.tools().get(&body.id) == Some(&&body.tool),
        ShopEvent::ToolRemoved(body) => !shop.tools().contains_key(&body.id),
        ShopEvent::SheetKept(body) => shop.sheets()[body.sheet.id.as_str()].sheet == body.sheet,
        ShopEvent::ChecklistAdopted(body) => {
            shop.checklists()[body.checklist.id.as_str()].checklist == body.checklist
        }
        ShopEvent::DeviceNamed(body) => shop.devices()[&body.device] == body.name,
        ShopEvent::ValueKept(body) => shop.values()[body.key.as_str()].body == body,
    }
}

/// A change of the thing that leaves it as it is shown.
fn keep_as_shown(shop: &Shop, thing: &Thing) -> Option<(ShopCommand, PersonId)> {
    let seen = hashes(&shop.heads(thing));
    let people = shop.people();
    let lead = people.values().find(|person| person.lead)?.id.to_owned();
    let command = match (&shop.newest(thing)?.event, thing.clone()) {
        (ShopEvent::ToolKept(body), Thing::Tool(id)) => {
            ShopCommand::KeepTool { id, seen, tool: Box::new(body.tool.clone()) }
        }
        (ShopEvent::SheetKept(body), _) => {
            ShopCommand::KeepSheet { sheet: body.sheet.clone(), made_from: body.made_from, seen }
        }
        (ShopEvent::ChecklistAdopted(body), _) => {
            ShopCommand::AdoptChecklist { checklist: body.checklist.clone(), seen }
        }
        (ShopEvent::DeviceNamed(body), Thing::Device(device)) => {
            ShopCommand::NameDevice { device, seen, name: body.name.clone() }
        }
        (ShopEvent::ValueKept(body), _) => {
            let (name, is, source) = (body.name.clone(), body.is.clone(), body.source.clone());
            ShopCommand::KeepValue { key: body.key.clone(), seen, name, is, source }
        }
        (ShopEvent::PinSet(_), Thing::Pin(person)) => {
            return Some((
                ShopCommand::SetPin { person: person.to_owned(), seen, how: PinSetBy::OwnByOld },
                person,
            ));
        }
        (_, Thing::Person(id)) => {
            let person = people[&id].clone();
            ShopCommand::ChangePerson { id, seen, name: person.name, roles: person.roles, lead: person.lead }
        }
        _ => return None,
    };
    Some((command, lead))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, ..ProptestConfig::default() })]

    #[test]
    fn any_order_any_split_and_any_repetition_give_the_same_shop(
        tablets in 2..4_usize,
        turns in prop::collection::vec((any::<Index>(), turn()), 0..40),
        order in any::<u64>(),
        cut in any::<Index>(),
        twice in any::<u64>(),
    ) {
        let (_, written) = run(tablets, &turns);
        let shop = Shop::fold(written.clone());

        let mut shuffled = written.clone();
        shuffled.sort_by_key(|happened| Hash::of(format!("{order} {}", happened.hash).as_bytes()));
        let again = written.iter().enumerate().filter(|(bit, _)| twice >> (bit % 64) & 1 == 1);
        shuffled.extend(again.map(|(_, happened)| happened.clone()));
        let (one, other) = shuffled.split_at(cut.index(shuffled.len()));
        let mut split = Shop::fold(other.to_vec());
        one.iter().rev().for_each(|happened| split.take(happened.clone()));

        prop_assert_eq!(&split, &shop);
        prop_assert_eq!(split.both_sides(), shop.both_sides());
        prop_assert_eq!(split.people(), shop.people());
        prop_assert_eq!(split.look_alikes(), shop.look_alikes());
    }

    #[test]
    fn no_change_vanishes(
        tablets in 2..4_usize,
        turns in prop::collection::vec((any::<Index>(), turn()), 0..40),
    ) {
        let (all, written) = run(tablets, &turns);
        // Each tablet with the gaps of what it heard, and all of them together.
        let seen_by = all.iter().map(|tablet| tablet.known.clone()).chain([written]);
        for events in seen_by {
            let shop = Shop::fold(events.clone());
            let both = shop.both_sides();
            let told: BTreeSet<Hash> =
                both.iter().flat_map(|both| &both.sides).map(|side| side.happened.hash).collect();
            for happened in &events {
                let of_thing = |other: &&ShopHappened| other.event.thing() == happened.event.thing();
                let later = events.iter().filter(of_thing).find(|other| other.event.replaces().contains(&happened.hash));
                match later {
                    Some(_) => prop_assert!(!told.contains(&happened.hash), "replaced and told as a side"),
                    None => prop_assert!(is_shown(&shop, happened) || told.contains(&happened.hash), "vanished"),
                }
            }
            let here: BTreeSet<Hash> = events.iter().map(|happened| happened.hash).collect();
            let named = events.iter().flat_map(|happened| happened.event.replaces().clone());
            prop_assert_eq!(shop.missing(), named.filter(|hash| !here.contains(hash)).collect());
            let people = shop.people();
            prop_assert!(people.is_empty() || people.values().any(|person| person.lead), "a shop has a lead");
        }
    }

    #[test]
    fn what_both_sides_did_is_settled_by_who_saw_both(
        tablets in 2..4_usize,
        turns in prop::collection::vec((any::<Index>(), turn()), 0..40),
    ) {
        let (all, _) = run(tablets, &turns);
        let mut tablet = all[0].clone();
        all.iter().for_each(|other| tablet.receive(other));
        let things: Vec<Thing> = tablet.shop().both_sides().iter().map(|both| both.thing.clone()).collect();
        let nobody = tablet.shop().people().is_empty();
        for thing in things.into_iter().filter(|_| !nobody) {
            let (command, who) = keep_as_shown(tablet.shop(), &thing).unwrap();
            tablet.ask(&command, &who).unwrap();
            prop_assert_eq!(tablet.shop().heads(&thing).len(), 1);
        }
        prop_assert!(nobody || tablet.shop().both_sides().is_empty());
    }
}
