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
fn somebody_new_has_an_id_of_their_own_also_under_a_name_that_is_there() {
    let mut shop = Shop::new();
    let kit = shop.bay.put_person(typed(None, "  R. Ode ")).unwrap();
    let odes: Vec<_> = kit.people.iter().filter(|person| person.name == "R. Ode").collect();
    assert_eq!(odes.len(), 2);
    assert_ne!(odes[0].id, odes[1].id);
    assert_eq!(shop.restarted().bay.kit().unwrap(), kit);
}

#[test]
fn a_person_has_a_name_and_a_role_and_is_of_the_shop_to_be_changed() {
    let mut shop = Shop::new();
    assert!(matches!(shop.bay.put_person(typed(None, " ")), Err(BayError::PersonName)));
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
