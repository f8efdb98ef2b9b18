//! How the tray draws parts and fasteners.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// The drawings of parts and fasteners.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Piece {
    /// A bolt, stud or plug.
    Bolt,
    /// A nut.
    Nut,
    /// A screw.
    Screw,
    /// A fastener that is pushed in.
    PushFastener,
    /// A clip or clamp.
    Clip,
    /// A strap or tie.
    Strap,
    /// A washer, ring or seal.
    Ring,
    /// A gasket.
    Gasket,
    /// A pan.
    Pan,
    /// A filter.
    Filter,
    /// A pipe or hose.
    Pipe,
    /// A hanger or mount.
    Hanger,
    /// A magnet.
    Magnet,
    /// A plate, cover or shield.
    Plate,
    /// A bracket.
    Bracket,
    /// A solenoid or valve.
    Solenoid,
    /// A connector.
    Connector,
}
