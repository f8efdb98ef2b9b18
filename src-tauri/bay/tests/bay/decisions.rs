//! Going against a table with a second person: by name, and with their PIN where they have one.

use panside_bay::enter::{Command, EntryValue, Event, JobId};
use panside_bay::pins::PinAuthority;
use panside_job::value::Accounted;
use panside_job::{Signature, SignedPin};
use panside_procedure::format::Role;

use crate::pins::{DIGITS, RIGHT, at_the_hold_point, given, pin, signed};
use crate::support::{MARL, ODE, Shop, begin, made};

/// Ode measures a coil out of limits and keeps it all the same; Marl stands for it.
fn kept_against_the_table(shop: &mut Shop, job: JobId) -> Command {
    shop.enter(job, &signed());
    for action in ["key_out", "raise", "set_locks"] {
        shop.enter(job, &made(action));
    }
    let by = Signature { sign: "on_locks".into(), by: ODE, role: Role::Technician, pin: None };
    let (entries, later) = (std::collections::BTreeMap::new(), false);
    shop.enter(job, &Command::Work { step: "locks".into(), entries, signatures: vec![by], later });
    shop.enter(job, &begin("coil"));
    let ohms = EntryValue::Reading { value: "9".into(), unit: "Ω".into() };
    shop.enter(job, &Command::Enter { step: "coil".into(), entry: "ohms".into(), value: ohms });
    let against = Some(Accounted { reason: "a new one is on order".into(), by: MARL });
    let value = EntryValue::Decision { class: "keep".into(), against, pin: Some(SignedPin::NoPin) };
    Command::Enter { step: "coil".into(), entry: "judged".into(), value }
}

fn pin_of_decision(events: &[Event]) -> Option<SignedPin> {
    events.iter().find_map(|event| match event {
        Event::Entered(entered) => match &entered.value {
            EntryValue::Decision { pin, .. } => *pin,
            _ => None,
        },
        _ => None,
    })
}

#[test]
fn whoever_goes_against_a_table_as_a_second_person_gives_their_pin_once() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    let against = kept_against_the_table(&mut shop, job);
    shop.bay.set_pin(MARL, pin(DIGITS), PinAuthority::Own(MARL)).unwrap();
    assert_eq!(shop.refused(job, &against).pin_of(), Some(MARL));
    assert_eq!(shop.bay.give_pin(MARL, &pin(DIGITS)).unwrap(), RIGHT);
    let entered = shop.enter(job, &against);
    assert_eq!(pin_of_decision(&entered), Some(SignedPin::Own), "whatever the command says of it");
    assert_eq!(shop.refused(job, &against).pin_of(), Some(MARL), "it was used up");
}

#[test]
fn a_second_person_without_a_pin_stands_for_it_by_name() {
    let mut shop = Shop::new();
    let job = at_the_hold_point(&mut shop);
    let against = kept_against_the_table(&mut shop, job);
    assert_eq!(pin_of_decision(&shop.enter(job, &against)), Some(SignedPin::NoPin));
    assert!(given(&mut shop, job).contains("says T. Marl"), "the record names them");
}
