//! The shop's people: typed, renamed, and nobody else acts.

use panside_bay::clock::ManualClock;
use panside_bay::enter::{Actor, Answer, PersonId, new_request};
use panside_bay::people::TypedPerson;
use panside_bay::pins::{Pin, PinAuthority};
use panside_bay::{Bay, BayError};
use panside_journal::JobId;
use panside_procedure::format::Role;
use panside_shop::ShopRefusal;
use tempfile::TempDir;

use crate::support::{LUND, NOBODY, ODE, Shop, begin, technician};

fn typed(name: &str) -> TypedPerson {
    TypedPerson {
        id: None,
        seen: [].into(),
        name: name.into(),
        roles: [Role::Technician].into(),
        lead: false,
    }
}

/// The technician, to be changed, as the screen shows them.
fn ode(shop: &Shop, name: &str) -> TypedPerson {
    TypedPerson { id: Some(ODE), seen: shop.bay.setup().unwrap().seen(ODE.0), ..typed(name) }
}

fn ask(shop: &mut Shop, job: JobId, actor: &Actor) -> Answer {
    let head = shop.bay.head(job).unwrap();
    shop.bay.enter(job, head, new_request(), actor, &begin("identify")).unwrap()
}

#[test]
fn somebody_new_has_an_id_of_their_own_and_a_name_without_spare_spaces() {
    let mut shop = Shop::new();
    let setup = shop.bay.put_person(typed("  R.   Odell "), Some(ODE)).unwrap();
    let new = setup.people.iter().find(|person| person.name == "R. Odell").unwrap();
    assert_ne!(new.id, ODE);
    assert_eq!(shop.restarted().bay.setup().unwrap(), setup);
}

#[test]
fn a_name_that_looks_like_somebody_elses_is_refused_however_it_is_spelt() {
    let mut shop = Shop::new();
    let before = shop.bay.setup().unwrap();
    // Two spaces, none, capitals, a full-width R, a Cyrillic O and a Cyrillic e.
    for name in ["R. Ode", "R.  Ode", "r.ode", "R. ODE", "\u{ff32}. Ode", "R. \u{41e}de", "R. Od\u{435}"] {
        let refused = shop.bay.put_person(typed(name), Some(ODE)).unwrap_err();
        assert!(
            matches!(&refused, BayError::Shop(ShopRefusal::LooksLike { existing, .. }) if existing == "R. Ode"),
            "{name}: {refused}"
        );
    }
    for name in ["R. O\u{200b}de", "R. \u{202e}edO", "R. Ode\u{7}"] {
        let refused = shop.bay.put_person(typed(name), Some(ODE)).unwrap_err();
        assert!(matches!(refused, BayError::Shop(ShopRefusal::Name(_))), "{name:?}: {refused}");
    }
    assert_eq!(shop.bay.setup().unwrap(), before);
    // Their own name they may spell otherwise.
    let own = ode(&shop, "R. ODE");
    assert!(shop.bay.put_person(own, Some(ODE)).is_ok());
}

#[test]
fn a_person_has_a_name_and_a_role_and_is_of_the_shop_to_be_changed() {
    let mut shop = Shop::new();
    let mut ask = |typed, who| match shop.bay.put_person(typed, who).unwrap_err() {
        BayError::Shop(refusal) => refusal,
        error => panic!("{error}"),
    };
    assert!(matches!(ask(typed(" "), Some(ODE)), ShopRefusal::Name(_)));
    let idle = TypedPerson { roles: [].into(), ..typed("A. Nyone") };
    assert!(matches!(ask(idle, Some(ODE)), ShopRefusal::NoRole { .. }));
    let nobody = TypedPerson { id: Some(NOBODY), ..typed("A. Nyone") };
    assert!(matches!(ask(nobody, Some(ODE)), ShopRefusal::NotHere(_)));
    assert_eq!(ask(typed("A. Nyone"), Some(NOBODY)), ShopRefusal::WhoUnknown);
    assert_eq!(ask(typed("A. Nyone"), None), ShopRefusal::WhoUnknown);
}

#[test]
fn the_first_of_a_shop_adds_themself_and_leads_it() {
    let dir = TempDir::new().unwrap();
    let mut bay = Bay::open(dir.path(), Box::new(ManualClock::at(0))).unwrap();
    assert!(bay.take_in(&[], &[]).unwrap().people.is_empty());
    let setup = bay.put_person(typed("A. First"), None).unwrap();
    assert!(setup.people[0].lead);
}

#[test]
fn a_change_from_a_screen_that_shows_an_older_state_is_refused() {
    let mut shop = Shop::new();
    let (one, other) = (ode(&shop, "R. Odell"), ode(&shop, "R. Odin"));
    shop.bay.put_person(one, Some(ODE)).unwrap();
    let late = shop.bay.put_person(other, Some(ODE)).unwrap_err();
    assert!(matches!(late, BayError::Shop(ShopRefusal::ChangedMeanwhile(_))), "{late}");
}

#[test]
fn who_leads_is_said_by_a_lead_who_gives_their_pin() {
    let mut shop = Shop::new();
    let pin = Pin::new("4711").unwrap();
    shop.bay.set_pin(LUND, pin.clone(), PinAuthority::Own(LUND)).unwrap();
    let lead = |shop: &Shop| TypedPerson { lead: true, ..ode(shop, "R. Ode") };
    let by_himself = shop.bay.put_person(lead(&shop), Some(ODE)).unwrap_err();
    assert!(matches!(by_himself, BayError::Shop(ShopRefusal::LeadAsked { .. })), "{by_himself}");
    let without = shop.bay.put_person(lead(&shop), Some(LUND)).unwrap_err();
    assert!(matches!(without, BayError::PinAsked { person: LUND, .. }), "{without}");
    shop.bay.give_pin(LUND, &pin).unwrap();
    let setup = shop.bay.put_person(lead(&shop), Some(LUND)).unwrap();
    assert!(shop.bay.people().unwrap().person(ODE).unwrap().lead);
    let gone = shop.bay.remove_person(LUND, setup.seen(LUND.0), Some(ODE)).unwrap();
    assert_eq!(gone.left.iter().map(|one| one.id).collect::<Vec<_>>(), [LUND]);
}

#[test]
fn who_has_left_acts_no_more_and_what_they_signed_stays_theirs() {
    let mut shop = Shop::new();
    let job = shop.start();
    let seen = shop.bay.setup().unwrap().seen(ODE.0);
    shop.bay.remove_person(ODE, seen, Some(LUND)).unwrap();
    let Answer::Refused(refusal) = ask(&mut shop, job, &technician()) else { panic!("acts") };
    assert_eq!(refusal.message.id, "refused-no-person");
    let document = shop.bay.record(job).unwrap();
    assert_eq!(document.started.map(|by| by.who).as_deref(), Some("R. Ode"));
}

#[test]
fn who_is_not_of_the_shop_or_not_what_they_act_as_is_refused() {
    let mut shop = Shop::new();
    let job = shop.start();
    for (actor, id) in [
        (Actor { id: NOBODY, role: Role::Technician }, "refused-no-person"),
        (Actor { id: PersonId::TABLET, role: Role::Technician }, "refused-no-person"),
        (Actor { id: ODE, role: Role::ServiceWriter }, "refused-no-role"),
    ] {
        let Answer::Refused(refusal) = ask(&mut shop, job, &actor) else { panic!("{actor:?} acts") };
        assert_eq!(refusal.message.id, id);
        assert!(!refusal.said_by(shop.bay.speaker()).contains("refused-"), "it is said in words");
    }
}

#[test]
fn a_renamed_person_keeps_the_earlier_name_in_the_record() {
    let mut shop = Shop::new();
    let job = shop.start();
    let renamed = ode(&shop, "R. Marl-Ode");
    shop.bay.put_person(renamed, Some(ODE)).unwrap();
    assert!(matches!(ask(&mut shop, job, &technician()), Answer::Entered { .. }));
    let mut shop = shop.restarted();
    let document = shop.bay.record(job).unwrap();
    assert_eq!(document.started.map(|by| by.who).as_deref(), Some("R. Ode"));
    assert_eq!(document.people, ["R. Ode (later R. Marl-Ode)"]);
    let step = document.phases.iter().flat_map(|phase| &phase.steps).find(|step| step.id == "identify");
    assert_eq!(step.unwrap().attempts[0].begun.who, "R. Marl-Ode");
}
