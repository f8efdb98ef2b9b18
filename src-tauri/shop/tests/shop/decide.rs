//! What is asked of the shop, and what is refused.

use std::collections::BTreeSet;

use panside_journal::{DeviceId, Hash};
use panside_shop::name::NameError;
use panside_shop::{PinSetBy, Shop, ShopCommand, ShopEvent, ShopRefusal, Thing};
use uuid::Uuid;

use crate::support::*;

#[test]
fn the_first_person_adds_themself_and_is_the_lead() {
    let mut tablet = Tablet::new(1);
    assert_eq!(tablet.add(&bo(), "Bo Lind", &ada()), Err(ShopRefusal::NobodyYet));
    assert_eq!(tablet.keep_tool(tool_id(1), tool("wrench", "15")), Err(ShopRefusal::NobodyYet));
    tablet.add(&ada(), " Ada  Pike ", &ada()).unwrap();
    let people = tablet.shop().people();
    assert_eq!((people[&ada()].name.as_str(), people[&ada()].lead), ("Ada Pike", true));
    tablet.add(&bo(), "Bo Lind", &ada()).unwrap();
    assert!(!tablet.shop().people()[&bo()].lead);
}

#[test]
fn only_people_of_the_shop_change_it() {
    let (mut tablet, _) = two_tablets();
    assert_eq!(tablet.add(&cy(), "Cy Marsh", &cy()), Err(ShopRefusal::WhoUnknown));
}

#[test]
fn a_name_that_looks_like_anothers_is_refused_with_whose() {
    let (mut tablet, _) = two_tablets();
    for (typed, kept) in
        [("Bo  Lind", "Bo Lind"), ("bo lind", "bo lind"), ("Bo Lіnd", "Bo Lіnd"), ("Ｂｏ Lind", "Ｂｏ Lind")]
    {
        let refusal = tablet.add(&cy(), typed, &ada()).unwrap_err();
        let thing = Thing::Person(bo());
        assert_eq!(refusal, ShopRefusal::LooksLike { name: kept.into(), existing: "Bo Lind".into(), thing });
        assert!(refusal.to_string().ends_with("Choose that one, or give a name that tells them apart."));
    }
    let hidden = tablet.add(&cy(), "Bo L\u{200b}ind", &ada());
    assert!(matches!(hidden, Err(ShopRefusal::Name(NameError::Hidden { code: 0x200b, .. }))));
    assert_eq!(tablet.shop().people().len(), 2);
    tablet.add(&cy(), "Bo Lind jr.", &ada()).unwrap();
    let renamed = tablet.change(&cy(), ("BO LIND", technician(), false), &cy());
    assert!(matches!(renamed, Err(ShopRefusal::LooksLike { .. })));
    tablet.change(&bo(), ("bo lind", technician(), false), &bo()).unwrap();
}

#[test]
fn a_person_has_a_role() {
    let (mut tablet, _) = two_tablets();
    let none = tablet.change(&bo(), ("Bo Lind", BTreeSet::new(), false), &ada());
    assert_eq!(none, Err(ShopRefusal::NoRole { name: "Bo Lind".into() }));
}

#[test]
fn only_a_lead_makes_and_unmakes_leads() {
    let (mut tablet, _) = two_tablets();
    let asked = Err(ShopRefusal::LeadAsked { leads: vec!["Ada Pike".into()] });
    assert_eq!(tablet.change(&bo(), ("Bo Lind", technician(), true), &bo()), asked);
    assert_eq!(tablet.change(&ada(), ("Ada Pike", technician(), false), &bo()), asked);
    let command =
        ShopCommand::AddPerson { id: cy(), name: "Cy Marsh".into(), roles: technician(), lead: true };
    assert_eq!(tablet.ask(&command, &bo()), asked);
    tablet.ask(&command, &ada()).unwrap();
    assert!(tablet.shop().people()[&cy()].lead);
}

#[test]
fn the_last_lead_stays_one() {
    let (mut tablet, _) = two_tablets();
    let last = Err(ShopRefusal::LastLead { name: "Ada Pike".into() });
    assert_eq!(tablet.change(&ada(), ("Ada Pike", technician(), false), &ada()), last);
    tablet.change(&bo(), ("Bo Lind", technician(), true), &ada()).unwrap();
    tablet.change(&ada(), ("Ada Pike", technician(), false), &ada()).unwrap();
    assert!(!tablet.shop().people()[&ada()].lead);
}

#[test]
fn who_has_left_does_nothing_more_keeps_their_name_and_can_come_back() {
    let (mut tablet, _) = two_tablets();
    tablet.leave(&bo(), &ada()).unwrap();
    assert!(!tablet.shop().people().contains_key(&bo()));
    assert_eq!(tablet.shop().left()[&bo()].name, "Bo Lind");
    assert_eq!(tablet.add(&cy(), "Cy Marsh", &bo()), Err(ShopRefusal::WhoUnknown));
    let taken = tablet.add(&cy(), "BO LIND", &ada());
    let refused = ShopRefusal::LooksLikeLeft { name: "BO LIND".into(), existing: "Bo Lind".into() };
    assert_eq!(taken, Err(refused));
    assert_eq!(tablet.leave(&bo(), &ada()), Err(ShopRefusal::NotHere(Thing::Person(bo()))));
    tablet.change(&bo(), ("Bo Lind", technician(), false), &ada()).unwrap();
    assert_eq!((tablet.shop().people().len(), tablet.shop().left().len()), (2, 0));
}

#[test]
fn the_last_lead_does_not_leave_and_a_lead_is_let_go_by_a_lead() {
    let (mut tablet, _) = two_tablets();
    let last = Err(ShopRefusal::LastLead { name: "Ada Pike".into() });
    assert_eq!(tablet.leave(&ada(), &ada()), last);
    tablet.change(&bo(), ("Bo Lind", technician(), true), &ada()).unwrap();
    tablet.add(&cy(), "Cy Marsh", &ada()).unwrap();
    let leads = vec!["Ada Pike".into(), "Bo Lind".into()];
    assert_eq!(tablet.leave(&ada(), &cy()), Err(ShopRefusal::LeadAsked { leads }));
    tablet.leave(&ada(), &bo()).unwrap();
    assert_eq!(tablet.shop().people().len(), 2);
}

#[test]
fn who_looked_at_an_older_state_looks_again() {
    let (mut tablet, mut other) = two_tablets();
    let seen = tablet.seen(&Thing::Person(bo()));
    let command = |seen: &BTreeSet<Hash>| ShopCommand::ChangePerson {
        id: bo(),
        seen: seen.clone(),
        name: "Bo Lond".into(),
        roles: technician(),
        lead: false,
    };
    other.change(&bo(), ("Bo Lund", technician(), false), &ada()).unwrap();
    tablet.receive(&other);
    let meanwhile = Err(ShopRefusal::ChangedMeanwhile(Thing::Person(bo())));
    assert_eq!(tablet.ask(&command(&seen), &ada()), meanwhile);
    assert_eq!(tablet.ask(&command(&BTreeSet::new()), &ada()), meanwhile);
    let now = tablet.seen(&Thing::Person(bo()));
    tablet.ask(&command(&now), &ada()).unwrap();
    let again = tablet.add(&bo(), "Bo Third", &ada());
    assert_eq!(again, Err(ShopRefusal::ChangedMeanwhile(Thing::Person(bo()))));
}

#[test]
fn what_is_not_on_the_list_is_not_changed() {
    let (mut tablet, _) = two_tablets();
    let gone = Err(ShopRefusal::NotHere(Thing::Tool(tool_id(9))));
    assert_eq!(tablet.remove_tool(tool_id(9)), gone);
    let seen = [Hash::of(b"something else")].into();
    let command = ShopCommand::KeepTool { id: tool_id(9), seen, tool: Box::new(tool("half-inch", "200")) };
    assert_eq!(tablet.ask(&command, &ada()), gone);
    let nobody = tablet.change(&cy(), ("Cy Marsh", technician(), false), &ada());
    assert_eq!(nobody, Err(ShopRefusal::NotHere(Thing::Person(cy()))));
    tablet.remove_tool(tool_id(1)).unwrap();
    assert_eq!(tablet.remove_tool(tool_id(1)), Err(ShopRefusal::NotHere(Thing::Tool(tool_id(1)))));
}

#[test]
fn a_change_that_changes_nothing_is_no_event() {
    let (mut tablet, _) = two_tablets();
    let person = tablet.change(&bo(), (" Bo  Lind", technician(), false), &ada());
    assert_eq!(person, Err(ShopRefusal::Unchanged(Thing::Person(bo()))));
    let wrench = tablet.keep_tool(tool_id(1), tool("quarter-inch ", "15"));
    assert_eq!(wrench, Err(ShopRefusal::Unchanged(Thing::Tool(tool_id(1)))));
    let sheet = tablet.keep_sheet(revision("invented-van", 1, "one"), None);
    assert_eq!(sheet, Err(ShopRefusal::Unchanged(Thing::Sheet("invented-van".into()))));
}

#[test]
fn a_tool_keeps_its_id_when_its_name_changes() {
    let (mut tablet, _) = two_tablets();
    tablet.keep_tool(tool_id(1), tool("quarter-inch click", "15")).unwrap();
    assert_eq!(tablet.shop().tools()[&tool_id(1)].name, "quarter-inch click");
    let twin = tablet.keep_tool(tool_id(2), tool("Quarter Inch Click", "15"));
    let thing = Thing::Tool(tool_id(1));
    let (name, existing) = ("Quarter Inch Click".into(), "quarter-inch click".into());
    assert_eq!(twin, Err(ShopRefusal::LooksLike { name, existing, thing }));
    // The name of a tool that was removed is free.
    tablet.remove_tool(tool_id(1)).unwrap();
    tablet.keep_tool(tool_id(2), tool("Quarter Inch Click", "15")).unwrap();
}

#[test]
fn a_sheets_revisions_go_up_and_say_what_they_were_made_from() {
    let (mut tablet, _) = two_tablets();
    assert_eq!((tablet.shop().next_revision("invented-van"), tablet.shop().next_revision("other")), (2, 1));
    let one = Hash::of(b"one");
    let stale = tablet.keep_sheet(revision("invented-van", 1, "other"), Some(one));
    let id = "invented-van".to_owned();
    assert_eq!(stale, Err(ShopRefusal::SheetOlder { id: id.clone(), revision: 1, newest: 1 }));
    let stray = tablet.keep_sheet(revision("invented-van", 2, "two"), Some(Hash::of(b"never seen")));
    assert_eq!(stray, Err(ShopRefusal::SheetBase { id }));
    tablet.keep_sheet(revision("invented-van", 2, "two"), Some(one)).unwrap();
    // Going back to an older content is a new revision made from it.
    tablet.keep_sheet(revision("invented-van", 5, "one again"), Some(one)).unwrap();
    assert_eq!(tablet.shop().sheets()["invented-van"].made_from, Some(one));
    // A copy is a sheet of its own, whatever it was copied from.
    tablet.keep_sheet(revision("invented-truck", 1, "copy"), Some(Hash::of(b"a built-in"))).unwrap();
}

#[test]
fn a_checklist_may_be_adopted_in_an_older_revision_again() {
    let (mut tablet, _) = two_tablets();
    let thing = Thing::Checklist("pan-short".into());
    for (number, content) in [(1, "one"), (2, "two"), (1, "one")] {
        let seen = tablet.seen(&thing);
        let checklist = revision("pan-short", number, content);
        tablet.ask(&ShopCommand::AdoptChecklist { checklist, seen }, &ada()).unwrap();
    }
    assert_eq!(tablet.shop().checklists()["pan-short"].checklist.revision, 1);
    assert_eq!(tablet.shop().history(&thing).len(), 3);
    let (seen, checklist) = (tablet.seen(&thing), revision("pan-short", 2, "another two"));
    let twice = tablet.ask(&ShopCommand::AdoptChecklist { checklist, seen }, &ada());
    assert_eq!(twice, Err(ShopRefusal::ChecklistRevision { id: "pan-short".into(), revision: 2 }));
}

#[test]
fn devices_have_names_that_tell_them_apart() {
    let (mut tablet, _) = two_tablets();
    let named = |number: u128, name: &str| ShopCommand::NameDevice {
        device: DeviceId(Uuid::from_u128(number)),
        seen: BTreeSet::new(),
        name: name.into(),
    };
    tablet.ask(&named(0xA, "Bay 1"), &ada()).unwrap();
    assert!(matches!(tablet.ask(&named(0xB, "bay-1"), &ada()), Err(ShopRefusal::LooksLike { .. })));
    tablet.ask(&named(0xB, "Bay 2"), &ada()).unwrap();
    assert_eq!(tablet.shop().devices().len(), 2);
}

#[test]
fn a_forgotten_pin_is_set_by_a_lead_before_a_second_person() {
    let (mut tablet, _) = two_tablets();
    tablet.add(&cy(), "Cy Marsh", &ada()).unwrap();
    let set = |how: PinSetBy| ShopCommand::SetPin { person: bo(), seen: BTreeSet::new(), how };
    let witnessed = |lead, second| set(PinSetBy::LeadAndSecond { lead, second });
    let refused = [
        (set(PinSetBy::OwnFirst), ada(), ShopRefusal::PinOfOther),
        (set(PinSetBy::OwnByOld), cy(), ShopRefusal::PinOfOther),
        (witnessed(cy(), ada()), cy(), ShopRefusal::PinOfOther),
        (witnessed(ada(), cy()), cy(), ShopRefusal::PinOfOther),
        (witnessed(ada(), ada()), ada(), ShopRefusal::PinWitness),
        (witnessed(ada(), bo()), ada(), ShopRefusal::PinWitness),
        (witnessed(ada(), person_id(9)), ada(), ShopRefusal::NotHere(Thing::Person(person_id(9)))),
    ];
    for (command, who, refusal) in refused {
        assert_eq!(tablet.ask(&command, &who), Err(refusal), "{command:?}");
    }
    tablet.ask(&witnessed(ada(), cy()), &ada()).unwrap();
    let shop = tablet.shop();
    let newest = shop.newest(&Thing::Pin(bo())).unwrap();
    let how = PinSetBy::LeadAndSecond { lead: ada(), second: cy() };
    assert!(matches!(&newest.event, ShopEvent::PinSet(body) if body.how == how && newest.who == ada()));
}

#[test]
fn every_change_names_all_heads_that_it_replaces() {
    let (mut first, mut second) = two_tablets();
    let one = first.keep_tool(tool_id(1), tool("quarter-inch", "20")).unwrap();
    let two = second.remove_tool(tool_id(1)).unwrap();
    first.receive(&second);
    let settled = first.remove_tool(tool_id(1)).unwrap();
    assert_eq!(settled.event.replaces(), &BTreeSet::from([one.hash, two.hash]));
    assert_eq!(Shop::fold(first.known.clone()).heads(&Thing::Tool(tool_id(1))), [&settled]);
}
