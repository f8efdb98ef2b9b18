//! Figures of the invented job.

use super::*;
use crate::command::Command;
use crate::message::{figure_axis, figure_reading, figure_stage_clicked, figure_stage_open};
use crate::testing::{Bay, clicked, specs, usual};
use crate::value::{EntryValue, StickReading, StickShows};

fn stick(celsius: &str, millimetres: &str) -> StickReading {
    let stick = StickShows::Trace { value: millimetres.into(), unit: "mm".into() };
    StickReading { temperature: celsius.into(), temperature_unit: "°C".into(), stick }
}

fn level(readings: Vec<StickReading>) -> EntryValue {
    EntryValue::Level { readings, confirmed_no_trace: false, given_up: None }
}

fn of_kind(bay: &Bay, kind: FigureKind) -> Figure {
    figures(&bay.job).into_iter().find(|figure| figure.kind == kind).unwrap()
}

fn plot(figure: Figure) -> Plot {
    match figure.drawing {
        Drawing::Plot(plot) => *plot,
        Drawing::Bolts(_) => panic!("{} is no plot", figure.id),
    }
}

fn map_of(figure: Figure) -> BoltMap {
    match figure.drawing {
        Drawing::Bolts(map) => map,
        Drawing::Plot(_) => panic!("{} is no map", figure.id),
    }
}

/// The bay's clock, which starts at eight: `08:05` after five minutes.
fn now(bay: &Bay) -> String {
    format!("{:02}:{:02}", 8 + bay.minute / 60, bay.minute % 60)
}

/// A job that has come to the level, the engine idling.
fn at_the_level() -> Bay {
    let mut bay = Bay::open();
    bay.work_up_to("fill");
    for command in
        usual("level").into_iter().filter(|command| matches!(command, Command::VehicleAction { .. }))
    {
        bay.must(command);
    }
    bay.begin("level").unwrap();
    bay
}

#[test]
fn a_job_in_which_nothing_was_measured_has_no_figure() {
    assert_eq!(figures(&Bay::open().job), []);
}

#[test]
fn readings_of_the_stick_lie_on_the_chart_they_were_judged_by() {
    // The fixture's chart: 40 °C 12 to 22 mm, 80 °C 32 to 42 mm. At 60 °C, halfway, 22 mm is the low mark.
    let mut bay = at_the_level();
    bay.enter("level", "stick", level(vec![stick("60", "22"), stick("60", "24")])).unwrap();
    let plot = plot(of_kind(&bay, FigureKind::Level));
    let Band { low, high } = &plot.bands[0];
    let halfway = |edge: &[Spot]| Spot { x: (edge[0].x + edge[1].x) / 2, y: (edge[0].y + edge[1].y) / 2 };
    assert_eq!(plot.points[0].at, halfway(low), "on the low mark");
    assert!((halfway(low).y..=halfway(high).y).contains(&plot.points[1].at.y), "24 mm lies in the band");
    assert_eq!((&plot.across.title, &plot.up.title), (&Some(figure_axis("°C")), &Some(figure_axis("mm"))));
    assert_eq!(
        plot.up.ticks[0],
        Tick { at: 0, says: "0".into() },
        "marks are measured from the end of the stick"
    );
    assert_eq!(plot.labels[0].says, figure_reading(vec!["22".to_owned(), "24".to_owned()], "mm", now(&bay)));
}

#[test]
fn a_reading_in_other_units_is_drawn_where_the_chart_has_it() {
    // 1 in is 25.4 mm and 140 °F is 60 °C: by definition of the inch (NIST SP 811, B.8) and of °F = 1.8 °C + 32.
    let mut bay = at_the_level();
    let inch = StickReading {
        temperature: "140".into(),
        temperature_unit: "°F".into(),
        stick: StickShows::Trace { value: "1".into(), unit: "in".into() },
    };
    bay.enter("level", "stick", level(vec![inch, stick("60", "25.4")])).unwrap();
    let plot = plot(of_kind(&bay, FigureKind::Level));
    assert_eq!(plot.points[0].at, plot.points[1].at);
}

#[test]
fn a_dry_stick_lies_at_its_end_and_a_level_read_again_leads_on_to_the_next() {
    let mut bay = at_the_level();
    let dry = StickReading { stick: StickShows::NoTrace, ..stick("60", "0") };
    bay.enter("level", "stick", level(vec![dry.clone(), dry])).unwrap();
    bay.enter("level", "stick", level(vec![stick("60", "25"), stick("60", "25")])).unwrap();
    let figure = of_kind(&bay, FigureKind::Level);
    let says = figure.says.len();
    let plot = plot(figure);
    assert_eq!(plot.points[0].at.y, 0);
    assert_eq!(plot.points.iter().map(|point| point.counts).collect::<Vec<_>>(), [false, false, true, true]);
    assert_eq!(says, 3, "the chart and both levels");
}

#[test]
fn the_next_bolt_is_the_cores() {
    let mut bay = Bay::open();
    bay.work_up_to("verdict");
    bay.begin("pan_up").unwrap();
    let map = map_of(of_kind(&bay, FigureKind::Bolts));
    let bolts = specs().bolts("pan_bolts").unwrap();
    let mut done: Vec<String> = Vec::new();
    for drawn in &map.bolts {
        let next = bolts.order.next(&done).unwrap().unwrap().to_owned();
        let bolt = bolts.order.bolts.iter().find(|bolt| bolt.id == next).unwrap();
        // The fixture's pan is 386 mm wide and 240 mm high, from x = −186 and y = −120.
        let across = (bolt.x.millimetres() + 186.0) / 386.0 * 10_000.0;
        let up = (bolt.y.millimetres() + 120.0) / 240.0 * 10_000.0;
        assert_eq!((drawn.x, drawn.y), (across.round() as i32, up.round() as i32), "{}", drawn.number);
        done.push(next);
    }
    assert_eq!((map.bolts.len(), map.next), (16, Some(1)));
    assert_eq!(map.height, 6218, "240 of 386");
    assert_eq!(map.stages[0].says, figure_stage_open(1_usize, "4 N·m"));
}

#[test]
fn a_map_that_is_clicked_through_has_no_next_bolt_and_says_when() {
    let mut bay = Bay::open();
    bay.work_up_to("verdict");
    bay.begin("pan_up").unwrap();
    bay.enter("pan_up", "torque", clicked()).unwrap();
    let time = now(&bay);
    let map = map_of(of_kind(&bay, FigureKind::Bolts));
    assert_eq!(map.next, None);
    assert_eq!(map.stages[1].says, figure_stage_clicked(2_usize, "9 N·m", "9 N·m", time));
}

#[test]
fn every_place_of_every_figure_lies_on_its_drawing() {
    let mut bay = Bay::open();
    bay.work_up_to("level");
    let all = figures(&bay.job);
    assert!(all.len() >= 2, "{all:?}");
    let on = |part: i32| (0..=FULL).contains(&part);
    for figure in all {
        match figure.drawing {
            Drawing::Plot(plot) => {
                let bands = plot.bands.iter().flat_map(|band| band.low.iter().chain(&band.high));
                let lines = plot.lines.iter().flat_map(|line| &line.through);
                let points = plot.points.iter().map(|point| &point.at);
                assert!(
                    bands.chain(lines).chain(points).all(|spot| on(spot.x) && on(spot.y)),
                    "{}",
                    figure.id
                );
            }
            Drawing::Bolts(map) => assert!(map.bolts.iter().all(|bolt| on(bolt.x) && on(bolt.y))),
        }
    }
}
