//! The people and torque tools that a script names, for the tablet's lists.

use panside_bay::kit::{Kit, Tool};
use serde_json::Value;

use crate::exit::Failure;
use crate::script::Script;

/// Adds them to what the tablet has.
pub fn add(script: &Script, kit: &mut Kit) -> Result<(), Failure> {
    // Who begins stands first: a window that was never told who works takes the first.
    let first = script.lines.iter().find_map(|line| line.who.as_deref()).unwrap_or_default();
    let mut people: Vec<_> = script.people.iter().collect();
    people.sort_by_key(|(name, _)| name.as_str() != first);
    let people = people
        .into_iter()
        .map(|(_, person)| panside_bay::enter::Actor { name: person.name.clone(), role: person.role });
    let mut tools = Vec::new();
    tools_in(&serde_json::to_value(script)?, &mut tools);
    kit.add(people.collect::<Vec<_>>(), tools);
    Ok(())
}

/// Every `"tool"` that reads as one.
fn tools_in(value: &Value, tools: &mut Vec<Tool>) {
    if let Some(tool) = value.get("tool").and_then(|tool| serde_json::from_value(tool.clone()).ok()) {
        tools.push(tool);
    }
    match value {
        Value::Array(parts) => parts.iter().for_each(|part| tools_in(part, tools)),
        Value::Object(parts) => parts.values().for_each(|part| tools_in(part, tools)),
        _ => {}
    }
}
