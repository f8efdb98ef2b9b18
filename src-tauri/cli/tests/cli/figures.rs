//! One number of the trade without a window: every example that the help shows, and what must not be taken.

use std::path::PathBuf;

use crate::support::{Said, cli, root};

fn sheet() -> PathBuf {
    root().join("checklists/sheets/demo-six-speed.sheet.json")
}

fn figure(words: &str) -> Said {
    let arguments: Vec<String> = words
        .split_whitespace()
        .map(|word| word.replace("SHEET", &sheet().display().to_string()).replace("~", " "))
        .collect();
    cli(&[vec!["figure".to_owned()], arguments].concat())
}

/// Says that it worked out and said all of this.
fn says(words: &str, parts: &[&str]) {
    let said = figure(words);
    assert_eq!(said.code, 0, "{words}\n{}\n{}", said.out, said.err);
    for part in parts {
        assert!(said.out.contains(part), "\"{part}\" is not in: {}", said.out);
    }
}

#[test]
fn every_example_that_is_listed_works() {
    let list = cli(&["figure"]);
    assert_eq!(list.code, 0);
    let examples: Vec<&str> =
        list.out.lines().filter_map(|line| line.trim().strip_prefix("panside-cli figure ")).collect();
    assert!(examples.len() >= 18, "{}", list.out);
    for example in examples {
        let demo = "checklists/sheets/demo-six-speed.sheet.json";
        let said = figure(&example.replace(demo, "SHEET"));
        assert_eq!(said.code, 0, "{example}\n{}", said.err);
        for heading in ["given", "result", "source"] {
            assert!(said.out.contains(heading), "{example}\n{}", said.out);
        }
    }
}

#[test]
fn figure_alone_and_its_help_list_every_figure_with_its_keys() {
    let (alone, help) = (cli(&["figure"]), cli(&["figure", "--help"]));
    assert_eq!((alone.code, help.code), (0, 0));
    for part in [
        "level: where",
        "reading",
        "cooldown: how",
        "tool's length",
        "balance:",
        "labour:",
        "estimate:",
        "vin:",
    ] {
        assert!(alone.out.contains(part), "{part}: {}", alone.out);
        assert!(help.out.contains(part), "{part}: {}", help.out);
    }
}

#[test]
fn a_level_is_read_from_the_sheets_chart_or_from_marks() {
    // The demo chart at 46 °C: 15 to 25 mm.
    says(
        "level temp=46C reading=17mm reading=17,5mm --sheet SHEET",
        &["in the band", "(46 − 40) / (58 − 40)", "15 mm"],
    );
    says(
        "level temp=46C reading=31mm reading=31mm mark=40C:12mm:22mm mark=58C:21mm:31mm",
        &["above the band"],
    );
    says("level temp=114,8F reading=0,67in reading=0,67in --sheet SHEET", &["in the band"]);
    says("level temp=75C reading=31mm reading=31mm --sheet SHEET", &["outside the chart", "unclear"]);
    says("level temp=46C reading=17mm --sheet SHEET", &["One reading is not enough"]);
    says("level temp=46C reading=17mm reading=17mm park=no --sheet SHEET", &["shift to park"]);
    let old = "level reading=17mm:46C:2min reading=17mm:46C:12min reading=17mm:46C:13min started=10min --sheet SHEET";
    says(old, &["does not count: the engine was started since", "in the band"]);
}

#[test]
fn the_demo_figures_come_out_as_the_demo_has_them() {
    says("coil ohms=6.9ohm temp=62C limits=third~gear --sheet SHEET", &["5.922 Ω", "above its upper limit"]);
    says("coil ohms=OL temp=62C limits=third~gear --sheet SHEET", &["open"]);
    let click =
        "torque torque=79.7lbf.in spec=pan_bolt_torque stage=2 tool=2Nm:20Nm due=2026-06-30 on=2026-05-04";
    says(&format!("{click} --sheet SHEET"), &["9.005 N·m", "Inside the tolerance"]);
    let mixed_up =
        "torque torque=79.7Nm target=9Nm tolerance=10% tool=2Nm:100Nm due=2026-06-30 on=2026-05-04";
    says(mixed_up, &["79.7 lbf·in would fit"]);
    let three = "reading=0min:180C reading=10min:140C reading=20min:109C ambient=22C";
    says(&format!("cooldown {three} --sheet SHEET"), &["48 °C", "Not before"]);
    says(
        "order pattern=star bolt=A:0mm:9mm bolt=B:9mm:0mm bolt=C:0mm:-9mm bolt=D:-9mm:0mm done=A",
        &["A, C, B, D", "Next: C"],
    );
    says(
        "vin vin=1M8GDM9AXKPO42788",
        &["Place 12 has \"O\"", "Perhaps 1M8GDM9AXKP042788: 0 for O at place 12"],
    );
    says("code bytes=43:02:01:35:07:41:00:00", &["P0135", "P0741", "transmission"]);
    says("surface shows=40C surface=bright ambient=22C", &["no evidence"]);
    says("touch contact=10min", &["48 °C"]);
    says("labour event=0min:on:drain event=75min:off expected=1h", &["1.3 h of labour", "15 min more"]);
    says(
        "estimate currency=USD part=fluid:5,5:12.35 labor=pan:1.25:95 mayturnup=nut:1,250.00",
        &["5.5 × 12.35 = 67.93 USD", "186.68 USD before tax", "at most 1436.68 USD"],
    );
}

#[test]
fn json_has_the_steps_and_the_sources() {
    let said = figure("adapter torque=30lbf.ft tool=12in adapter=6in --json");
    let working: serde_json::Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(working["steps"][1]["value"]["text"], "20 lbf·ft");
    assert_eq!(working["sources"][0]["seen"], "read");
}

#[test]
fn a_wrong_name_key_or_unit_is_wrong_usage_with_a_sentence() {
    figure("lever").refuses(64, "There is no figure \"lever\". Choose one of: level");
    figure("coil ohms=6.9ohm temp=62C limit=5ohm").refuses(64, "coil has no key \"limit\"");
    figure("coil ohms").refuses(64, "\"ohms\" is no key=value");
    figure("coil ohms=6.9ohm").refuses(64, "coil needs temp=");
    figure("coil ohms=6.9ohm temp=62C temp=63C").refuses(64, "give it once");
    figure("coil ohms=6.9 temp=62C limits=5ohm:6ohm").refuses(64, "the unit is missing");
    figure("coil ohms=6.9mm temp=62C limits=5ohm:6ohm").refuses(64, "\"mm\" is a unit of length");
    figure("coil ohms=6.9ohm temp=62Q limits=5ohm:6ohm").refuses(64, "is not known here");
    figure("coil ohms=6..9ohm temp=62C limits=5ohm:6ohm").refuses(64, "more than one comma or point");
    figure("coil ohms=NaN temp=62C limits=5ohm:6ohm").refuses(64, "ohms=NaN");
    figure("coil ohms=6.9ohm temp=62C").refuses(64, "The limits are missing");
    figure("coil ohms=6.9ohm temp=62C limits=5ohm").refuses(64, "The limits are missing");
    figure("level temp=46C reading=31mm").refuses(64, "The chart is missing");
    figure("balance drained=4L added=4L density=850kg/m3:1kg/m3").refuses(64, "write it as volume:off by");
    figure("bolt torque=9Nm thread=W6 grade=8.8").refuses(64, "write it as M6");
    figure("tool setting=9Nm tool=5Nm:25Nm due=30.6.2026 on=2026-05-04").refuses(64, "year-month-day");
    figure("order pattern=zigzag bolt=A:0mm:1mm").refuses(64, "star, crosswise or spiral");
    figure("labour event=5min:gone").refuses(64, "time:off");
    figure("estimate currency=USD part=filter:1").refuses(64, "name:quantity:price");
    figure("estimate currency=USD part=filter:1:1,250").refuses(64, "can be 1250 or 1.25");
    figure("estimate currency=XYZ").refuses(64, "Choose one of: USD");
    figure("code bytes=4:3").refuses(64, "two hexadecimal digits");
}

#[test]
fn what_makes_no_sense_is_refused_and_says_why() {
    let crossed = "level temp=46C reading=17mm reading=17mm mark=40C:22mm:12mm mark=58C:21mm:31mm";
    figure(crossed).refuses(1, "The low mark must be");
    let twice = "level temp=46C reading=17mm reading=17mm mark=40C:12mm:22mm mark=40C:12mm:22mm";
    figure(twice).refuses(1, "rising order");
    let turned = "tool setting=9Nm tool=25Nm:5Nm due=2026-06-30 on=2026-05-04";
    figure(turned).refuses(1, "is not possible. Correct the tool");
    figure("coil ohms=6.9ohm temp=62C limits=6ohm:5ohm").refuses(1, "Correct the sheet");
    figure("coil ohms=6.9ohm temp=250C limits=5ohm:6ohm").refuses(1, "outside -50 °C to 200 °C");
    let back = "cooldown reading=0min:180C reading=10min:140C reading=5min:120C ambient=22C limit=48C";
    figure(back).refuses(1, "The clock went back");
    figure("refill drained=4L:120C poured=20C density=850kg/m3").refuses(1, "−40 to 95 °C only");
    figure("code codes=P0765,X1").refuses(1, "\"X1\" is not a trouble code");
}

#[test]
fn a_sheet_that_is_not_there_or_lacks_the_value_does_not_load() {
    figure("level temp=46C reading=17mm --sheet /nowhere.json").refuses(3, "/nowhere.json cannot be read");
    figure("level temp=46C reading=17mm chart=none --sheet SHEET").refuses(3, "no level chart \"none\"");
    figure("coil ohms=6ohm temp=20C limits=drain_limit --sheet SHEET").refuses(3, "no range \"drain_limit\"");
}
