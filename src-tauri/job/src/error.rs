//! What can be wrong with the body of an event. A refusal is no error: see [`crate::Refusal`].

/// Why the body of an event cannot be written or read.
#[derive(Debug, thiserror::Error)]
pub enum JobError {
    /// The body could not be written as JSON.
    #[error("Writing an event of the kind \"{kind}\" failed. Enter it again; if that fails too, report it.")]
    Unwritable {
        /// The kind of event.
        kind: &'static str,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// An event of a kind that this version does not know.
    #[error("Reading an event failed: the kind \"{kind}\" is not known. Use a newer version of Panside.")]
    KindUnknown {
        /// The kind.
        kind: String,
    },
    /// An event whose body has a newer form than this version knows.
    #[error(
        "Reading an event of the kind \"{kind}\" failed: its form {version} is newer than {newest}. Use a newer \
         version of Panside."
    )]
    VersionUnknown {
        /// The kind of event.
        kind: &'static str,
        /// The version of its body.
        version: u32,
        /// The newest version that can be read.
        newest: u32,
    },
    /// A body that is not what its kind and version promise.
    #[error(
        "Reading an event of the kind \"{kind}\" failed: its body is not of form {version}. Verify the journal."
    )]
    Body {
        /// The kind of event.
        kind: &'static str,
        /// The version of its body.
        version: u32,
        /// What the JSON reader said.
        source: serde_json::Error,
    },
}
