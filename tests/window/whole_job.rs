//! The whole demo job by taps, from the concern to the record.

use std::process::Command;

use serde_json::Value;

use panside_tests::window::{Place, Result, Trouble, run};

/// What must stand in the record: the order, the concern as the customer told it, the cause, what was done, what was agreed to.
const SAYS: &[&str] = &[
    "RO 20417",
    "Engine flares like in neutral between second and third",
    "Other shifts and reverse good, level corrected and the flare stayed",
    "Third-gear solenoid, filter, gasket and seals new",
    "880.00 USD before tax",
    "R. Ode",
    "T. Marl",
    "K. Lund",
];

/// Every torque of the script that counts, as it was clicked, beside what the sheet allows, and with which tool.
const TORQUES: &[&str] = &[
    "8 N·m 8 N·m ± 10 % within limits W1, quarter-inch click wrench",
    "4, then 9.0 N·m 4, then 9 N·m ± 11 % within limits W1, quarter-inch click wrench",
    "38 N·m 38 N·m ± 10 % within limits W2, three-eighths click wrench",
    "45 N·m 45 N·m ± 10 % within limits W2, three-eighths click wrench",
];

/// What the demo job takes of a hand, its detours included; less is better, and more is a mistake.
const MOST_TAPS: usize = 1040;
const MOST_TYPED: usize = 960;

/// Parts of the record that must be the same whether a hand or the script's own walk entered them.
const PARTS: &[&str] = &[
    "vehicle",
    "account",
    "money",
    "codes",
    "levels",
    "torques",
    "tally",
    "vehicle_actions",
    "voided",
    "skipped",
    "observed",
    "missing",
    "missed",
    "dangers",
];

#[test]
fn the_demo_job_walked_by_tapping_ends_in_a_readable_record() -> Result {
    let place = Place::after(0)?;
    let mut window = place.open()?;
    let mut job = place.job()?;
    job.walk(&mut window, 1, usize::MAX)?;

    window.tap_words("screens-record-save")?;
    let saved = window.words.say("screens-record-saved")?;
    let told = serde_json::Value::from(saved.as_str());
    window.wait("the record to be saved", &format!("seen.text.includes({told})"))?;
    let seen = window.see()?;
    assert!(seen.mistakes.is_empty(), "the page's scripts made mistakes: {:?}", seen.mistakes);
    window.take_times()?;
    let times = window.close()?;
    println!("   the demo job by hand: {}", times.to_text());
    assert!(times.taps <= MOST_TAPS && times.typed <= MOST_TYPED, "more than it was: {}", times.to_text());
    for painted in times.slowest(8) {
        println!("      {:.0} ms: {:.60}", painted.ms, painted.says);
    }
    println!(
        "   wrong orders: {} refused in words, not even offered at lines {:?}",
        job.refused, job.not_offered
    );

    let pages = saved_pages(&place)?;
    run(Command::new("qpdf").arg("--check").arg(&pages))?;
    let text = run(Command::new("pdftotext").arg(&pages).arg("-"))?;
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in SAYS.iter().chain(TORQUES) {
        assert!(flat.contains(words), "\"{words}\" is not in the record:\n{text}");
    }
    place.screen().wait_closed()?;
    let by_hand = place.programs().record(&place.store())?;
    let by_script = place.path("by_script");
    // Its tools were named when the job was started: the script's own walk is of that day, whatever the hour.
    place.walk_all(&by_script, by_hand["started"]["utc"].as_str().unwrap_or_default())?;
    let by_script = place.programs().record(&by_script)?;
    for part in PARTS {
        assert!(!by_hand[part].is_null(), "the record has no {part}");
        assert_eq!(plain(&by_hand[part]), plain(&by_script[part]), "{part}, by hand and by the script");
    }
    Ok(())
}

/// A part of a record without who entered it when, and with points for decimal commas, which a key can't tell apart.
fn plain(value: &Value) -> Value {
    match value {
        Value::Array(parts) => parts.iter().map(plain).collect(),
        Value::Object(parts) => {
            let parts = parts.iter().filter(|(name, _)| *name != "by");
            parts.map(|(name, part)| (name.clone(), plain(part))).collect()
        }
        Value::String(text) if text.starts_with(|first: char| first.is_ascii_digit()) => {
            text.replace(',', ".").into()
        }
        other => other.clone(),
    }
}

/// The one record beside the store.
fn saved_pages(place: &Place) -> Result<std::path::PathBuf> {
    let folder = place.store().join("records");
    let records = std::fs::read_dir(&folder).map_err(|source| Trouble::File {
        doing: "Reading the folder",
        path: folder.clone(),
        source,
    })?;
    let records: Vec<_> = records.filter_map(|entry| Some(entry.ok()?.path())).collect();
    match &records[..] {
        [one] => Ok(one.clone()),
        others => Err(Trouble::wrong(format!("One record is expected in {}: {others:?}", folder.display()))),
    }
}
