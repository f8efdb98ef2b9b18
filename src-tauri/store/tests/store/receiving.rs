//! Events that other devices wrote.

use panside_journal::{DeviceId, Event, JobId, Subject};
use panside_store::{BothSides, JobRow, Options, Received, Store, StoreError};
use proptest::prelude::*;
use proptest::sample::Index;
use tempfile::tempdir;
use uuid::Uuid;

use crate::support::{Outcome, epoch, job, label_of, meaning_of, options, store_with, write, write_about};

fn device(number: u128) -> Options {
    Options { device: DeviceId(Uuid::from_u128(0xD0 + number)), epoch: epoch(number), ..options() }
}

#[test]
fn a_job_moves_to_another_device_and_its_chain_goes_on_there() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let mut giver = store_with(here.path(), 9)?;
    let mut receiver = Store::open(there.path(), device(9))?;
    write(&mut receiver, job(7), 100)?;
    let extract = giver.events(job(1))?;
    assert_eq!(receiver.receive(&extract, &label_of)?, Received { new: 3, waiting: 0 });
    assert_eq!(receiver.head(job(1))?, giver.head(job(1))?);
    assert_eq!(receiver.receive(&extract, &label_of)?.new, 0, "twice is once");
    assert_eq!(receiver.receive(&extract[..2], &label_of)?.new, 0, "a part of what is here is nothing new");
    write(&mut receiver, job(1), 101)?;
    let events = receiver.events(job(1))?;
    assert_eq!(events[..3], extract);
    assert_eq!(events[3].header.prev_subject, extract[2].hash);
    assert_eq!(events[3].header.device_seq, 2);
    assert!(receiver.check(&meaning_of)?.troubles.is_empty());
    receiver.close()?;
    let receiver = Store::open(there.path(), device(9))?;
    assert!(receiver.troubles().is_empty());
    // And back again.
    assert_eq!(giver.receive(&receiver.events(job(1))?, &label_of)?.new, 1);
    write(&mut giver, job(1), 102)?;
    assert!(giver.check(&meaning_of)?.troubles.is_empty());
    Ok(())
}

#[test]
fn an_event_waits_for_the_one_before_it() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let giver = store_with(here.path(), 12)?;
    let mut receiver = Store::open(there.path(), device(9))?;
    let extract = giver.events(job(1))?;
    assert_eq!(receiver.receive(&extract[2..], &label_of)?, Received { new: 0, waiting: 2 });
    assert!(receiver.events(job(1))?.is_empty() && receiver.jobs()?.is_empty());
    receiver.close()?;
    let mut receiver = Store::open(there.path(), device(9))?;
    assert_eq!(receiver.receive(&extract[..1], &label_of)?, Received { new: 1, waiting: 2 });
    assert_eq!(receiver.receive(&extract[1..2], &label_of)?, Received { new: 3, waiting: 0 });
    assert_eq!(receiver.events(job(1))?, extract);
    assert!(receiver.check(&meaning_of)?.troubles.is_empty());
    Ok(())
}

#[test]
fn what_does_not_hold_is_not_taken_over() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let giver = store_with(here.path(), 9)?;
    let mut receiver = Store::open(there.path(), device(9))?;
    let extract = giver.events(job(1))?;
    let mut altered = extract.clone();
    altered[1].body.push(b' ');
    assert!(matches!(receiver.receive(&altered, &label_of), Err(StoreError::Journal(_))));
    assert!(receiver.events(job(1))?.is_empty(), "not even what stands before it");
    let restored = tempdir()?;
    let mut restored = Store::open(restored.path(), options())?;
    let own = restored.receive(&extract, &label_of);
    assert!(matches!(own, Err(StoreError::OwnEventUnknown { seq: 1, .. })), "{own:?}");
    Ok(())
}

#[test]
fn a_job_that_went_on_in_two_places_keeps_both_sides_and_takes_nothing_more() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let mut giver = store_with(here.path(), 9)?;
    let mut receiver = Store::open(there.path(), device(9))?;
    receiver.receive(&giver.events(job(1))?, &label_of)?;
    let taken = write(&mut receiver, job(1), 100)?;
    let kept = write(&mut giver, job(1), 101)?;
    let (of_giver, of_receiver) = (giver.events(job(1))?, receiver.events(job(1))?);
    assert_eq!(giver.receive(&of_receiver, &label_of)?.new, 1);
    assert_eq!(receiver.receive(&of_giver, &label_of)?.new, 1);
    for store in [&mut giver, &mut receiver] {
        // The giver had the job, so its line counts, on both.
        assert_eq!(store.head(job(1))?, kept.head);
        assert_eq!(store.events(job(1))?, of_giver);
        let sides = store.both_sides()?;
        let [BothSides { subject, line, side }] = sides.as_slice() else {
            return Err(format!("{sides:?}").into());
        };
        assert_eq!((*subject, line[0].hash, side[0].hash), (job(1).into(), kept.head.hash, taken.head.hash));
        let refused = write(store, job(1), 102);
        assert!(matches!(refused, Err(StoreError::Forked { seq: 4, .. })), "{refused:?}");
        write(store, job(2), 103)?;
        assert!(store.check(&meaning_of)?.troubles.is_empty());
    }
    receiver.close()?;
    assert!(Store::open(there.path(), device(9))?.troubles().is_empty());
    Ok(())
}

#[test]
fn a_device_that_wrote_one_number_twice_is_named() -> Outcome {
    let (one, two, there) = (tempdir()?, tempdir()?, tempdir()?);
    let mut first = Store::open(one.path(), device(1))?;
    let mut copy = Store::open(two.path(), device(1))?;
    write(&mut first, job(1), 1)?;
    write(&mut copy, job(2), 2)?;
    let mut receiver = Store::open(there.path(), device(9))?;
    receiver.receive(&first.events(job(1))?, &label_of)?;
    let refused = receiver.receive(&copy.events(job(2))?, &label_of);
    assert!(matches!(refused, Err(StoreError::DeviceForked { seq: 1, .. })), "{refused:?}");
    assert!(receiver.events(job(2))?.is_empty());
    Ok(())
}

/// What a store shows of its jobs and of the shop.
#[derive(Debug, PartialEq)]
struct Shown {
    jobs: Vec<JobRow>,
    events: Vec<(Subject, Vec<Event>)>,
    both_sides: Vec<BothSides>,
}

fn shown(store: &Store) -> Result<Shown, StoreError> {
    let jobs = store.jobs()?;
    let mut subjects: Vec<Subject> = jobs.iter().map(|row| row.job.into()).collect();
    subjects.extend(store.shops()?.into_iter().map(|(subject, _)| subject));
    let events = subjects.into_iter().map(|subject| Ok((subject, store.events(subject)?)));
    Ok(Shown { events: events.collect::<Result<_, StoreError>>()?, both_sides: store.both_sides()?, jobs })
}

/// Everything that a store has, those on sides too.
fn everything(shown: &Shown) -> Vec<Event> {
    let on_line = shown.events.iter().flat_map(|(_, events)| events);
    on_line.chain(shown.both_sides.iter().flat_map(|sides| &sides.side)).cloned().collect()
}

/// Lets two devices work: each step is a device, and a job or the shop; some steps hand all of a device's events over.
fn work(stores: &mut [Store; 2], steps: &[(bool, u8)]) -> Result<(), StoreError> {
    for (number, (second, what)) in (1..).zip(steps) {
        let (mine, other) = if *second { (1, 0) } else { (0, 1) };
        let subject = match what {
            0..=3 => Subject::Job(JobId(Uuid::from_u128(u128::from(*what)))),
            4 => Subject::Shop(stores[mine].device()),
            _ => {
                let events = everything(&shown(&stores[other])?);
                stores[mine].receive(&events, &label_of)?;
                continue;
            }
        };
        match write_about(&mut stores[mine], subject, number) {
            // Nothing more is added to a job that went two ways.
            Ok(_) | Err(StoreError::Forked { .. }) => {}
            Err(error) => return Err(error),
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn two_devices_merged_in_any_order_and_any_pieces_show_the_same(
        steps in prop::collection::vec((any::<bool>(), 0..6_u8), 1..30),
        order in prop::collection::vec(any::<Index>(), 1..120),
        pieces in prop::collection::vec(1..6_usize, 1..20),
    ) {
        let merged = || -> Result<(), Box<dyn std::error::Error>> {
            let dirs = [tempdir()?, tempdir()?, tempdir()?];
            let mut stores =
                [Store::open(dirs[0].path(), device(1))?, Store::open(dirs[1].path(), device(2))?];
            work(&mut stores, &steps)?;
            let [mut one, mut two] = stores;
            let (of_one, of_two) = (everything(&shown(&one)?), everything(&shown(&two)?));
            one.receive(&of_two, &label_of)?;
            two.receive(&of_one, &label_of)?;
            let truth = shown(&one)?;
            assert_eq!(shown(&two)?, truth);
            // A third one gets them torn apart, shuffled, some of them twice.
            let mut all = [of_one, of_two].concat();
            let any = !all.is_empty();
            // Two devices that did nothing have nothing to shuffle.
            for (at, with) in order.iter().enumerate().filter(|_| any) {
                let (at, with) = (at % all.len(), with.index(all.len()));
                all.swap(at, with);
            }
            let mut third = Store::open(dirs[2].path(), device(3))?;
            let mut left = all.as_slice();
            let mut sizes = pieces.iter().cycle();
            while !left.is_empty() {
                let (piece, rest) = left.split_at((*sizes.next().ok_or("no size")?).min(left.len()));
                third.receive(piece, &label_of)?;
                left = rest;
            }
            assert_eq!(shown(&third)?, truth);
            for store in [&one, &two, &third] {
                let report = store.check(&meaning_of)?;
                assert!(report.troubles.is_empty(), "{:?}", report.troubles);
            }
            Ok(())
        };
        prop_assert!(!steps.is_empty() && merged().map_err(|error| TestCaseError::fail(error.to_string())).map(|()| true)?);
    }
}
