//! A signature, given together with *Done*.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::SignOffEntry;

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{refused_sign_not_asked, sign_given};
use crate::sheet::Specs;
use crate::value::{EntryValue, Signature};

fn classify(
    asked: &SignOffEntry,
    signature: &Signature,
    value: &EntryValue,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let text = |sign| context.checklist.sign_text(sign);
    if signature.sign != asked.sign {
        return Err(refused_sign_not_asked(text(&signature.sign), text(&asked.sign)).into());
    }
    Ok(Classified::new("signed", value.clone(), sign_given(context.names.name(signature.by)?)))
}

impl Kind for SignOffEntry {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::SignOff(signature) => classify(self, signature, value, context),
            _ => Err(kind::other("sign_off", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, _value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        None
    }
}
