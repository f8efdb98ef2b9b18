//! A job that another device wrote.

use panside_journal::DeviceId;
use panside_store::{Options, Received, Store, StoreError};
use tempfile::tempdir;
use uuid::Uuid;

use crate::kit::{Outcome, epoch, job, label_of, options, store_with, write};

fn other_device() -> Options {
    Options { device: DeviceId(Uuid::from_u128(0xD9)), epoch: epoch(9), ..options() }
}

#[test]
fn a_job_moves_to_another_device_and_its_chain_goes_on_there() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let mut giver = store_with(here.path(), 9)?;
    let mut receiver = Store::open(there.path(), other_device())?;
    write(&mut receiver, job(7), 100)?;
    let extract = giver.events(job(1))?;
    let received = receiver.receive(&extract, "{\"events\":3}")?;
    assert_eq!(received, Received { new: 3, head: giver.head(job(1))? });
    assert_eq!(receiver.receive(&extract, "{\"events\":3}")?.new, 0, "twice is once");
    assert_eq!(receiver.receive(&extract[..2], "{}")?, Received { new: 0, head: received.head });
    write(&mut receiver, job(1), 101)?;
    let events = receiver.events(job(1))?;
    assert_eq!(events[..3], extract);
    assert_eq!(events[3].header.prev_job, extract[2].hash);
    assert_eq!(events[3].header.device_seq, 2);
    assert!(receiver.check(&label_of)?.troubles.is_empty());
    receiver.close()?;
    let receiver = Store::open(there.path(), other_device())?;
    assert!(receiver.troubles().is_empty());
    // And back again.
    assert_eq!(giver.receive(&receiver.events(job(1))?, "{\"events\":4}")?.new, 1);
    write(&mut giver, job(1), 102)?;
    assert!(giver.check(&label_of)?.troubles.is_empty());
    Ok(())
}

#[test]
fn what_does_not_hold_or_went_two_ways_is_not_taken_over() -> Outcome {
    let (here, there) = (tempdir()?, tempdir()?);
    let mut giver = store_with(here.path(), 9)?;
    let mut receiver = Store::open(there.path(), other_device())?;
    let extract = giver.events(job(1))?;
    let mut altered = extract.clone();
    altered[1].body.push(b' ');
    assert!(matches!(receiver.receive(&altered, "{}"), Err(StoreError::Journal(_))));
    assert!(
        matches!(receiver.receive(&extract[1..], "{}"), Err(StoreError::Journal(_))),
        "a start is missing"
    );
    assert!(matches!(receiver.receive(&[], "{}"), Err(StoreError::Nothing)));
    assert!(receiver.events(job(1))?.is_empty());

    receiver.receive(&extract, "{}")?;
    write(&mut receiver, job(1), 100)?;
    write(&mut giver, job(1), 101)?;
    let forked = receiver.receive(&giver.events(job(1))?, "{}");
    assert!(matches!(forked, Err(StoreError::Forked { seq: 4, .. })), "{forked:?}");

    let restored = tempdir()?;
    let mut restored = Store::open(restored.path(), options())?;
    let own = restored.receive(&extract, "{}");
    assert!(matches!(own, Err(StoreError::OwnEventUnknown { seq: 1, .. })), "{own:?}");
    Ok(())
}
