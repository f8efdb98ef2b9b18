//! What holds in every run: random commands on the invented checklist, most of them in an order that gets somewhere.

use std::collections::BTreeMap;

use panside_procedure::format::{Role, SignKind};
use panside_procedure::machine::{Action, ItemIx};
use panside_procedure::{Machine, Shown, State};
use proptest::prelude::*;
use proptest::sample::select;

use crate::command::{Command, Refusal};
use crate::event::Event;
use crate::job::{Happened, Job};
use crate::message::{MESSAGES, Message};
use crate::testing::{
    Bay, USUAL_ORDER, agreed, choice, clicked, degrees, estimate, litres, pieces, procedure, sign, specs,
    stick_in_band, usual,
};
use crate::value::{Accounted, EntryValue, Urgency};

/// One thing that happens in a random run.
#[derive(Debug, Clone)]
enum Turn {
    /// The first step of the usual order that is not worked is tried the usual way.
    Usual,
    /// Somebody asks for something.
    Ask(Box<Command>),
    /// Time passes, in minutes.
    Wait(i64),
}

const STEPS: &[&str] = &[
    "identify",
    "photo",
    "supporter",
    "go_ahead",
    "locks",
    "probe",
    "coil",
    "drain",
    "pan_down",
    "verdict",
    "look_again",
    "pan_up",
    "cure",
    "fill",
    "level",
];
const VEHICLE_ACTIONS: &[&str] =
    &["raise", "set_locks", "lower", "start_engine", "stop_engine", "key_out", "key_in"];
const VALUES: &[(&str, &str)] = &[
    ("lift", "floor"),
    ("lift", "raised"),
    ("lift", "on_locks"),
    ("engine", "off"),
    ("engine", "running"),
    ("key", "in_car"),
    ("key", "secured"),
    ("fluid", "filled"),
    ("fluid", "drained"),
    ("pan", "on"),
    ("pan", "off"),
];

/// Values as they come, right and wrong, with the entries they go to.
fn entered() -> Vec<(&'static str, &'static str, EntryValue)> {
    vec![
        ("probe", "exhaust", degrees("63")),
        ("probe", "exhaust", degrees("40")),
        ("probe", "exhaust", litres("1")),
        ("coil", "ohms", EntryValue::Reading { value: "6.9".into(), unit: "Ω".into() }),
        ("drain", "volume", litres("3,6")),
        ("pan_down", "bolts", pieces(15)),
        ("pan_down", "bolts", pieces(16)),
        ("verdict", "found", choice("carry_on")),
        ("verdict", "found", choice("chips")),
        ("verdict", "found", choice("stop_and_call")),
        ("pan_up", "torque", clicked()),
        ("cure", "wait", EntryValue::Timer {}),
        ("level", "stick", stick_in_band()),
        ("go_ahead", "estimate", EntryValue::Estimate(estimate())),
        ("go_ahead", "answer", EntryValue::Authorization(agreed("349.60"))),
        ("go_ahead", "answer", EntryValue::Authorization(agreed("120"))),
        ("identify", "codes", EntryValue::Scan { text: "P0765 X".into() }),
    ]
}

fn signatures() -> Vec<crate::Signature> {
    vec![
        sign("concern_told", "Wim", Role::ServiceWriter),
        sign("on_locks", "Ada", Role::Technician),
        sign("second_look", "Bo", Role::SecondPerson),
        sign("pan_torqued", "Ada", Role::Technician),
    ]
}

/// What turns up, and what becomes of it, for the events that are there and for others.
fn turning_up() -> Vec<Command> {
    let photos = Vec::new;
    let off = |count| Command::PieceOff { name: "bracket".into(), count, at: None, photos: photos() };
    let found = |urgency| Command::Found { text: "line rubs".into(), at: None, urgency, photos: photos() };
    let ask = |step: &&str| {
        let (step, text) = ((*step).to_owned(), "line rubbed through".to_owned());
        Command::AskCustomer { step, text, found: None, lines: estimate() }
    };
    let bo = signatures()[2].by;
    let about = (2..30).flat_map(|seq| {
        [
            Command::Answer { asked: seq, answer: agreed("349.60") },
            Command::Answer { asked: seq, answer: agreed("10") },
            Command::GoOnWithout { asked: seq, reason: "it holds".into() },
            Command::DealtWith { found: seq, text: "clamped".into() },
            Command::PieceBack { piece: seq, count: 1, torque: None },
            Command::PieceGone {
                piece: seq,
                count: 1,
                accounted: Accounted { reason: "snapped".into(), by: bo },
            },
            Command::TakeBack { of: seq, reason: "entered twice".into() },
        ]
    });
    let new = [off(1), off(2), off(64), found(Urgency::Now), found(Urgency::Tell)];
    // As many new ones as there is to be said about old ones.
    let new = new.into_iter().chain(STEPS.iter().map(ask)).cycle().take(120);
    new.chain(about).collect()
}

fn any_step() -> impl Strategy<Value = String> {
    select(STEPS).prop_map(str::to_owned)
}

fn signed(step: &str) -> Vec<crate::Signature> {
    let sign = match step {
        "go_ahead" => "concern_told",
        "locks" => "on_locks",
        "look_again" => "second_look",
        "pan_up" => "pan_torqued",
        _ => return Vec::new(),
    };
    signatures().into_iter().filter(|signature| signature.sign == sign).collect()
}

fn turn(observing: bool) -> impl Strategy<Value = Turn> {
    let step = |make: fn(String) -> Command| any_step().prop_map(make);
    let asked = prop_oneof![
        3 => step(|step| Command::Begin { step }),
        2 => step(|step| Command::Leave { step }),
        3 => step(|step| Command::Done { signatures: signed(&step), step }),
        4 => select(entered()).prop_map(|(step, entry, value)| Command::Enter {
            step: step.into(), entry: entry.into(), value,
        }),
        2 => select(entered()).prop_map(|(step, entry, value)| Command::Work {
            step: step.into(), entries: [(entry.to_owned(), value)].into(), signatures: signed(step), later: false,
        }),
        5 => select(VEHICLE_ACTIONS).prop_map(|made| Command::VehicleAction { action: made.into() }),
        3 => select(signatures()).prop_map(|signature| Command::Sign { signature }),
        1 => step(|step| Command::Skip { step, reason: "not today".into() }),
        2 => step(|step| Command::Void { step, reason: "entered wrongly".into() }),
        3 => select(entered()).prop_map(|(step, entry, value)| Command::Correct {
            step: step.into(), entries: [(entry.to_owned(), value)].into(), signatures: signed(step), reason: None,
        }),
        1 => step(|step| Command::ExplainMissed { step, reason: "it came too late".into() }),
        3 => select(turning_up()),
        1 => Just(Command::Finish),
        1 => Just(Command::Stop { reason: "enough".into() }),
    ];
    let observed = select(VALUES).prop_map(|(condition, value)| Command::Observe {
        condition: condition.into(),
        value: value.into(),
        reason: "seen".into(),
    });
    prop_oneof![
        30 => Just(Turn::Usual),
        20 => asked.prop_map(|command| Turn::Ask(Box::new(command))),
        if observing { 2 } else { 0 } => observed.prop_map(|command| Turn::Ask(Box::new(command))),
        2 => (1..45_i64).prop_map(Turn::Wait),
    ]
}

fn run(observing: bool) -> impl Strategy<Value = Vec<Turn>> {
    prop::collection::vec(turn(observing), 0..80)
}

/// What a technician does next who wants to get on: what is in progress is left, the vehicle is brought where the first
/// step that is not worked needs it, and the step is worked; at the end the job is finished. Some of it is refused.
fn next_usual(bay: &Bay) -> Vec<Command> {
    let (procedure, state) = (&bay.job.procedure, &bay.job.state);
    let is_open = |id: &&&str| {
        let shown = procedure.machine.shown(state, procedure.names.step(id).unwrap());
        !matches!(shown, Shown::Done | Shown::Lapsed | Shown::Skipped)
    };
    let made = |made: &str| Command::VehicleAction { action: made.into() };
    let leave = STEPS.iter().map(|step| Command::Leave { step: (*step).into() });
    let Some(&step) = USUAL_ORDER.iter().find(is_open) else {
        return leave.chain([made("stop_engine"), made("lower"), Command::Finish]).collect();
    };
    let under = matches!(step, "probe" | "coil" | "drain" | "pan_down" | "pan_up");
    let up = ["stop_engine", "key_out", "raise", "set_locks"].map(made);
    let renew = Command::Sign { signature: signed("locks").remove(0) };
    let way = if under { up.into_iter().chain([renew]).collect() } else { Vec::new() };
    leave.chain(way).chain(usual(step)).collect()
}

/// Plays a run; `after` sees each command and its answer.
fn play(
    turns: Vec<Turn>,
    mut after: impl FnMut(&Bay, &State, &Command, &Result<Vec<Event>, Refusal>),
) -> Bay {
    let mut bay = Bay::open();
    for turn in turns {
        let commands = match turn {
            Turn::Wait(minutes) => {
                bay.minute += minutes;
                continue;
            }
            Turn::Ask(command) => vec![*command],
            Turn::Usual => next_usual(&bay),
        };
        for command in commands {
            if matches!(&command, Command::Work { step, .. } if step == "cure") {
                bay.minute += 20;
            }
            let before = bay.job.state;
            let answer = bay.ask(command.clone());
            after(&bay, &before, &command, &answer);
        }
    }
    bay
}

/// The actions of the events, put together here without the fold's own reading of them.
fn actions(job: &Job) -> Vec<Action> {
    let (procedure, names) = (&job.procedure, &job.procedure.names);
    let step = |id: &str| names.step(id).unwrap();
    let outcome =
        |id: &str, classes: &BTreeMap<String, String>| procedure.outcome(step(id), classes).unwrap();
    let action = |happened: &Happened| {
        Some(match &happened.event {
            Event::Begun(it) => Action::Begin(step(&it.step)),
            Event::Left(it) => Action::Leave(step(&it.step)),
            Event::Done(it) => Action::Done(step(&it.step), outcome(&it.step, &it.classes)),
            Event::Corrected(it) => Action::Correct(step(&it.step), outcome(&it.step, &it.classes)),
            Event::VehicleAction(it) => Action::Vehicle(names.vehicle_action(&it.action).unwrap()),
            Event::Signed(it) => Action::Sign(names.sign(&it.signature.sign).unwrap()),
            Event::Skipped(it) => Action::Skip(step(&it.step)),
            Event::Voided(it) => Action::Void(step(&it.step)),
            Event::Observed(it) => {
                let var = names.var(&it.condition).unwrap();
                Action::Observe(var, names.value_of(var, &it.value).unwrap())
            }
            Event::Expired(it) => Action::Expire(names.var(&it.gate).unwrap()),
            Event::Finished(_) => Action::Finish,
            Event::Stopped(_) => Action::Stop,
            _ => return None,
        })
    };
    job.happened.iter().filter_map(action).collect()
}

fn start_state(machine: &Machine) -> State {
    machine.start(&[]).unwrap()
}

fn assert_declared(message: &Message) {
    let mut declared = MESSAGES.iter().chain(panside_trade::MESSAGES);
    let (_, args) = declared.find(|(id, _)| *id == message.id).unwrap_or_else(|| panic!("{message:?}"));
    let mut wanted: Vec<&str> = args.to_vec();
    wanted.sort_unstable();
    assert_eq!(message.args.keys().map(String::as_str).collect::<Vec<_>>(), wanted, "{}", message.id);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn folding_the_events_gives_the_state_that_stepping_the_actions_gives(turns in run(true)) {
        let bay = play(turns, |_, _, _, _| {});
        let folded = Job::fold(procedure(), specs(), bay.job.happened.clone());
        let machine = &folded.procedure.machine;
        let stepped = actions(&folded)
            .into_iter()
            .try_fold(start_state(machine), |state, action| machine.step(&state, action));
        let off = folded.turned_up.is_piece_off();
        let stepped = stepped.map(|state| machine.with_piece_off(&state, off));
        prop_assert_eq!(Ok(folded.state), stepped);
        prop_assert_eq!(folded.disagreements, vec![]);
    }

    #[test]
    fn the_tally_from_events_is_the_count_of_the_rules(turns in run(false)) {
        play(turns, |bay, _, _, _| {
            for (at, item) in bay.job.procedure.checklist.items.iter().enumerate() {
                let off = bay.job.procedure.machine.empty(&bay.job.state, ItemIx::of(at));
                assert_eq!(bay.job.tally.off(&item.id), i32::from(off), "{}", item.name);
            }
        });
    }

    #[test]
    fn no_step_is_shown_done_whose_attest_has_lapsed(turns in run(true)) {
        play(turns, |bay, _, _, answer| {
            if answer.is_err() {
                return;
            }
            let view = bay.view();
            for step in view.steps.iter().filter(|step| step.shown == Shown::Done) {
                for id in &step.signs {
                    let sign = view.signs.iter().find(|sign| sign.id == *id).unwrap();
                    let stands = sign.last.as_ref().is_some_and(|given| given.lapsed.is_none());
                    assert!(sign.kind == SignKind::Permit || stands, "{} is shown done", step.id);
                }
            }
        });
    }

    #[test]
    fn no_intent_brings_a_danger(turns in run(true)) {
        play(turns, |bay, before, command, _| {
            // Facts.
            if matches!(command, Command::Observe { .. } | Command::PieceOff { .. }) {
                return;
            }
            let machine = &bay.job.procedure.machine;
            let held: Vec<_> = machine.dangers_now(before).iter().collect();
            // What is only no longer known calls people out; it was not brought by this command.
            let brought = machine.dangers_now(&bay.job.state).iter().find(|danger| {
                !held.contains(danger) && bay.job.procedure.checklist.dangers[danger.at()].id != "hot_drain"
            });
            assert_eq!(brought, None, "{command:?}");
        });
    }

    #[test]
    fn what_the_view_offers_is_accepted_and_what_it_refuses_is_refused_in_the_same_words(turns in run(true)) {
        let bay = play(turns, |_, _, _, _| {});
        let (view, actor, now) = (bay.view(), &bay.actor, bay.now());
        let answer = |command: &Command| crate::decide(&bay.job, &bay.shop, command, actor, &now).err();
        for step in &view.steps {
            let begin = Command::Begin { step: step.id.clone() };
            prop_assert_eq!(answer(&begin), step.begin.clone());
            let skip = Command::Skip { step: step.id.clone(), reason: "not today".into() };
            prop_assert_eq!(answer(&skip), step.skip.clone());
            if step.shown == Shown::InProgress {
                let done = Command::Done { step: step.id.clone(), signatures: signed(&step.id) };
                prop_assert_eq!(answer(&done), step.done.clone());
            }
        }
        for made in &view.vehicle_actions {
            prop_assert_eq!(answer(&Command::VehicleAction { action: made.id.clone() }), made.refusal.clone());
        }
        prop_assert_eq!(answer(&Command::Finish), view.finish);
        prop_assert_eq!(answer(&Command::Stop { reason: "enough".into() }), view.stop);
    }

    #[test]
    fn every_event_reads_back_and_every_message_is_declared(turns in run(true)) {
        let bay = play(turns, |_, _, _, answer| {
            if let Err(refusal) = answer {
                std::iter::once(&refusal.message).chain(&refusal.unmet).for_each(assert_declared);
            }
        });
        for happened in &bay.job.happened {
            let (kind, version, body) = happened.event.to_body().unwrap();
            prop_assert_eq!(&Event::from_body(kind, version, &body).unwrap(), &happened.event);
        }
        bay.view().each_message(&mut |message| assert_declared(message));
    }

    #[test]
    fn a_class_is_always_one_that_the_entry_declares(
        of in 0..14_usize,
        text in "[-0-9,.a-zA-Z ]{0,8}",
        unit in select(vec!["°C", "°F", "Ω", "L", "qt", "km", "mm", "N·m", "", "x"]),
        wait in 0..40_i64,
    ) {
        let mut bay = Bay::open();
        bay.minute = wait;
        let (step, entry, mut value) = entered().swap_remove(of);
        match &mut value {
            EntryValue::Reading { value, unit: of } => (*value, *of) = (text, unit.to_owned()),
            EntryValue::Torque { stages, unit: of, .. } => (stages[0], *of) = (text, unit.to_owned()),
            EntryValue::Scan { text: scanned } => *scanned = text,
            EntryValue::Choice { class } => *class = text,
            _ => {}
        }
        // `try_entry` fails the test for any other class.
        let _ = crate::testing::try_entry(step, entry, value);
    }
}

#[test]
fn random_runs_get_far() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let (mut finished, mut voided, mut expired) = (0, 0, 0);
    for _ in 0..100 {
        let turns = run(true).new_tree(&mut runner).unwrap().current();
        let bay = play(turns, |_, _, _, _| {});
        let has = |kind: &str| bay.job.happened.iter().any(|happened| happened.event.kind() == kind);
        finished += usize::from(has("finished"));
        voided += usize::from(has("voided"));
        expired += usize::from(has("expired"));
    }
    assert!(
        finished > 0 && voided > 5 && expired > 5,
        "voided {voided}, expired {expired}, finished {finished}"
    );
}
