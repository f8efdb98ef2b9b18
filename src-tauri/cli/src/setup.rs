//! The people and torque tools that a script names, for the tablet's lists.

use panside_bay::Bay;
use panside_bay::people::Person;
use panside_bay::setup::Tool;
use serde_json::Value;

use crate::exit::Failure;
use crate::script::Script;

/// Adds them to what the tablet has.
pub fn add(script: &Script, bay: &mut Bay) -> Result<(), Failure> {
    let people = script.people.values();
    let people = people.map(|person| Person {
        id: person.id,
        name: person.name.clone(),
        roles: person.roles.iter().copied().collect(),
        lead: person.lead,
    });
    let mut tools = Vec::new();
    tools_in(&serde_json::to_value(script)?, &mut tools);
    bay.take_in(&people.collect::<Vec<_>>(), &tools)?;
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
