//! What two tablets do to the same thing without knowing of each other.

use std::collections::BTreeSet;

use panside_job::event::Pinned;
use panside_journal::Hash;
use panside_procedure::format::Role;
use panside_shop::event::{PersonChanged, ToolKept};
use panside_shop::{PinSetBy, Said, Shop, ShopCommand, Thing};

use crate::support::*;

/// The shop after both tablets heard of each other, told in either order.
fn merged(first: &Tablet, second: &Tablet) -> Shop {
    let shop = Shop::fold(first.known.iter().chain(&second.known).cloned());
    let other = Shop::fold(second.known.iter().rev().chain(first.known.iter().rev()).cloned());
    assert_eq!(shop, other);
    shop
}

#[test]
fn one_change_after_another_leaves_nothing_to_settle() {
    let (mut first, mut second) = two_tablets();
    first.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    second.receive(&first);
    second.change(&bo(), ("Bo Lunde", technician(), false), &ada()).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.people()[&bo()].name, "Bo Lunde");
    assert_eq!(shop.both_sides(), []);
    let history = shop.history(&Thing::Person(bo()));
    let names = history.iter().filter_map(|one| one.event.name());
    assert_eq!(names.collect::<Vec<_>>(), ["Bo Lind", "Bo Lund", "Bo Lunde"]);
}

#[test]
fn a_person_changed_on_both_sides_is_told_with_who_when_where_and_what() {
    let (mut first, mut second) = two_tablets();
    second.wall_ms = 5_000;
    let roles: BTreeSet<Role> = [Role::Technician, Role::ServiceWriter].into();
    let named = first.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    let promoted = second.change(&bo(), ("Bo Lind", roles.clone(), false), &bo()).unwrap();
    let shop = merged(&first, &second);

    let both = shop.both_sides();
    assert_eq!(both.len(), 1);
    assert_eq!(both[0].thing, &Thing::Person(bo()));
    let sides = &both[0].sides;
    assert_eq!([sides[0].happened, sides[1].happened], [&promoted, &named], "the later clock is shown first");
    assert_eq!(sides[0].changed, [Said::Roles(roles.clone())].into());
    assert_eq!(sides[1].changed, [Said::Name("Bo Lund".into())].into());
    assert_eq!((&sides[0].happened.who, sides[0].happened.device), (&bo(), second.device));
    assert_eq!(shop.people()[&bo()].roles, roles);
    assert_eq!(shop.people()[&bo()].name, "Bo Lind");
}

#[test]
fn a_change_that_names_both_sides_settles_it_and_one_side_alone_does_not() {
    let (mut first, mut second) = two_tablets();
    first.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    second.change(&bo(), ("Bo Lond", technician(), false), &ada()).unwrap();
    let mut third = Tablet::new(0xC);
    third.receive(&second);
    third.change(&bo(), ("Bo Londe", technician(), false), &ada()).unwrap();
    third.receive(&first);
    assert_eq!(third.shop().both_sides().len(), 1, "a change of one side leaves the other standing");
    first.receive(&third);
    first.change(&bo(), ("Bo Lunde", technician(), false), &ada()).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.both_sides(), []);
    assert_eq!(shop.people()[&bo()].name, "Bo Lunde");
}

#[test]
fn both_sides_can_be_settled_by_keeping_what_is_shown() {
    let (mut first, mut second) = two_tablets();
    first.keep_tool(tool_id(1), tool("quarter-inch", "20")).unwrap();
    second.keep_tool(tool_id(1), tool("quarter-inch", "25")).unwrap();
    first.receive(&second);
    let shown = (*first.shop().tools()[&tool_id(1)]).clone();
    first.keep_tool(tool_id(1), shown.clone()).unwrap();
    assert_eq!(first.shop().both_sides(), []);
    assert_eq!(first.shop().tools()[&tool_id(1)], &shown);
}

#[test]
fn both_sides_that_say_the_same_leave_nothing_to_settle() {
    let (mut first, mut second) = two_tablets();
    second.wall_ms = 9_000;
    let two = revision("invented-van", 2, "two");
    first.keep_sheet(two.clone(), None).unwrap();
    second.keep_sheet(two.clone(), None).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.both_sides(), []);
    assert_eq!(shop.sheets()["invented-van"].sheet, two);
    // The next change still has to name both.
    assert_eq!(shop.heads(&Thing::Sheet("invented-van".into())).len(), 2);
}

#[test]
fn a_tool_removed_on_one_side_and_changed_on_the_other_stays_in_sight() {
    let (mut first, mut second) = two_tablets();
    first.keep_tool(tool_id(1), tool("quarter-inch", "20")).unwrap();
    second.wall_ms = 90_000;
    second.remove_tool(tool_id(1)).unwrap();
    assert_eq!(second.shop().tools().len(), 0);
    let shop = merged(&first, &second);
    assert_eq!(shop.tools()[&tool_id(1)].max, "20", "though it was removed later");
    let both = shop.both_sides();
    assert_eq!(both[0].thing, &Thing::Tool(tool_id(1)));
    assert_eq!(both[0].sides[1].changed, [Said::Removed].into());
    assert_eq!(both[0].sides[0].changed, [Said::Range("3".into(), "20".into(), "N·m".into())].into());
}

#[test]
fn a_tool_removed_on_both_sides_is_gone_and_can_come_back() {
    let (mut first, mut second) = two_tablets();
    first.remove_tool(tool_id(1)).unwrap();
    second.remove_tool(tool_id(1)).unwrap();
    first.receive(&second);
    assert_eq!(first.shop().tools().len(), 0);
    assert_eq!(first.shop().both_sides(), []);
    first.keep_tool(tool_id(1), tool("quarter-inch", "15")).unwrap();
    assert_eq!(merged(&first, &second).tools().len(), 1);
}

#[test]
fn the_same_revision_number_with_different_content_is_two_revisions() {
    let (mut first, mut second) = two_tablets();
    let base = Hash::of(b"one");
    second.wall_ms = 5_000;
    first.keep_sheet(revision("invented-van", 2, "warmer"), Some(base)).unwrap();
    second.keep_sheet(revision("invented-van", 2, "colder"), Some(base)).unwrap();
    let shop = merged(&first, &second);
    let both = shop.both_sides();
    let contents: Vec<_> = both[0].sides.iter().flat_map(|side| side.changed.clone()).collect();
    assert_eq!(
        contents,
        [Said::Content(Hash::of(b"colder"), 2), Said::Content(Hash::of(b"warmer"), 2)],
        "the later clock first"
    );
    assert_eq!(shop.next_revision("invented-van"), 3);

    // Either of the two is chosen, or a third is made of them.
    first.receive(&second);
    let mut other = first.clone();
    first.keep_sheet(revision("invented-van", 2, "warmer"), Some(base)).unwrap();
    assert_eq!(first.shop().sheets()["invented-van"].sheet.hash, Hash::of(b"warmer"));
    assert_eq!(first.shop().both_sides(), []);
    other.keep_sheet(revision("invented-van", 3, "between"), Some(Hash::of(b"warmer"))).unwrap();
    assert_eq!(other.shop().both_sides(), []);
}

#[test]
fn people_of_the_same_name_added_on_both_sides_are_two_people_and_are_told() {
    let (mut first, mut second) = two_tablets();
    first.add(&cy(), "Cy Marsh", &ada()).unwrap();
    second.add(&person_id(4), "CY  MARSH", &ada()).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.people().len(), 4);
    assert_eq!(shop.both_sides(), []);
    assert_eq!(shop.look_alikes(), [(Thing::Person(cy()), Thing::Person(person_id(4)))]);
    // Their roles can be changed as they are; a name that tells them apart ends it.
    first.receive(&second);
    first.change(&cy(), ("Cy Marsh", [Role::SecondPerson].into(), false), &ada()).unwrap();
    first.change(&cy(), ("Cy Marsh the elder", technician(), false), &ada()).unwrap();
    assert_eq!(first.shop().look_alikes(), []);
}

#[test]
fn a_person_and_a_tool_may_have_the_same_name() {
    let (mut first, _) = two_tablets();
    first.keep_tool(tool_id(2), tool("Ada Pike", "15")).unwrap();
    assert_eq!(first.shop().look_alikes(), []);
}

#[test]
fn a_pin_set_on_both_sides_is_told_even_if_it_was_set_alike() {
    let (mut first, mut second) = two_tablets();
    let set = ShopCommand::SetPin { person: bo(), seen: BTreeSet::new(), how: PinSetBy::OwnFirst };
    first.ask(&set, &bo()).unwrap();
    second.ask(&set, &bo()).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.both_sides()[0].thing, &Thing::Pin(bo()));
    assert_eq!(shop.people()[&bo()].name, "Bo Lind", "a PIN changes nothing of the person");
}

#[test]
fn a_change_of_what_has_not_come_yet_counts_and_its_ground_is_missed() {
    let (mut first, _) = two_tablets();
    let changed = first.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    let added = first.known.iter().find(|one| one.event.name() == Some("Bo Lind")).unwrap().clone();
    let mut shop = Shop::fold([changed.clone()]);
    assert_eq!(shop.people()[&bo()].name, "Bo Lund");
    assert_eq!(shop.missing(), [added.hash].into());
    shop.take(added);
    assert_eq!(shop.people()[&bo()].name, "Bo Lund");
    assert_eq!(shop.missing(), BTreeSet::new());
    assert_eq!(shop.both_sides(), []);
}

#[test]
fn two_sides_of_which_one_lacks_its_ground_tell_all_that_it_says() {
    let (mut first, mut second) = two_tablets();
    second.wall_ms = 5_000;
    let named = first.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    second.change(&bo(), ("Bo Lond", technician(), false), &ada()).unwrap();
    let other = second.change(&bo(), ("Bo Londe", technician(), false), &ada()).unwrap();
    let shop = Shop::fold([named, other]);
    let whole = |name: &str| [Said::Name(name.into()), Said::Roles(technician()), Said::Lead(false)].into();
    let both = shop.both_sides();
    assert_eq!(both[0].sides[0].changed, whole("Bo Londe"));
    assert_eq!(both[0].sides[1].changed, whole("Bo Lund"));
}

#[test]
fn both_sides_that_settled_differently_are_told_what_each_chose() {
    let (mut first, mut second) = two_tablets();
    second.wall_ms = 5_000;
    first.keep_tool(tool_id(1), tool("quarter-inch", "20")).unwrap();
    second.keep_tool(tool_id(1), tool("quarter-inch", "25")).unwrap();
    first.receive(&second);
    second.receive(&first);
    first.keep_tool(tool_id(1), tool("quarter-inch", "20")).unwrap();
    second.keep_tool(tool_id(1), tool("quarter-inch", "25")).unwrap();
    let shop = merged(&first, &second);
    let both = shop.both_sides();
    let range = |max: &str| [Said::Range("3".into(), max.into(), "N·m".into())].into();
    assert_eq!([&both[0].sides[0].changed, &both[0].sides[1].changed], [&range("25"), &range("20")]);
}

#[test]
fn an_event_replaces_only_events_of_its_own_thing() {
    let (mut first, _) = two_tablets();
    let added = first.known.iter().find(|one| one.event.name() == Some("Bo Lind")).unwrap().hash;
    let stray = ToolKept { id: tool_id(2), tool: tool("half-inch", "200"), from: [added].into() };
    first.write(stray.into(), &ada());
    assert_eq!(first.shop().people()[&bo()].name, "Bo Lind");
    assert_eq!(first.shop().missing(), [added].into());
}

#[test]
fn when_both_leads_were_unmade_apart_the_last_one_written_down_stands_in() {
    let (mut first, mut second) = two_tablets();
    first.change(&bo(), ("Bo Lind", technician(), true), &ada()).unwrap();
    second.receive(&first);
    first.change(&ada(), ("Ada Pike", technician(), false), &bo()).unwrap();
    second.change(&bo(), ("Bo Lind", technician(), false), &ada()).unwrap();
    let shop = merged(&first, &second);
    assert_eq!(shop.both_sides(), [], "each person was changed on one side only");
    assert_eq!(shop.stand_in_lead(), Some(&bo()), "Bo became a lead after Ada");
    assert!(shop.people()[&bo()].lead && !shop.people()[&ada()].lead);

    // The stand-in is refused to stop, makes Ada a lead, and stands in no longer.
    first.receive(&second);
    let roles = technician();
    assert!(first.change(&ada(), ("Ada Pike", roles.clone(), true), &ada()).is_err());
    first.change(&ada(), ("Ada Pike", roles, true), &bo()).unwrap();
    let shop = first.shop();
    assert_eq!(shop.stand_in_lead(), None);
    assert!(shop.people()[&ada()].lead && !shop.people()[&bo()].lead);
}

#[test]
fn which_side_is_shown_hangs_on_clock_and_hash_alone() {
    let (first, second) = two_tablets();
    let from = first.seen(&Thing::Person(bo()));
    let bo_now = first.shop().people()[&bo()].clone();
    let named = |tablet: &Tablet, name: &str, wall_ms: i64| {
        let mut tablet = tablet.clone();
        tablet.wall_ms = wall_ms;
        let person = panside_shop::Person { name: name.into(), ..bo_now.clone() };
        tablet.write(PersonChanged { person, from: from.clone() }.into(), &ada())
    };
    for (early, late) in [(100, 200), (-5, 5)] {
        let sides = [named(&first, "Bo Late", late), named(&second, "Bo Early", early)];
        assert_eq!(Shop::fold(sides).people()[&bo()].name, "Bo Late");
    }
    let sides = [named(&first, "Bo One", 7), named(&second, "Bo Two", 7)];
    let greater = sides.iter().max_by_key(|one| one.hash).unwrap().event.name().unwrap().to_owned();
    assert_eq!(Shop::fold(sides).people()[&bo()].name, greater);
}

#[test]
fn checklists_and_device_names_have_sides_too() {
    let (mut first, mut second) = two_tablets();
    let adopt = |content: &str| ShopCommand::AdoptChecklist {
        checklist: Pinned { hash: Hash::of(content.as_bytes()), ..revision("pan-short", 2, "") },
        seen: BTreeSet::new(),
    };
    let device = first.device;
    let named = |name: &str| ShopCommand::NameDevice { device, seen: BTreeSet::new(), name: name.into() };
    first.ask(&adopt("as shipped"), &ada()).unwrap();
    second.ask(&adopt("as changed"), &ada()).unwrap();
    first.ask(&named("Bay 1"), &ada()).unwrap();
    second.wall_ms = 9_000;
    second.ask(&named("Bay 2"), &ada()).unwrap();
    let shop = merged(&first, &second);
    let things: Vec<_> = shop.both_sides().iter().map(|both| both.thing.clone()).collect();
    assert_eq!(things, [Thing::Checklist("pan-short".into()), Thing::Device(device)]);
    assert_eq!(shop.devices()[&device], "Bay 2");
    assert_eq!(shop.checklists()["pan-short"].checklist.revision, 2);
}

#[test]
fn a_shop_value_that_two_tablets_set_differently_is_told_with_both_and_settled_by_one_who_saw_both() {
    let (mut first, mut second) = two_tablets();
    first.ask(&touch_limit(BTreeSet::new(), "48"), &ada()).unwrap();
    second.wall_ms = 9_000;
    second.ask(&touch_limit(BTreeSet::new(), "50"), &ada()).unwrap();
    let one_side = first.seen(&Thing::Value("touch_limit".into()));
    first.receive(&second);
    let told = first.shop().unsettled();
    assert_eq!(told.len(), 1);
    let says = told[0].english();
    for part in ["shop value", "touch limit", "48 °C (common practice)", "50 °C (common practice)"] {
        assert!(says.contains(part), "{says}");
    }
    assert_eq!(first.shop().values()["touch_limit"].body.is.in_short(), "50 °C");
    first.ask(&touch_limit(one_side, "48"), &ada()).unwrap_err();
    let seen = first.seen(&Thing::Value("touch_limit".into()));
    first.ask(&touch_limit(seen, "48"), &ada()).unwrap();
    assert_eq!(first.shop().unsettled(), []);
    assert_eq!(first.shop().values()["touch_limit"].body.is.in_short(), "48 °C");
}
