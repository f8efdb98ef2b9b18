//! `schema`.

use panside_procedure::format::{Checklist, Part, Sheet, Texts};
use schemars::schema_for;

use crate::args::SchemaArgs;
use crate::exit::{Exit, Failure, write};
use crate::out::row;
use crate::script::Script;

/// Writes the JSON Schemas.
pub fn schema(args: &SchemaArgs) -> Result<Exit, Failure> {
    let schemas = [
        ("checklist", schema_for!(Checklist)),
        ("part", schema_for!(Part)),
        ("texts", schema_for!(Texts)),
        ("sheet", schema_for!(Sheet)),
        ("walk", schema_for!(Script)),
    ];
    for (name, schema) in schemas {
        let path = args.out.join(format!("{name}.schema.json"));
        write(&path, format!("{}\n", serde_json::to_string_pretty(&schema)?).as_bytes())?;
        row(format_args!("{}", path.display()));
    }
    Ok(Exit::Done)
}
