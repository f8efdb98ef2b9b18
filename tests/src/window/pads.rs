//! Entering a value on its pad, kind by kind, as a hand does it.

use std::path::Path;

use serde_json::Value;

use crate::window::script::{Entry, Script, Step};
use crate::window::{Result, Trouble, Window};

/// Where values are entered, and with which photo.
pub struct Pads<'a> {
    /// The checklist, for labels and names.
    pub script: &'a Script,
    /// The photo file for every photo.
    pub photo: &'a Path,
}

impl Pads<'_> {
    /// Enters a value. Answers what the window says when it refuses it.
    pub fn enter(
        &self,
        window: &mut Window,
        step: &Step,
        entry: &Entry,
        value: &Value,
    ) -> Result<Option<String>> {
        self.open(window, step, entry)?;
        let (kind, given) = single(value)?;
        match kind {
            "reading" => reading(window, given)?,
            "level" => level(window, given)?,
            "coils" => coils(window, given)?,
            "cool_down" => cool_down(window, given)?,
            "balance" => balance(window, given)?,
            "count" => self.count(window, entry, given)?,
            "torque" => torque(window, given)?,
            "choice" => choice(window, entry, given)?,
            "several" => several(window, entry, given)?,
            "decision" => decision(window, entry, given)?,
            "estimate" => estimate(window, given)?,
            "authorization" => authorization(window, given)?,
            "scan" => window.type_into(&in_dialog("input"), text(given, "text")?)?,
            "note" => window.type_into(&in_dialog("textarea"), text(given, "text")?)?,
            "photo_file" => window.give_photo(&entry.id, self.photo)?,
            "timer" => {}
            other => return Err(Trouble::wrong(format!("No pad is known for \"{other}\"."))),
        }
        if !matches!(kind, "choice" | "decision" | "photo_file") {
            press_enter(window)?;
        }
        window.left(&entry.label)
    }

    /// Opens the pad of an entry, unless it has come up by itself.
    fn open(&self, window: &mut Window, step: &Step, entry: &Entry) -> Result {
        if window.see()?.dialogs.last() == Some(&entry.label) {
            return Ok(());
        }
        close_all(window)?;
        window.tap_selector(&row(step, entry))?;
        let label = serde_json::Value::from(entry.label.as_str());
        window.wait(&format!("the pad of \"{}\"", entry.label), &format!("seen.dialogs.at(-1) === {label}"))
    }

    fn count(&self, window: &mut Window, entry: &Entry, given: &Value) -> Result {
        let counted = given.get("of").and_then(Value::as_object);
        for (item, pieces) in counted.ok_or_else(|| Trouble::wrong(format!("{given} is no count.")))? {
            let name = self.script.items.get(item).map_or(item.as_str(), String::as_str);
            let all = entry.ask.pointer(&format!("/count/of/{item}")).and_then(Value::as_u64).unwrap_or(0);
            let pieces = pieces.as_u64().unwrap_or(0);
            let every = window.words.with("entry-all", &[("count", all.to_string().into())])?;
            let every = format!("{name} {every}");
            if !window.holds_down(&every)? {
                window.tap(&every)?;
            }
            let less = window.words.with("entry-one-less", &[("item", name.to_owned().into())])?;
            for _ in pieces..all {
                window.tap(&less)?;
            }
        }
        Ok(())
    }
}

/// The row of an entry on the step sheet.
pub fn row(step: &Step, entry: &Entry) -> String {
    format!("[data-row=\"{}/{}\"]", step.id, entry.id)
}

/// Goes back from whatever is laid over the step sheet.
///
/// # Errors
/// When there is no way back.
pub fn close_all(window: &mut Window) -> Result {
    // A list in a pad in a sheet is the deepest.
    for _ in 0..4 {
        if window.see()?.dialogs.is_empty() {
            return Ok(());
        }
        window.tap_words("back")?;
    }
    Err(window.not_seen("a way back to the step sheet"))
}

fn reading(window: &mut Window, given: &Value) -> Result {
    shown(window, text(given, "value")?, text(given, "unit")?)
}

fn level(window: &mut Window, given: &Value) -> Result {
    let readings = given.get("readings").and_then(Value::as_array);
    for (number, reading) in (1_u64..).zip(readings.into_iter().flatten()) {
        let trace = reading.pointer("/stick/trace");
        let trace = trace.ok_or_else(|| Trouble::wrong(format!("No hand is known for {reading}.")))?;
        let fields = [
            ("entry-temperature", text(reading, "temperature")?, text(reading, "temperature_unit")?),
            ("entry-trace", text(trace, "value")?, text(trace, "unit")?),
        ];
        for (name, value, unit) in fields {
            let name = window.words.with(name, &[("number", number.into())])?;
            fill(window, &name, value, unit)?;
        }
    }
    Ok(())
}

fn coils(window: &mut Window, given: &Value) -> Result {
    fill_all(window, given, &[("entry-coil-temperature", "temperature", "temperature_unit")])?;
    for reading in given.get("readings").and_then(Value::as_array).into_iter().flatten() {
        let (coil, shows) = (text(reading, "coil")?, text(reading, "shows")?);
        window.come_to(coil)?;
        shown(window, shows, text(given, "unit")?)?;
    }
    Ok(())
}

/// What a meter shows: overload has a key of its own.
fn shown(window: &mut Window, shows: &str, unit: &str) -> Result {
    if shows == "OL" {
        return window.tap_words("entry-coil-overload");
    }
    set_unit(window, unit)?;
    keys(window, shows)
}

/// By a contact probe: that is how the pad comes up.
fn cool_down(window: &mut Window, given: &Value) -> Result {
    if given["by"] != "contact" {
        return Err(Trouble::wrong(format!("No hand is known for {given}.")));
    }
    fill_all(
        window,
        given,
        &[("entry-probe-value", "value", "unit"), ("entry-probe-ambient", "ambient", "unit")],
    )
}

/// A balance that closes: nothing is explained.
fn balance(window: &mut Window, given: &Value) -> Result {
    fill_all(window, given, &[("entry-balance-can", "temperature", "temperature_unit")])
}

/// Fills fields: their names among the window's words, and where value and unit stand.
fn fill_all(window: &mut Window, given: &Value, fields: &[(&str, &str, &str)]) -> Result {
    for (name, value, unit) in fields {
        let name = window.words.say(name)?;
        fill(window, &name, text(given, value)?, text(given, unit)?)?;
    }
    Ok(())
}

/// Fills one field, unless it has that value already.
fn fill(window: &mut Window, name: &str, value: &str, unit: &str) -> Result {
    if window.field_text(name)? == value {
        return Ok(());
    }
    window.come_to(name)?;
    set_unit(window, unit)?;
    keys(window, value)
}

fn torque(window: &mut Window, given: &Value) -> Result {
    let (unit, tool) = (text(given, "unit")?, text(&given["tool"], "name")?);
    // The list of wrenches comes up first where none is chosen.
    let another = window.words.say("entry-tool-new")?;
    if window.offers(&another)? {
        window.tap(tool)?;
    }
    // Settings are typed as the script has them; a map of the fasteners takes only what the sheet wants.
    let keys_words = window.words.say("entry-map-type")?;
    if window.offers(&keys_words)? {
        window.tap(&keys_words)?;
    }
    let stages = given.get("stages").and_then(Value::as_array);
    for (place, stage) in stages.into_iter().flatten().enumerate() {
        let setting = stage.as_str().unwrap_or_default();
        window.come_to_nth(".fields label", place)?;
        set_unit(window, unit)?;
        let clicked = format!("{setting} {unit}");
        let clicked = window.words.with("entry-clicked", &[("value", clicked.into())])?;
        if window.offers(&clicked)? {
            window.tap(&clicked)?;
        } else {
            keys(window, setting)?;
        }
    }
    if !window.offers(tool)? {
        window.tap_selector("button.tool")?;
        window.tap(tool)?;
    }
    Ok(())
}

fn choice(window: &mut Window, entry: &Entry, given: &Value) -> Result {
    tap_option(window, entry, "/choice/options", given)
}

/// Takes what the table says.
fn decision(window: &mut Window, entry: &Entry, given: &Value) -> Result {
    if given.get("against").is_some() {
        return Err(Trouble::wrong(format!("No hand is known for {given}.")));
    }
    tap_option(window, entry, "/decision/options", given)
}

fn tap_option(window: &mut Window, entry: &Entry, options: &str, given: &Value) -> Result {
    let class = text(given, "class")?;
    let options = entry.ask.pointer(options).and_then(Value::as_array);
    let option = options.into_iter().flatten().find(|option| option["class"] == class);
    let option = option.ok_or_else(|| Trouble::wrong(format!("{} has no answer {class}.", entry.id)))?;
    window.tap(text(option, "label")?)
}

/// Taps all that was found, in the order of the list.
fn several(window: &mut Window, entry: &Entry, given: &Value) -> Result {
    let found = given["found"].as_array().map(Vec::as_slice).unwrap_or_default();
    if found.is_empty() {
        return window.tap_words("entry-none-of-these");
    }
    let options = entry.ask.pointer("/several/options").and_then(Value::as_array);
    for option in options.into_iter().flatten().filter(|option| found.contains(&option["id"])) {
        window.tap(text(option, "label")?)?;
    }
    Ok(())
}

/// Adds the lines of an estimate, one after the other: their names are tapped.
fn estimate(window: &mut Window, given: &Value) -> Result {
    let currency = text(given, "currency")?;
    let (price, rate) = (("entry-estimate-price", "price"), ("entry-estimate-rate", "rate"));
    let lists = [
        (
            "parts",
            "entry-estimate-add-parts",
            "name",
            [Some(("entry-estimate-quantity", "quantity")), Some(price)],
        ),
        ("labor", "entry-estimate-add-labor", "what", [Some(("entry-estimate-hours", "hours")), Some(rate)]),
        (
            "may_turn_up",
            "entry-estimate-add-may-turn-up",
            "what",
            [None, Some(("entry-estimate-up-to", "up_to"))],
        ),
    ];
    for (list, add, name, fields) in lists {
        for line in given[list].as_array().into_iter().flatten() {
            window.tap_words(add)?;
            window.tap(text(line, name)?)?;
            for (field, of) in fields.into_iter().flatten() {
                let value = text(line, of)?;
                // One is meant where nothing is typed.
                if of == "quantity" && value == "1" {
                    continue;
                }
                let unit = match of {
                    "quantity" => String::new(),
                    "hours" => window.words.say("entry-estimate-hour")?,
                    _ => currency.to_owned(),
                };
                let field = window.words.say(field)?;
                fill(window, &field, value, &unit)?;
            }
            if let Some(number) = line.get("number").and_then(Value::as_str) {
                window.type_into(&in_dialog("label.number input:not([inputmode])"), number)?;
            }
        }
    }
    Ok(())
}

/// Taps what the customer answered, with the amount typed where no tap takes it.
fn authorization(window: &mut Window, given: &Value) -> Result {
    window.tap_words(&format!("entry-answer-{}", text(given, "answer")?))?;
    let amount = text(given, "amount")?;
    let whole = format!("{amount}.00 {}", text(given, "currency")?);
    let offers = ["entry-answer-take-sum", "entry-answer-take-limit"]
        .map(|id| window.words.with(id, &[("amount", whole.clone().into())]));
    let mut taken = false;
    for offer in offers {
        let offer = offer?;
        if !taken && window.offers(&offer)? {
            window.tap(&offer)?;
            taken = true;
        }
    }
    if !taken && !amount.is_empty() {
        window.tap_words("entry-answer-amount")?;
        set_unit(window, text(given, "currency")?)?;
        keys(window, amount)?;
        window.tap_words("entry-answer-amount-typed")?;
    }
    window.tap_words(&format!("entry-answer-{}", text(given, "means")?.replace('_', "-")))?;
    window.tap(text(given, "given_by")?)
}

/// Taps the keys of a number. Whether a comma or a point is meant, the key is one.
fn keys(window: &mut Window, number: &str) -> Result {
    for letter in number.chars() {
        match letter {
            ',' | '.' => window.tap_words("entry-key-decimal-name")?,
            '-' => window.tap_words("entry-key-sign-name")?,
            digit => window.tap(&digit.to_string())?,
        }
    }
    Ok(())
}

/// Taps the unit key until the unit holds. Where there is one unit only, it must be that.
fn set_unit(window: &mut Window, unit: &str) -> Result {
    let begins = |window: &Window, unit: &str| {
        let words =
            window.words.with("entry-key-unit", &[("unit", unit.to_owned().into()), ("next", "|".into())]);
        words.map(|words| words.split('|').next().unwrap_or_default().to_owned())
    };
    let wanted = begins(window, unit)?;
    // More units than these are not offered for anything.
    for _ in 0..6 {
        if window.offers(&wanted)? || window.only_unit()?.as_deref() == Some(unit) {
            return Ok(());
        }
        window.tap_selector("button.units")?;
    }
    Err(window.not_seen(&format!("the unit \"{unit}\"")))
}

/// Presses Enter once the core has said what the value is, as one who reads does.
fn press_enter(window: &mut Window) -> Result {
    let enter = window.words.say("entry-enter")?;
    window.wait_open(&enter)?;
    window.tap(&enter)
}

/// The one key of an object and what stands there.
pub fn single(value: &Value) -> Result<(&str, &Value)> {
    let found = value.as_object().and_then(|object| object.iter().next());
    let found = found.map(|(key, value)| (key.as_str(), value));
    found.ok_or_else(|| Trouble::wrong(format!("{value} names nothing.")))
}

/// A text of an object.
pub fn text<'a>(value: &'a Value, name: &str) -> Result<&'a str> {
    value
        .get(name)
        .and_then(Value::as_str)
        .ok_or_else(|| Trouble::wrong(format!("{value} has no \"{name}\".")))
}

fn in_dialog(what: &str) -> String {
    format!("[role=dialog] {what}:not([type=file])")
}
