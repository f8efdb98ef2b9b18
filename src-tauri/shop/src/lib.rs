//! What happened in the shop, apart from any job: its people, PINs, torque tools, spec sheets, checklists and devices.
//! Pure: no I/O, no clock, no chance.
//!
//! - [`event`]: what can happen, and the form in which the journal keeps it
//! - [`name`]: which names are taken, and which can't be told apart
//! - [`shop`]: the shop, folded from its events in any order, from any number of devices
//! - [`both`]: what was done on both sides of the same thing, and which names look alike
//! - [`decide`]: what a person asks for, and the event or the refusal that answers it
//!
//! Each thing of the shop is a multi-value register. A change names the events that it replaces; an event that no other
//! event of the same thing names is a *head*. One head is how the thing stands. Several heads were written on devices
//! that did not know of each other: one of them is shown, by a rule that hangs on the events alone, all are told by
//! [`Shop::both_sides`], and a change that names them all settles it.

pub mod both;
pub mod decide;
pub mod event;
mod message;
pub mod name;
pub mod refusal;
pub mod shop;
pub mod thing;

pub use both::{BothSides, Side};
pub use decide::ShopCommand;
pub use event::{PinSetBy, ShopEvent};
pub use message::MESSAGES;
pub use refusal::ShopRefusal;
pub use shop::{OfShop, Shop, ShopHappened};
pub use thing::{Person, Said, Thing, ToolId};
