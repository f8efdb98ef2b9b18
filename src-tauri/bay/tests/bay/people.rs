//! The shop's people: typed, renamed, and nobody else acts.

use panside_bay::BayError;
use panside_bay::enter::{Actor, Answer, PersonId, new_request};
use panside_bay::people::TypedPerson;
use panside_journal::JobId;
use panside_procedure::format::Role;

use crate::kit::{NOBODY, ODE, Shop, begin, technician};

fn typed(id: Option<PersonId>, name: &str) -> TypedPerson {
    TypedPerson { id, name: name.into(), roles: [Role::Technician].into(), lead: false }
}

fn ask(shop: &mut Shop, job: JobId, actor: &Actor) -> Answer {
    let head = shop.bay.head(job).unwrap();
    shop.bay.enter(job, head, new_request(), actor, &begin("identify")).unwrap()
}

#[test]
fn somebody_new_has_an_id_of_their_own_and_a_name_without_spare_spaces() {
    let mut shop = Shop::new();
    let kit = shop.bay.put_person(typed(None, "  R.   Odell ")).unwrap();
    let new = kit.people.iter().find(|person| person.name == "R. Odell").unwrap();
    assert_ne!(new.id, ODE);
    assert_eq!(shop.restarted().bay.kit().unwrap(), kit);
}

#[test]
fn a_name_that_looks_like_somebody_elses_is_refused_however_it_is_spelt() {
    let mut shop = Shop::new();
    let before = shop.bay.kit().unwrap();
    // Two spaces, none, capitals, a full-width R, a Cyrillic O and a Cyrillic e.
    for name in ["R. Ode", "R.  Ode", "r.ode", "R. ODE", "\u{ff32}. Ode", "R. \u{41e}de", "R. Od\u{435}"] {
        let refused = shop.bay.put_person(typed(None, name)).unwrap_err();
        assert!(
            matches!(&refused, BayError::LooksLike { existing, .. } if existing == "R. Ode"),
            "{name}: {refused}"
        );
    }
    for name in ["R. O\u{200b}de", "R. \u{202e}edO", "R. Ode\u{7}"] {
        let refused = shop.bay.put_person(typed(None, name)).unwrap_err();
        assert!(matches!(refused, BayError::Name(_)), "{name:?}: {refused}");
    }
    assert_eq!(shop.bay.kit().unwrap(), before);
    // Their own name they may spell otherwise.
    assert!(shop.bay.put_person(typed(Some(ODE), "R. ODE")).is_ok());
}

#[test]
fn a_list_with_one_id_twice_is_not_kept() {
    let mut shop = Shop::new();
    let mut kit = shop.bay.kit().unwrap();
    let mut double = kit.people[0].clone();
    double.name = "B. Side".to_owned();
    kit.people.push(double);
    assert!(matches!(shop.bay.put_kit(&kit), Err(BayError::PersonTwice)));
}

#[test]
fn a_person_has_a_name_and_a_role_and_is_of_the_shop_to_be_changed() {
    let mut shop = Shop::new();
    assert!(matches!(shop.bay.put_person(typed(None, " ")), Err(BayError::Name(_))));
    let idle = TypedPerson { roles: [].into(), ..typed(None, "A. Nyone") };
    assert!(matches!(shop.bay.put_person(idle), Err(BayError::PersonRole)));
    assert!(matches!(shop.bay.put_person(typed(Some(NOBODY), "A. Nyone")), Err(BayError::NoPerson)));
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
        assert!(!shop.bay.speaker().refusal(&refusal).contains("refused-"), "it is said in words");
    }
}

#[test]
fn a_renamed_person_keeps_the_earlier_name_in_the_record() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.bay.put_person(typed(Some(ODE), "R. Marl-Ode")).unwrap();
    assert!(matches!(ask(&mut shop, job, &technician()), Answer::Entered { .. }));
    let mut shop = shop.restarted();
    let document = shop.bay.record(job).unwrap();
    assert_eq!(document.started.map(|by| by.who).as_deref(), Some("R. Ode"));
    assert_eq!(document.people, ["R. Ode (later R. Marl-Ode)"]);
    let step = document.phases.iter().flat_map(|phase| &phase.steps).find(|step| step.id == "identify");
    assert_eq!(step.unwrap().stretches[0].begun.who, "R. Marl-Ode");
}
