//! A bay in a folder of its own, with a small invented checklist and its sheet.

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_bay::clock::{Clock, ManualClock};
use panside_bay::enter::{Actor, Answer, Command, Event, JobId, PersonId, Refusal, new_request};
use panside_bay::people::Person;
use panside_bay::start::NewJob;
use panside_bay::{Bay, BayError};
use panside_procedure::format::Role;
use panside_procedure::proof::{Ask, go_on};
use tempfile::TempDir;
use uuid::Uuid;

/// 2026-03-02T08:00:00Z, as GNU date gives it.
const MORNING_MS: i64 = 1_772_438_400_000;

pub const CHECKLIST: &[u8] = include_bytes!("../../../job/tests/fixtures/pan.checklist.json");
pub const SHEET: &[u8] = include_bytes!("../../../job/tests/fixtures/pan.sheet.json");

pub const PLAIN: Ask = Ask { void: false, observe: false, memory: 1 << 28, ..Ask::ALL };

/// A bay and what it stands on.
pub struct Shop {
    pub dir: TempDir,
    pub clock: Arc<ManualClock>,
    pub bay: Bay,
}

impl Shop {
    pub fn new() -> Shop {
        let dir = TempDir::new().unwrap();
        let clock = Arc::new(ManualClock::at(MORNING_MS));
        let mut bay = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
        bay.take_in(&people(), &[]).unwrap();
        Shop { dir, clock, bay }
    }

    /// The same folder after the program was ended and started again.
    pub fn restarted(self) -> Shop {
        let Shop { dir, clock, bay } = self;
        drop(bay);
        let bay = Bay::open(dir.path(), Box::new(Arc::clone(&clock))).unwrap();
        Shop { dir, clock, bay }
    }

    /// The same folder after the tablet was restarted, with the wall clock put that many minutes on or back.
    pub fn rebooted(self, set_min: i64) -> Shop {
        let wall_ms = self.clock.now().wall_ms + set_min * 60_000;
        Shop { clock: Arc::new(ManualClock::at(wall_ms)), ..self }.restarted()
    }

    pub fn try_start(&mut self, checklist: &[u8], sheet: &[u8]) -> Result<JobId, BayError> {
        let proved = self.bay.prove(checklist, sheet, PLAIN, &mut go_on)?;
        let new = NewJob {
            sheet,
            texts: None,
            repair_order: "RO 1042",
            label: "invented van",
            conditions: BTreeMap::new(),
            utc_offset_min: 0,
        };
        self.bay.start(&proved, &new, &technician(), new_request())
    }

    pub fn start(&mut self) -> JobId {
        self.try_start(CHECKLIST, SHEET).unwrap()
    }

    pub fn enter(&mut self, job: JobId, command: &Command) -> Vec<Event> {
        match self.answer(job, command) {
            Answer::Entered { events, .. } => events,
            Answer::Refused(refusal) => panic!("{}", refusal.said_by(self.bay.speaker())),
        }
    }

    pub fn refused(&mut self, job: JobId, command: &Command) -> Refusal {
        match self.answer(job, command) {
            Answer::Refused(refusal) => refusal,
            Answer::Entered { events, .. } => panic!("taken, with {} events", events.len()),
        }
    }

    fn answer(&mut self, job: JobId, command: &Command) -> Answer {
        let head = self.bay.head(job).unwrap();
        self.bay.enter(job, head, new_request(), &technician(), command).unwrap()
    }

    pub fn events(&mut self, job: JobId) -> usize {
        self.bay.job(job).unwrap().happened.len()
    }
}

pub const ODE: PersonId = PersonId(Uuid::from_u128(0x0DE));
pub const MARL: PersonId = PersonId(Uuid::from_u128(0xA71));
pub const LUND: PersonId = PersonId(Uuid::from_u128(0x1D));
/// Nobody of the shop.
pub const NOBODY: PersonId = PersonId(Uuid::from_u128(0x404));

/// A technician, the service writer who leads the shop, and a third.
pub fn people() -> [Person; 3] {
    let person = |id, name: &str, role, lead| Person { id, name: name.into(), roles: [role].into(), lead };
    [
        person(ODE, "R. Ode", Role::Technician, false),
        person(LUND, "K. Lund", Role::ServiceWriter, true),
        person(MARL, "T. Marl", Role::SecondPerson, false),
    ]
}

pub fn technician() -> Actor {
    Actor { id: ODE, role: Role::Technician }
}

pub fn writer() -> Actor {
    Actor { id: LUND, role: Role::ServiceWriter }
}

pub fn made(id: &str) -> Command {
    Command::VehicleAction { action: id.to_owned() }
}

pub fn begin(step: &str) -> Command {
    Command::Begin { step: step.to_owned() }
}
