//! Photos through the whole intake, as a camera would hand them over.
//!
//! - `camera`: builds the photo files that the other files use
//! - `intake`: whole photos: orientation, small pictures, twelve megapixels
//! - `privacy`: location and serial numbers are gone, the pixels are not touched
//! - `refusal`: what is not a whole photo within the limits is refused with a sentence
//! - `chance`: random damage never brings the intake down

mod camera;
mod chance;
mod intake;
mod privacy;
mod refusal;
