//! A value as it was typed, as one line of text.

use std::collections::BTreeSet;

use panside_job::EntryValue;
use panside_job::job::EnteredValue;
use panside_job::value::{
    Accounted, Adapter, CoilValue, Probed, ProbedBy, ProbedSurface, StickReading, StickShows,
};
use panside_procedure::format::Ask;

use crate::source::Source;

/// The value in words. Figures and units stand as they were typed; people are named as they were called then.
pub(crate) fn text(source: Source<'_>, ask: Option<&Ask>, entered: &EnteredValue) -> String {
    let called = |person| source.job.people.called(person, entered.mark.seq);
    let says = |told: &Accounted| format!("{}, says {}", told.reason, called(told.by));
    match &entered.value {
        EntryValue::SignOff(signature) => {
            format!("signed by {} as {}", called(signature.by), signature.role.noun())
        }
        EntryValue::Reading { value, unit } => format!("{value} {unit}"),
        EntryValue::Level { readings, confirmed_no_trace, given_up } => {
            let mut said: Vec<_> = readings.iter().map(stick).collect();
            if *confirmed_no_trace {
                said.push("checked again, still dry".to_owned());
            }
            said.extend(given_up.as_ref().map(|told| format!("not reached: {}", says(told))));
            said.join("; ")
        }
        EntryValue::Count { of, accounted } => {
            let counted = of
                .iter()
                .map(|(id, pieces)| format!("{} {pieces}", source.job.procedure.checklist.item_name(id)));
            let counted = counted.collect::<Vec<_>>().join(", ");
            match accounted {
                Some(told) => format!("{counted}; the missing: {}", says(told)),
                None => counted,
            }
        }
        EntryValue::Torque { stages, unit, tool, adapter, angles, exception } => {
            let mut said = vec![format!("{} {unit}, {}", stages.join(", then "), tool.name)];
            said.extend(adapter.as_ref().map(|it| {
                let Adapter { tool, length, unit, angle } = it;
                format!("crowfoot {length} {unit} at {angle}° on {tool} {unit}")
            }));
            said.extend((!angles.is_empty()).then(|| format!("turned {}°", angles.join("°, "))));
            said.extend(exception.as_ref().map(|told| format!("wrench used anyway: {}", says(told))));
            said.join("; ")
        }
        EntryValue::Coil(coil) => said_coil(coil),
        EntryValue::CoolDown(probed) => said_probed(probed),
        EntryValue::Balance { temperature, temperature_unit, explained } => {
            let can =
                (!temperature.is_empty()).then(|| format!("new fluid at {temperature} {temperature_unit}"));
            let told = explained.as_ref().map(|told| format!("the difference: {}", says(told)));
            can.into_iter().chain(told).collect::<Vec<_>>().join("; ")
        }
        EntryValue::Photo { hash, width, height } => {
            format!("photo {}, {width} × {height}", short(hash))
        }
        EntryValue::Choice { class } => match ask {
            Some(Ask::Choice(asked)) => asked.label(class).to_owned(),
            _ => class.clone(),
        },
        EntryValue::Several { found } => found_of(ask, found),
        EntryValue::Scan { text } if text.is_empty() => "none".to_owned(),
        EntryValue::Scan { text } | EntryValue::Note { text } => text.clone(),
        EntryValue::Timer {} => "waited".to_owned(),
    }
}

fn said_coil(coil: &CoilValue) -> String {
    let CoilValue { shows, unit, leads, temperature, temperature_unit, meter } = coil;
    let mut said = vec![format!("{shows} {unit} at {temperature} {temperature_unit}")];
    said.extend(leads.as_ref().map(|leads| format!("leads {leads} {unit}")));
    said.extend(meter.as_ref().map(|off| format!("meter ± ({} % + {} {unit})", off.percent, off.digits)));
    said.join(", ")
}

fn said_probed(probed: &Probed) -> String {
    let Probed { value, unit, by, ambient } = probed;
    let by = match by {
        ProbedBy::Contact => "contact probe".to_owned(),
        ProbedBy::Infrared { set_to, surface } => {
            let surface = match surface {
                ProbedSurface::Coated => "coated",
                ProbedSurface::Oxidised => "oxidized",
                ProbedSurface::Rusty => "rusty",
                ProbedSurface::Bright => "bright",
            };
            format!("infrared set to {set_to}, {surface} surface")
        }
    };
    let around = ambient.as_ref().map(|ambient| format!("; ambient {ambient} {unit}"));
    format!("{value} {unit}, {by}{}", around.unwrap_or_default())
}

/// What the buttons of what was found say, in the order of the list; ids where the checklist has none.
fn found_of(ask: Option<&Ask>, found: &BTreeSet<String>) -> String {
    if found.is_empty() {
        return "none of the list".to_owned();
    }
    let Some(Ask::Several(asked)) = ask else {
        return found.iter().cloned().collect::<Vec<_>>().join(", ");
    };
    let labels = asked.options.iter().filter(|option| found.contains(&option.id));
    labels.map(|option| option.label.clone()).collect::<Vec<_>>().join(", ")
}

fn stick(reading: &StickReading) -> String {
    let at = format!("at {} {}", reading.temperature, reading.temperature_unit);
    match &reading.stick {
        StickShows::Trace { value, unit } => format!("{value} {unit} {at}"),
        StickShows::NoTrace => format!("no trace {at}"),
    }
}

/// The first digits of a hash, enough to find it again among a job's photos.
pub(crate) fn short(hash: &str) -> &str {
    hash.get(..12).unwrap_or(hash)
}
