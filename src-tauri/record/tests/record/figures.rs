//! What was worked out at an entry, in the record. The events are decided by the job, so that they carry their reckoning.

use std::error::Error;

use panside_job::people::Member;
use panside_job::value::{Accounted, CoilValue, Probed, ProbedBy};
use panside_job::{Actor, Command, EntryValue, Roster, SignedPin, decide};
use panside_procedure::format::Role;

use crate::bay::{self, Bay, Said, Tested, reading};
use crate::entries;

pub const CHECKLIST: &[u8] = include_bytes!("../../../job/tests/fixtures/figures.checklist.json");
pub const SHEET: &[u8] = include_bytes!("../../../job/tests/fixtures/figures.sheet.json");

/// A job in which each kind was entered once.
pub fn worked() -> Result<Bay, Box<dyn Error>> {
    let mut bay = Bay::with(CHECKLIST, SHEET)?;
    let celsius = "°C".to_owned();
    let coil = EntryValue::Coil(CoilValue {
        shows: "6,2".into(),
        unit: "Ω".into(),
        leads: None,
        temperature: "62".into(),
        temperature_unit: celsius.clone(),
        meter: None,
    });
    ask(&mut bay, "coil", "ohms", coil)?;
    for degrees in ["180", "117", "78,9"] {
        bay.minute += 9;
        let (value, ambient) = (degrees.into(), Some("20".into()));
        let probed = Probed { value, unit: celsius.clone(), by: ProbedBy::Contact, ambient };
        ask(&mut bay, "probe", "joint", EntryValue::CoolDown(probed))?;
    }
    ask(&mut bay, "drain", "volume", reading("3,6", "L"))?;
    ask(&mut bay, "drain", "fluid", reading("20", "°C"))?;
    ask(&mut bay, "fill", "volume", reading("3,3", "L"))?;
    let explained = Some(Accounted { reason: "in the new filter".into(), by: bay::person("Ada") });
    let balance = EntryValue::Balance { temperature: "20".into(), temperature_unit: celsius, explained };
    ask(&mut bay, "balance", "fluid", balance)?;
    Ok(bay)
}

/// Begins a step where that is needed, enters a value and leaves the step.
fn ask(bay: &mut Bay, step: &str, entry: &str, value: EntryValue) -> Result<(), Box<dyn Error>> {
    let step = step.to_owned();
    let commands = [
        Command::Begin { step: step.clone() },
        Command::Enter { step: step.clone(), entry: entry.into(), value },
        Command::Leave { step },
    ];
    commands.iter().try_for_each(|command| carry_out(bay, command))
}

fn carry_out(bay: &mut Bay, command: &Command) -> Result<(), Box<dyn Error>> {
    let who = Actor { id: bay::person(bay.who), role: Role::Technician };
    let member = |name: &str| Member { name: name.into(), roles: [Role::Technician].into() };
    let second = (bay::person("Bo"), member("Bo"));
    let (shop, now) = (Roster::from_iter([(who.id, member(bay.who)), second]), bay.now());
    let decided = decide(&bay.job, &shop, command, &who, &now).map_err(|refusal| format!("{refusal:?}"))?;
    decided.into_iter().for_each(|event| bay.then(event));
    Ok(())
}

#[test]
fn a_coil_is_told_with_its_reckoning() -> Tested {
    let document = worked()?.document();
    let coil = entries(&document, "coil")?[0];
    assert_eq!((coil.value.as_str(), coil.class.as_str()), ("6,2 Ω at 62 °C", "inside"));
    // 6.2 / (1 + 0.00393 × 42), NBS Handbook 100.
    assert!(coil.how.iter().any(|line| line.ends_with("= 5.322 Ω")), "{:?}", coil.how);
    Ok(())
}

#[test]
fn a_cool_down_is_told_with_its_curve() -> Tested {
    let document = worked()?.document();
    let last = entries(&document, "probe")?.pop().ok_or("no reading")?.clone();
    assert_eq!(last.value, "78,9 °C, contact probe; ambient 20 °C");
    assert!(last.how.iter().any(|line| line.starts_with("not before")), "{:?}", last.how);
    Ok(())
}

#[test]
fn a_balance_that_was_explained_stands_where_it_went_otherwise() -> Tested {
    let document = worked()?.document();
    let [explained] = document.by_name.as_slice() else { return Err("one is explained".into()) };
    assert_eq!(
        (explained.reason.as_str(), explained.said_by.as_str(), explained.class.as_str()),
        ("in the new filter", "Ada", "explained")
    );
    assert!(document.text().contains("in the new filter, says Ada"));
    Ok(())
}

/// A solenoid of which the coil reads so much at 62 °C, decided by Ada.
fn decided(ohms: &str, against: Option<&str>) -> Result<Bay, Box<dyn Error>> {
    let mut bay = Bay::with(CHECKLIST, SHEET)?;
    let coil = EntryValue::Coil(CoilValue {
        shows: ohms.into(),
        unit: "Ω".into(),
        leads: None,
        temperature: "62".into(),
        temperature_unit: "°C".into(),
        meter: None,
    });
    let by = bay::person("Bo");
    let against = against.map(|reason| Accounted { reason: reason.into(), by });
    let class = if against.is_some() || ohms == "6,2" { "keep" } else { "replace" };
    let pin = against.is_some().then_some(SignedPin::Own);
    let step = "coil".to_owned();
    let judged = EntryValue::Decision { class: class.into(), against, pin };
    for command in [
        Command::Begin { step: step.clone() },
        Command::Enter { step: step.clone(), entry: "ohms".into(), value: coil },
        Command::Enter { step: step.clone(), entry: "judged".into(), value: judged },
        Command::Done { step, signatures: Vec::new() },
    ] {
        carry_out(&mut bay, &command)?;
    }
    Ok(bay)
}

#[test]
fn a_decision_is_told_with_its_sentence_and_what_decided() -> Tested {
    let document = decided("6,2", None)?.document();
    let judged = entries(&document, "coil")?[1];
    assert_eq!(judged.value, "stays. The coil is within limits.");
    assert_eq!(judged.how, ["Coil: 6,2 Ω, within limits"]);
    assert!(document.by_name.is_empty());
    Ok(())
}

#[test]
fn going_against_the_table_cannot_be_read_over() -> Tested {
    let document = decided("9,6", Some("a new one is on order"))?.document();
    let [against] = document.by_name.as_slice() else { return Err("one is against the table".into()) };
    assert_eq!(against.called, "stays AGAINST THE TABLE, which says \"is replaced\"");
    assert_eq!((against.reason.as_str(), against.said_by.as_str()), ("a new one is on order", "Bo"));
    let told = "stays, AGAINST THE TABLE, which says \"is replaced\": The coil is not within limits. \
                Decided otherwise: a new one is on order, says Bo, PIN given";
    assert_eq!(entries(&document, "coil")?[1].value, told);
    assert!(document.text().contains("AGAINST THE TABLE"));
    Ok(())
}
