//! What is wrong in a form, field by field, so that a screen can say it where it is typed.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::Message;

/// Something wrong in one field.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct FieldProblem {
    /// Which field, by its name in the form; nothing: the whole.
    pub field: String,
    /// What is wrong and what to do about it.
    pub message: Message,
}
