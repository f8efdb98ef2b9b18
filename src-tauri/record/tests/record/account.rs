//! What a record tells of a job: the account, the values as typed, times and time.

use panside_job::event::{ClockJumped, Done, Finished, Lost};
use panside_record::MissingKind;
use panside_record::RECORD_FORMAT;
use panside_record::document::End;
use panside_record::steps::Standing;
use panside_record::time::{Kind, Minutes};

use crate::bay::{self, Bay, PHOTO, Said, Tested, note};
use crate::entries;

#[test]
fn a_whole_job_has_its_concern_cause_and_correction_and_lacks_only_the_lapsed_attest() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    bay.then(Finished { lost: Lost::default() });
    let document = bay.document();
    assert_eq!(document.format, RECORD_FORMAT);
    assert_eq!(document.disagreements, Vec::<String>::new(), "the events go by the rules");
    assert_eq!(document.account.concern[0].text, "2-3 shift", "an answer is told by its label");
    assert_eq!(document.account.cause[0].text, "coil weak when warm");
    assert_eq!(document.account.correction[0].text, "solenoid, filter and gasket new");
    assert_eq!(document.vehicle.vin.as_deref(), Some("1M8GDM9AXKP042788"));
    assert_eq!(document.codes[0].codes, ["P0765", "C0035"]);
    assert_eq!(document.codes[0].said.as_deref(), Some("other systems, set apart"));
    assert!(matches!(&document.end, End::Finished { by } if by.who == "Ada"));
    let kinds: Vec<_> = document.missing.iter().map(|missing| (missing.kind, missing.id.as_str())).collect();
    assert_eq!(kinds, [(MissingKind::AttestLapsed, "pushed")]);
    Ok(())
}

#[test]
fn what_nobody_told_is_said_to_be_not_entered() -> Tested {
    let document = Bay::open()?.document();
    assert!(document.account.concern.is_empty() && document.account.cause.is_empty());
    let text = document.text();
    for heading in ["CONCERN", "CAUSE", "CORRECTION"] {
        assert!(text.contains(&format!("\n{heading}\n  Not entered\n")), "{heading}");
    }
    Ok(())
}

#[test]
fn figures_stay_as_they_were_typed_and_limits_name_their_source() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    let document = bay.document();
    let read = entries(&document, "cool")?;
    assert_eq!((read[0].value.as_str(), read[0].standing), ("63,2 °C", Standing::Replaced));
    assert_eq!((read[1].value.as_str(), read[1].standing), ("47,5 °C", Standing::Counts));
    assert_eq!(read[1].limits[0].allows, "at most 48 °C");
    assert_eq!(read[1].limits[0].source, "invented for tests, line 1");
    assert_eq!(document.vehicle.odometer.as_deref(), Some("148230,5 km"));
    assert_eq!(document.torques[0].stages, ["4,0", "9,0"]);
    assert_eq!(document.torques[0].limits[0].allows, "4, then 9 N·m ± 10 %");
    assert_eq!(document.levels[0].readings[0].trace.as_deref(), Some("25,5"));
    assert_eq!(document.charts[0].points[0].low, "12.5");
    let text = document.text();
    for shown in ["63.2 °C", "47.5 °C", "148230.5 km", "4.0, then 9.0 N·m", "25.5 mm at 60 °C"] {
        assert!(text.contains(shown), "{shown}\n{text}");
    }
    Ok(())
}

#[test]
fn time_is_told_as_planned_unplanned_and_waiting() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let time = bay.document().time;
    // Each event is a minute after the one before; cooling waits 25 minutes more. Cool: begun, read, 26 minutes, read,
    // done. Free the nuts: begun, entered, done.
    assert_eq!(
        time.apart.iter().map(|step| (step.kind, step.minutes)).collect::<Vec<_>>(),
        [(Kind::Waiting, 28), (Kind::Unplanned, 2)]
    );
    // Identify 5, concern 2, wipe 1, push 1, pan down 2.
    assert_eq!(time.in_steps, Minutes { planned: 11, unplanned: 2, waiting: 28 });
    assert_eq!(time.phases[1].minutes, Minutes { planned: 3, unplanned: 2, waiting: 28 });
    assert_eq!(
        time.total,
        u64::try_from(bay.minute + 2)?,
        "an open job counts up to when the record is made"
    );
    assert_eq!((time.untimed, time.unknown_gaps), (0, 0));
    Ok(())
}

#[test]
fn a_wall_clock_set_back_within_a_boot_changes_no_minutes() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("find");
    bay.wall_set = -60;
    bay.then(ClockJumped { ms: -3_600_000 });
    bay.done("find", &[], &[]);
    let document = bay.document();
    assert_eq!(document.clock_set[0].seconds, -3600);
    assert_eq!(document.time.in_steps, Minutes { planned: 2, unplanned: 0, waiting: 0 });
    assert_eq!((document.time.total, document.time.unknown_gaps), (5, 0));
    Ok(())
}

#[test]
fn over_a_boot_the_wall_clock_counts_and_where_it_went_back_nobody_knows() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("find");
    bay.boot = 2;
    bay.done("find", &[], &[]);
    assert_eq!(bay.document().time.in_steps.planned, 1);
    bay.begin("hand_over");
    (bay.boot, bay.wall_set) = (3, -60);
    bay.done("hand_over", &[], &[]);
    let time = bay.document().time;
    // Three known minutes up to the second step's beginning, two up to the record; the gap between is unknown.
    assert_eq!((time.in_steps.planned, time.untimed), (1, 1));
    assert_eq!((time.total, time.unknown_gaps), (5, 1));
    Ok(())
}

#[test]
fn a_restart_of_the_tablet_is_told_with_the_time_that_only_the_wall_clock_knows() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("find");
    assert_eq!(bay.document().restarted, []);
    (bay.boot, bay.wall_set) = (2, 24 * 60);
    bay.done("find", &[], &[]);
    (bay.boot, bay.wall_set) = (3, 0);
    bay.begin("hand_over");
    let document = bay.document();
    let minutes: Vec<_> = document.restarted.iter().map(|restarted| restarted.minutes).collect();
    assert_eq!(minutes, [Some(24 * 60 + 1), None], "set a day forward and back again");
    let text = document.text().split_whitespace().collect::<Vec<_>>().join(" ");
    for says in [
        "1441 min since the entry before, by the wall clock only",
        "is not known, as the wall clock went back",
    ] {
        assert!(text.contains(says), "{says}\n{text}");
    }
    Ok(())
}

#[test]
fn work_that_was_entered_later_has_no_time_that_is_known() -> Tested {
    let mut bay = Bay::open()?;
    bay.begin("find");
    bay.then(Done { later: true, ..bay::done("find", &[], "Ada", &[]) });
    let time = bay.document().time;
    assert_eq!((time.in_steps, time.untimed), (Minutes::default(), 1));
    Ok(())
}

#[test]
fn times_are_told_in_utc_and_by_the_shops_clock() -> Tested {
    let mut bay = Bay::open()?;
    bay.work("find", &[("cause", note("x"), "written")], &[]);
    let document = bay.document();
    assert_eq!(document.generated_local, "2026-03-02T09:05:00+01:00");
    let by = &entries(&document, "find")?[0].by;
    assert_eq!((by.utc.as_str(), by.local.as_str()), ("2026-03-02T08:02:00Z", "2026-03-02T09:02:00+01:00"));
    Ok(())
}

#[test]
fn a_photo_has_its_caption_and_its_whole_hash() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    let document = bay.document();
    assert_eq!((document.photos.len(), document.photos[0].hash.as_str()), (1, PHOTO));
    assert_eq!(document.photos[0].caption.as_deref(), Some("dry after ten minutes"));
    assert_eq!(document.photos[0].of, "pan and plug, dry");
    Ok(())
}

#[test]
fn a_value_at_a_step_in_progress_does_not_count_yet() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.begin("find");
    bay.enter("find", "cause", note("still looking"), "written");
    let document = bay.document();
    assert_eq!(entries(&document, "find")?[0].standing, Standing::NotDone);
    assert!(document.account.cause.is_empty());
    Ok(())
}
